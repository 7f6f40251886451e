/**
 * The lens and the plate: soft corners, fall-off, and the plate's response.
 */
import { type Scene } from './scene.ts';

/** Reach of the lens blur in elements. */
export const blurReach = 4;

/** Gaussian weights of deviation s, to {@link blurReach} elements either side. */
function bell(s: number): Float64Array {
  const w = Float64Array.from({ length: 2 * blurReach + 1 }, (_, k) =>
    Math.exp(-((k - blurReach) ** 2) / (2 * s * s)),
  );
  const sum = w.reduce((a, b) => a + b, 0);
  return w.map((v) => v / sum);
}

/** The plate's response: straight in the shadows, bending over towards 1. */
const respond = (exposure: number): number => 1 - Math.exp(-(exposure ** 1.3));

/** Rows of the worked frame, `first` their place in it. */
export interface Strip {
  readonly data: Float32Array;
  readonly columns: number;
  readonly first: number;
  readonly count: number;
  /** Rows of the whole frame. */
  readonly rows: number;
}

/** Mean of each element and its neighbours in the row. */
function blurAcross({ data, columns, count }: Strip, weights: Float64Array): Float32Array {
  const out = new Float32Array(data.length);
  for (let r = 0; r < count; r++) {
    for (let c = 0; c < columns; c++) {
      let sum = 0;
      for (let k = -blurReach; k <= blurReach; k++) {
        const x = Math.min(columns - 1, Math.max(0, c + k));
        sum += weights[k + blurReach] * data[r * columns + x];
      }
      out[r * columns + c] = sum;
    }
  }
  return out;
}

/**
 * From radiance to what the plate has taken, 0 to 1: sharp in the middle, soft and darker
 * towards the corners.
 *
 * @returns A strip that is {@link blurReach} rows shorter at both ends.
 */
export function throughLens(radiance: Strip, scene: Scene, aspect: number): Strip {
  const { data, columns, first, count, rows } = radiance;
  const deviation = Math.max(0.35, (scene.softness * rows) / 1000);
  const weights = bell(Math.min(deviation, blurReach / 2));
  const across = blurAcross(radiance, weights);
  const out = new Float32Array(columns * (count - 2 * blurReach));
  for (let r = blurReach; r < count - blurReach; r++) {
    const v = (first + r + 0.5) / rows - 0.5;
    for (let c = 0; c < columns; c++) {
      let soft = 0;
      for (let k = -blurReach; k <= blurReach; k++) {
        soft += weights[k + blurReach] * across[(r + k) * columns + c];
      }
      const u = ((c + 0.5) / columns - 0.5) * aspect;
      // 0 in the middle, 1 in the corner.
      const away = (u * u + v * v) / (0.25 + 0.25 * aspect * aspect);
      const share = 0.15 + 0.85 * Math.min(1, away * 1.1);
      const value = data[r * columns + c] * (1 - share) + soft * share;
      // Fall-off of a lens with a long barrel.
      const fall = 1 - 0.45 * away * away - 0.08 * away;
      out[(r - blurReach) * columns + c] = respond(value * scene.exposure * fall);
    }
  }
  return { data: out, columns, first: first + blurReach, count: count - 2 * blurReach, rows };
}
