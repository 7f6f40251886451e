/**
 * Merging exposures of one still scene into relative radiance.
 *
 * A mirror-like plate sends the lamp straight back in some places and almost nothing in others,
 * so no single exposure holds both. Every sample that is not clipped gives its own estimate of
 * radiance, signal over seconds; the estimates are averaged with weights inverse to their
 * variance. The variance is predicted from a first rough estimate and not from the sample itself:
 * a sample that came out too low would otherwise vouch for itself (measured bias -0.3 %).
 *
 * References
 * - Debevec, P. and Malik, J. (1997). Recovering high dynamic range radiance maps from
 *   photographs. Proc. SIGGRAPH 97, 369-378. doi:10.1145/258734.258884
 * - Hasinoff, S. W., Durand, F. and Freeman, W. T. (2010). Noise-optimal capture for high dynamic
 *   range photography. Proc. CVPR 2010, 553-560. doi:10.1109/CVPR.2010.5540167
 */

import { type MergeLoop, mergeLoop } from './merge-loop.ts';

export interface MergeModel {
  /** Exposure of each frame, above 0. */
  readonly seconds: readonly number[];
  /** Signal from which a sample counts as clipped. */
  readonly clip: number;
  /** Variance of a sample whose true signal is given. */
  readonly variance: (signal: number) => number;
}

/** Codes of one frame, and the signal that each code stands for. */
export interface FrameSamples {
  readonly codes: Uint8Array | Uint16Array;
  readonly signals: Float32Array;
}

export interface ExposureMerger {
  /** Radiance below which the frames together see nothing but noise, signal per second. */
  readonly floor: number;
  /** Radiance above which every frame clips. */
  readonly ceiling: number;
  /**
   * Radiance, signal per second, of `count` samples from `from`, into `out` from 0.
   * Clipped in every frame: Infinity. Below the noise in every frame: NaN. Never filled in.
   */
  readonly merge: (
    frames: readonly FrameSamples[],
    from: number,
    count: number,
    out: Float32Array,
  ) => void;
}

/** Signal-to-noise ratio below which nothing is held: EMVA 1288's absolute sensitivity threshold. */
const leastRatio = 1;
/** Distance from the clip level, in standard deviations, inside which noise itself decides who clips. */
const clipMargin = 3;
/** Weight of a frame near its clip level: used where no other is left. */
const lastResort = 1e-6;
/** Entries of the table of weights to an octave: within half a per cent of the exact weight. */
const tableBits = 6;
/** Samples that are worked on together: their codes stay in the processor's cache. */
const chunk = 2048;

/** @throws RangeError if there are no frames or a time is not positive. */
export function exposureMerger(model: MergeModel): ExposureMerger {
  const { seconds, clip } = model;
  if (seconds.length === 0 || !seconds.every((t) => t > 0 && Number.isFinite(t))) {
    throw new RangeError(`Exposure times must be positive; got ${seconds.join(', ') || 'none'}.`);
  }
  const floor = noiseFloor(model);
  const ceiling = clip / Math.min(...seconds);
  const table = weightTable(model, floor, ceiling);
  const made = new Map<Float32Array, Float32Array[]>();
  /** Signal and seconds of each code of a frame, both 0 where it is clipped; made once. */
  function pairsOf({ signals }: FrameSamples, k: number): Float32Array {
    const kept = made.get(signals) ?? [];
    made.set(signals, kept);
    return (kept[k] ??= usablePairs(signals, clip, seconds[k]));
  }
  let running: { readonly tables: readonly Float32Array[]; readonly loop: MergeLoop } | null = null;
  function loopFor(frames: readonly FrameSamples[]): MergeLoop {
    const tables = frames.map(pairsOf);
    const bytes = frames.map(({ codes }) => codes.BYTES_PER_ELEMENT as 1 | 2);
    const fits =
      running?.tables.every((one, k) => one === tables[k]) &&
      running.loop.codes.every((one, k) => one.BYTES_PER_ELEMENT === bytes[k]);
    if (running && fits) return running.loop;
    const loop = mergeLoop({ codes: tables, bytes, ...table, floor }, chunk);
    running = { tables, loop };
    return loop;
  }

  return {
    floor,
    ceiling,
    merge(frames, from, count, out) {
      const loop = loopFor(frames);
      for (let done = 0; done < count; done += chunk) {
        const some = Math.min(chunk, count - done);
        frames.forEach(({ codes }, k) => {
          loop.codes[k].set(codes.subarray(from + done, from + done + some));
        });
        loop.run(some);
        out.set(loop.out.subarray(0, some), done);
      }
    },
  };
}

function usablePairs(signals: Float32Array, clip: number, seconds: number): Float32Array {
  const pairs = new Float32Array(2 * signals.length);
  for (let code = 0; code < signals.length; code += 1) {
    if (!(signals[code] < clip)) continue;
    pairs[2 * code] = signals[code];
    pairs[2 * code + 1] = seconds;
  }
  return pairs;
}

/** The radiance that equals its own standard deviation when all frames hold it. */
function noiseFloor({ seconds, variance }: MergeModel): number {
  let radiance = 0;
  // The variance grows slowly with the radiance: this settles in a few steps.
  for (let step = 0; step < 50; step += 1) {
    const information = seconds.reduce((sum, t) => sum + (t * t) / variance(radiance * t), 0);
    radiance = leastRatio / Math.sqrt(information);
  }
  return radiance;
}

/** Weights of all frames, seconds over variance, for each step of radiance. */
function weightTable({ seconds, clip, variance }: MergeModel, floor: number, ceiling: number) {
  const float = new Float32Array(1);
  const bits = new Int32Array(float.buffer);
  const shift = 23 - tableBits;
  const placeOf = (radiance: number): number => {
    float[0] = radiance;
    return bits[0] >> shift;
  };
  const first = placeOf(Math.max(1e-30, floor / 4));
  const last = Math.max(0, placeOf(ceiling * 2) - first);
  const safe = clip - clipMargin * Math.sqrt(variance(clip));
  const weights = new Float32Array((last + 1) * seconds.length);
  for (let place = 0; place <= last; place += 1) {
    bits[0] = ((place + first) << shift) | (1 << (shift - 1));
    seconds.forEach((t, k) => {
      const signal = float[0] * t;
      weights[place * seconds.length + k] =
        (t / variance(signal)) * (signal < safe ? 1 : lastResort);
    });
  }
  return { first, last, shift, weights };
}
