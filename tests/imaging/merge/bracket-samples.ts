/** Brackets with known truth: a spread of radiances seen by a sensor of known noise. */
import { numbersFrom } from '../../../src/imaging/render/seeded.ts';

export interface SampleOptions {
  readonly count: number;
  readonly seconds: readonly number[];
  readonly gain: number;
  readonly darkVariance: number;
  /** Radiances lie evenly in stops between these, signal per second. */
  readonly radiance: readonly [low: number, high: number];
  readonly seed?: number;
}

/** Two normal numbers by Box and Muller's transform. */
export function normals(next: () => number): [number, number] {
  const r = Math.sqrt(-2 * Math.log(1 - next()));
  const a = 2 * Math.PI * next();
  return [r * Math.cos(a), r * Math.sin(a)];
}

export function sampleBracket(options: SampleOptions): {
  readonly truth: Float64Array;
  readonly frames: Float64Array[];
} {
  const { count, seconds, gain, darkVariance, radiance, seed = 1 } = options;
  const next = numbersFrom(seed);
  const truth = new Float64Array(count);
  const frames = seconds.map(() => new Float64Array(count));
  for (let i = 0; i < count; i += 1) {
    truth[i] = radiance[0] * (radiance[1] / radiance[0]) ** next();
    for (const [k, t] of seconds.entries()) {
      const mean = truth[i] * t;
      const signal = mean + normals(next)[0] * Math.sqrt(gain * mean + darkVariance);
      frames[k][i] = Math.min(1, Math.max(0, signal));
    }
  }
  return { truth, frames };
}

/** Codes of 16 bits for signals, and the table back. */
export const linearCodes = Float32Array.from({ length: 65536 }, (_, code) => code / 65535);
export function toCodes(signals: ArrayLike<number>): Uint16Array {
  return Uint16Array.from(signals, (s) => Math.round(s * 65535));
}
