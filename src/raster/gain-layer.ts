/**
 * The gain layer over a rendering: how many stops each pixel of the rendering's tiles has to be
 * raised to give back the merged light. It is reckoned from the 8-bit codes that the tiles hold,
 * so that their rounding is made good and not only the curve undone.
 *
 * References: `src/records/layer.ts` (the layout), `src/imaging/merge/gain-map.ts` (the arithmetic).
 */
import { linearLight } from '../imaging/colour/light.ts';
import { srgbLuminance } from '../imaging/colour/rgb-primaries.ts';
import { decodeSrgb } from '../imaging/colour/srgb-curve.ts';
import type { Homography } from '../imaging/conventions.ts';
import {
  photographicLuminance,
  type PhotographicTone,
} from '../imaging/merge/photographic-tone.ts';
import type { Radial } from '../imaging/radial.ts';
import { openRows } from './capture-rows.ts';
import { openFloatRows, type FloatRows } from './float-rows.ts';
import { writeLayer } from './layer-pyramid.ts';
import { lightLuminance } from './merge-bracket.ts';
import type { RowSource } from './row-source.ts';
import { rowsTogether } from './rows-together.ts';
import { warpRows } from './warped-rows.ts';

export interface GainJob {
  readonly folder: string;
  readonly radiance: string;
  readonly rendering: string;
  readonly tone: PhotographicTone;
  /** Light at the noise, at which every frame clips, and of the brightest place. */
  readonly floor: number;
  readonly ceiling: number;
  readonly brightest: number;
  readonly frame: {
    readonly homography: Homography | null;
    readonly radial: Radial | null;
    readonly width: number;
    readonly height: number;
  };
  /** `frames` of the layer's description. */
  readonly frames: readonly object[];
  readonly tile?: number;
}

/** Added to both lights: about the third code of 255, so that black needs no infinite gain. */
export const gainOffset = 2 ** -10;
/** Room at both ends of the range for what rounding to 8 bits adds, stops. */
const spare = 0.35;
const stripRows = 16;
const full = 65535;

export async function writeGainLayer(job: GainJob): Promise<void> {
  const { folder, frame, tile = 512 } = job;
  const range = gainRange(job);
  const radiance = await openFloatRows(job.radiance);
  const own = await openRows(job.rendering);
  const again = await openRows(job.rendering);
  const gains = gainRows(radiance, again, job, range);
  try {
    const laid = (source: RowSource): RowSource =>
      frame.homography
        ? warpRows(source, frame.homography, frame.width, frame.height, frame.radial)
        : source;
    const [base, gain] = [laid(own), laid(gains)];
    const { width, height } = base;
    const step = (range.max - range.min) / 255;
    await writeLayer(
      { width, height, planes: 3, rows: () => layerRows(base, gain, range) },
      {
        ...{ folder, tile, format: 'webp', quality: 'lossless' },
        own: {
          kind: 'gain',
          offset: [range.min, 0, 0],
          step: [step, 1 / 255, 1 / 255],
          gain: {
            ...range,
            offsetBase: gainOffset,
            offsetMerged: gainOffset,
            headroom: Math.max(0, Math.log2(job.brightest)),
            footroom: Math.max(0, -Math.log2(job.floor)),
          },
          frames: job.frames,
        },
      },
    );
  } finally {
    await own.close();
    await again.close();
    await radiance.close();
  }
}

interface Range {
  readonly min: number;
  readonly max: number;
}

/** Least and most stops that the curve asks for between black and the brightest light. */
function gainRange({ tone, floor, ceiling, brightest }: GainJob): Range {
  let [min, max] = [Infinity, -Infinity];
  const top = Math.max(brightest, ceiling);
  const bottom = Math.min(floor, gainOffset) / 4;
  for (let i = 0; i <= 400; i += 1) {
    const light = bottom * (top / bottom) ** (i / 400);
    const shown = Math.min(1, photographicLuminance(tone, light));
    const stops = Math.log2((light + gainOffset) / (shown + gainOffset));
    min = Math.min(min, stops);
    max = Math.max(max, stops);
  }
  return { min: min - spare, max: max + spare };
}

/** Gain and flags as rows of codes in the merge's own frame, to be laid into the plate's. */
function gainRows(radiance: FloatRows, base: RowSource, job: GainJob, range: Range): RowSource {
  const { width, height } = radiance;
  const { toLinear } = base.light;
  const scale = full / (range.max - range.min);
  const [kr, kg, kb] = srgbLuminance;
  return {
    ...{ width, height, channels: 3, depth: 16, light: linearLight },
    async *batches() {
      const codes = new Uint16Array(stripRows * width * 3);
      const bases = rowsTogether([base], stripRows);
      for await (const { data, rows } of radiance.batches(stripRows)) {
        const next = await bases.next();
        if (next.done) throw new RangeError('The rendering has fewer rows than the merge.');
        const [shown] = next.value.data;
        for (let i = 0; i < rows * width * 3; i += 3) {
          const light = lightLuminance(data[i], data[i + 1], data[i + 2]);
          const clipped = light === Infinity;
          const below = light !== light;
          const held = clipped ? job.ceiling : below ? 0 : Math.max(0, light);
          const b =
            (kr * toLinear[shown[i]] + kg * toLinear[shown[i + 1]] + kb * toLinear[shown[i + 2]]) /
            full;
          const stops = Math.log2((held + gainOffset) / (b + gainOffset));
          codes[i] = Math.max(0, Math.min(full, (stops - range.min) * scale + 0.5));
          codes[i + 1] = clipped ? full : 0;
          codes[i + 2] = below ? full : 0;
        }
        yield { data: codes, rows };
      }
    },
    close: () => Promise.resolve(),
  };
}

const byteLight = Float64Array.from({ length: 256 }, (_, code) => decodeSrgb(code / 255));

/** Codes of the three planes, row by row: the gain corrected for the rendering's rounding to bytes. */
async function* layerRows(
  base: RowSource,
  gain: RowSource,
  range: Range,
): AsyncGenerator<Uint8Array> {
  const { width } = base;
  const { toLinear, toByte } = base.light;
  const [kr, kg, kb] = srgbLuminance;
  const out = new Uint8Array(width * 3);
  const stopsOf = (range.max - range.min) / full;
  const codesOf = 255 / (range.max - range.min);
  for await (const { data, rows } of rowsTogether([base, gain], stripRows)) {
    const [shown, gains] = data;
    for (let r = 0; r < rows; r += 1) {
      for (let x = 0, i = r * width * 3; x < width; x += 1, i += 3) {
        const [p, q, s] = [shown[i], shown[i + 1], shown[i + 2]];
        const exact = (kr * toLinear[p] + kg * toLinear[q] + kb * toLinear[s]) / full;
        const rounded =
          kr * byteLight[toByte[p]] + kg * byteLight[toByte[q]] + kb * byteLight[toByte[s]];
        const stops = gains[i] * stopsOf + Math.log2((exact + gainOffset) / (rounded + gainOffset));
        out[x] = Math.max(0, Math.min(255, Math.round(stops * codesOf)));
        out[width + x] = (gains[i + 1] + 128) / 257;
        out[2 * width + x] = (gains[i + 2] + 128) / 257;
      }
      yield out;
    }
  }
}
