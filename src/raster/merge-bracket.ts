/**
 * A bracket into one linear picture on disk, by strips of rows: radiance in sRGB primaries as
 * 32-bit floats, in units of the standing frame's largest code per its exposure ("light 1 is
 * what that frame shows as white"). What every frame clips is +Infinity, what no frame lifts
 * above its noise is NaN; nothing is filled in.
 */
import { luminanceRange } from '../imaging/merge/luminance-range.ts';
import { exposureMerger } from '../imaging/merge/merge-exposures.ts';
import { srgbLuminance } from '../imaging/colour/rgb-primaries.ts';
import type { Plane } from '../imaging/plane.ts';
import type { BracketPlan } from './plan-bracket.ts';
import { rowsTogether } from './rows-together.ts';
import { openTiffStrips } from './tiff-strips.ts';

export interface MergedBracket {
  readonly width: number;
  readonly height: number;
  /** Geometric mean of the luminance, light. */
  readonly logAverage: number;
  /** Luminance that all but a ten-thousandth of the pixels stay below. */
  readonly brightest: number;
  /** Luminance that all but a thousandth of the pixels stay above. */
  readonly darkest: number;
  /** Light below which nothing stands above the noise, and above which every frame clips. */
  readonly floor: number;
  readonly ceiling: number;
  /** Shares of the pixels. */
  readonly clippedEverywhere: number;
  readonly belowNoise: number;
  /** log2 of luminance, shrunk: for a local rendering. */
  readonly small: Plane;
}

const stripRows = 16;
/** Longest side of the shrunk plane. */
const smallSide = 1024;

export async function mergeBracket(
  plan: BracketPlan,
  standing: number,
  path: string,
): Promise<MergedBracket> {
  const { sources, signals, model } = plan;
  const [{ width, height, channels, light }] = sources;
  const merger = exposureMerger(model);
  const unit = model.seconds[standing];
  const [floor, ceiling] = [merger.floor * unit, merger.ceiling * unit];
  const range = luminanceRange();
  const small = smallPlane(width, height);
  const counts = { clipped: 0, below: 0 };
  const merged = new Float32Array(stripRows * width * channels);
  const rgb = new Float32Array(stripRows * width * 3);
  const luminances = new Float32Array(stripRows * width);
  const file = await openTiffStrips(path, {
    ...{ width, height, channels: 3, samples: 'floats' },
    description:
      'Relative radiance, linear, sRGB primaries; inf where every exposure clips, nan where none stands above its noise.',
  });
  try {
    for await (const { data, rows, y } of rowsTogether(sources, stripRows)) {
      const frames = data.map((codes, k) => ({ codes, signals: signals[k] }));
      merger.merge(frames, 0, rows * width * channels, merged);
      toRgb(merged, rgb, rows * width, channels, unit, light.matrix);
      measure(rgb, luminances, rows * width, counts);
      range.add(luminances, rows * width);
      for (let r = 0; r < rows; r += 1) {
        small.add(luminances.subarray(r * width, (r + 1) * width), y + r, floor, ceiling);
      }
      await file.write(rgb.subarray(0, rows * width * 3));
    }
    await file.finish();
  } catch (error) {
    await file.abandon().catch(() => undefined);
    throw error;
  }
  const pixels = width * height;
  return {
    ...{ width, height, floor, ceiling },
    logAverage: range.logAverage(),
    brightest: range.quantile(0.9999),
    darkest: range.quantile(0.001),
    clippedEverywhere: counts.clipped / pixels,
    belowNoise: counts.below / pixels,
    small: small.plane(),
  };
}

function toRgb(
  merged: Float32Array,
  rgb: Float32Array,
  pixels: number,
  channels: 1 | 3,
  unit: number,
  matrix: readonly number[] | null,
): void {
  for (let i = 0, o = 0; i < pixels; i += 1, o += 3) {
    if (channels === 1) {
      rgb[o] = rgb[o + 1] = rgb[o + 2] = merged[i] * unit;
      continue;
    }
    const [r, g, b] = [merged[o] * unit, merged[o + 1] * unit, merged[o + 2] * unit];
    if (!matrix) {
      rgb[o] = r;
      rgb[o + 1] = g;
      rgb[o + 2] = b;
    } else if (r === Infinity || g === Infinity || b === Infinity) {
      // In other primaries one unknown channel makes all three unknown.
      rgb[o] = rgb[o + 1] = rgb[o + 2] = Infinity;
    } else {
      rgb[o] = matrix[0] * r + matrix[1] * g + matrix[2] * b;
      rgb[o + 1] = matrix[3] * r + matrix[4] * g + matrix[5] * b;
      rgb[o + 2] = matrix[6] * r + matrix[7] * g + matrix[8] * b;
    }
  }
}

/** Luminance of each pixel, a channel below the noise as 0; counts what is flagged. */
function measure(
  rgb: Float32Array,
  luminances: Float32Array,
  pixels: number,
  counts: { clipped: number; below: number },
): void {
  for (let i = 0, o = 0; i < pixels; i += 1, o += 3) {
    luminances[i] = lightLuminance(rgb[o], rgb[o + 1], rgb[o + 2]);
    if (luminances[i] === Infinity) counts.clipped += 1;
    else if (Number.isNaN(luminances[i])) counts.below += 1;
  }
}

/** Infinity where a channel is clipped everywhere, NaN where all are below the noise. */
export function lightLuminance(r: number, g: number, b: number): number {
  const [kr, kg, kb] = srgbLuminance;
  const sum = kr * r + kg * g + kb * b;
  if (sum === sum) return sum;
  if (r !== r && g !== g && b !== b) return NaN;
  return (r === r ? kr * r : 0) + (g === g ? kg * g : 0) + (b === b ? kb * b : 0);
}

function smallPlane(width: number, height: number) {
  const step = Math.ceil(Math.max(width, height) / smallSide);
  const [w, h] = [Math.ceil(width / step), Math.ceil(height / step)];
  const data = new Float32Array(w * h);
  const counts = new Float32Array(w * h);
  return {
    add(luminances: Float32Array, y: number, floor: number, ceiling: number): void {
      const row = Math.floor(y / step) * w;
      for (let x = 0; x < width; x += 1) {
        const light = luminances[x];
        const at = row + Math.floor(x / step);
        data[at] += Math.log2(light > floor ? Math.min(light, ceiling) : floor);
        counts[at] += 1;
      }
    },
    plane: (): Plane => ({ width: w, height: h, data: data.map((v, i) => v / counts[i]) }),
  };
}
