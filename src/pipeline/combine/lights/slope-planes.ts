/** Third pass over a many-light set: the `slope` layer, and stills of slope, relief and gloss. */
import { encodeSrgb } from '../../../imaging/colour/srgb-curve.ts';
import { displayLuminance } from '../../../imaging/relight/display-luminance.ts';
import { type LampStand, patchLamps } from '../../../imaging/relight/near-lamps.ts';
import {
  reliefShade,
  slopeColour,
  usefulExaggeration,
} from '../../../imaging/relight/relief-shade.ts';
import { type Shape, shapeSolver } from '../../../imaging/relight/surface-shape.ts';
import type { FrameStrips } from '../../../raster/frame-strips.ts';
import { writeLayer } from '../../../raster/layer-pyramid.ts';
import { slopeLayerSchema } from '../../../records/layer.ts';
import { clippedCode, type Learned } from './learn.ts';

const tile = 256;
const quality = 90;
/** Side of a patch that sees each lamp from one direction, pixels at most and mm. */
const patch = { pixels: 32, millimetres: 0.4 };
/** Pixels that no lamp makes brighter than this have no shape to be told: cloth, or nothing. */
const darkest = 0.012;

export interface SlopePlanes {
  /** Encoded codes of 16 bits: three channels, one, one. */
  readonly slope: Uint16Array;
  readonly relief: Uint16Array;
  readonly gloss: Uint16Array;
  readonly steepest: number;
  readonly exaggeration: number;
  readonly residualPercent: number;
}

/** The false lamp of the relief. */
export const reliefLamp = { bearing: 315, height: 35 };

type Solve = (frames: readonly Uint8Array[], at: number, x: number, y: number) => Reading;

interface Reading {
  readonly shape: Readonly<Shape> | null;
  readonly clipped: number;
}

export async function writeSlopePlanes(
  folder: string,
  strips: FrameStrips,
  learned: Learned,
  stand: LampStand,
): Promise<SlopePlanes> {
  const { width, height } = strips;
  const { steepest, usual, residualPercent } = survey(learned, stand, width, height);
  const exaggeration = usefulExaggeration(usual);
  const shade = reliefShade(reliefLamp.bearing, reliefLamp.height, exaggeration);
  const step = steepest / 127;
  const slope = new Uint16Array(width * height * 3);
  const relief = new Uint16Array(width * height);
  const gloss = new Uint16Array(width * height);
  const own = {
    kind: 'slope',
    // Code 128 is level.
    offset: [-128 * step, -128 * step, 0, 0],
    step: [step, step, 1 / 255, 1 / 255],
    holds: ['slope-x', 'slope-y', 'gloss', 'clipped'],
    ...{ steepest, residualPercent },
  };
  const solve = pixelSolver(stand, width, height);
  const code = (value: number): number =>
    Math.min(255, Math.max(0, Math.round(128 + value / step)));
  const geometry = await writeLayer(
    {
      ...{ width, height, planes: 4 },
      async *rows() {
        const row = new Uint8Array(4 * width);
        for await (const strip of strips.strips()) {
          for (let n = 0; n < strip.rows; n += 1) {
            const y = strip.top + n;
            for (let x = 0; x < width; x += 1) {
              const { shape, clipped } = solve(strip.frames, (n * width + x) * 3, x, y);
              const sx = shape ? shape.slopeX : 0;
              const sy = shape ? shape.slopeY : 0;
              const shine = shape ? encodeSrgb(shape.gloss) : 0;
              row[x] = code(sx);
              row[width + x] = code(sy);
              row[2 * width + x] = Math.round(255 * shine);
              row[3 * width + x] = Math.round(255 * clipped);
              const at = y * width + x;
              const colour = slopeColour(sx, sy, steepest);
              for (let c = 0; c < 3; c += 1) slope[3 * at + c] = Math.round(65535 * colour[c]);
              relief[at] = Math.round(65535 * encodeSrgb(shade(sx, sy)));
              gloss[at] = Math.round(65535 * shine);
            }
            yield row;
          }
        }
      },
    },
    { folder, tile, format: 'webp', quality, own },
  );
  slopeLayerSchema.parse({ ...geometry, ...own });
  return { ...{ slope, relief, gloss, steepest, exaggeration, residualPercent } };
}

/** Range of the slopes and what the fit leaves over, from the sample. */
function survey(learned: Learned, stand: LampStand, width: number, height: number) {
  const { sample, places } = learned;
  const each = sample.lamps * 3;
  const solve = pixelSolver(stand, width, height);
  const slopes: number[] = [];
  const residuals: number[] = [];
  places.forEach(([x, y], p) => {
    const own = sample.codes.subarray(p * each, (p + 1) * each);
    const frames = Array.from({ length: sample.lamps }, (_, l) => own.subarray(3 * l, 3 * l + 3));
    const { shape } = solve(frames, 0, x, y);
    if (!shape) return;
    slopes.push(Math.hypot(shape.slopeX, shape.slopeY));
    residuals.push(shape.residual / shape.albedo);
  });
  const at = (values: number[], share: number): number => {
    values.sort((a, b) => a - b);
    return values[Math.min(values.length - 1, Math.floor(values.length * share))] ?? 0;
  };
  return {
    // Steeper ones than 98 in 100 are rims and scratches; the picture needs the steps elsewhere.
    steepest: Number(Math.min(1, Math.max(0.02, 1.5 * at(slopes, 0.98))).toPrecision(4)),
    usual: at(slopes, 0.9),
    residualPercent: Number((100 * at(residuals, 0.5)).toPrecision(3)),
  };
}

/** The shape at one pixel, with the lamps as its patch sees them. */
function pixelSolver(stand: LampStand, width: number, height: number): Solve {
  const lamps = stand.directions.length;
  const scale = stand.pixelsPerMillimetre;
  const side = Math.max(
    4,
    Math.min(patch.pixels, scale === null ? patch.pixels : Math.round(patch.millimetres * scale)),
  );
  const across = Math.ceil(width / side);
  const kept = new Map<number, ReturnType<typeof patchLamps>>();
  let line = -1;
  const solve = shapeSolver(lamps);
  const values = new Float64Array(lamps);
  return (frames, at, x, y) => {
    let clipped = 0;
    let most = 0;
    for (let l = 0; l < lamps; l += 1) {
      const frame = frames[l];
      if (
        frame[at] >= clippedCode ||
        frame[at + 1] >= clippedCode ||
        frame[at + 2] >= clippedCode
      ) {
        values[l] = NaN;
        clipped += 1;
      } else {
        values[l] = displayLuminance(frame, at);
        if (values[l] > most) most = values[l];
      }
    }
    const share = clipped / lamps;
    if (most < darkest) return { shape: null, clipped: share };
    const row = Math.floor(y / side);
    if (row !== line) {
      kept.clear();
      line = row;
    }
    const column = Math.floor(x / side);
    const key = row * across + column;
    let lights = kept.get(key);
    if (!lights) {
      const middle = (place: number) => (place + 0.5) * side - 0.5;
      lights = patchLamps(stand, middle(column) - (width - 1) / 2, middle(row) - (height - 1) / 2);
      kept.set(key, lights);
    }
    const shape = solve(values, lights);
    return { shape: Number.isNaN(shape.slopeX) ? null : shape, clipped: share };
  };
}
