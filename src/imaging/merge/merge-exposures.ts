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
/** Samples that are worked on together: their sums stay in the processor's cache. */
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
  const sums = new Float64Array(chunk);
  const times = new Float64Array(chunk);
  const places = new Int32Array(chunk);
  const rough = new Float32Array(chunk);
  const bits = new Int32Array(rough.buffer);
  const held = seconds.map(() => new Float64Array(chunk));
  const usableOf = usableSignals(clip);

  function mergeChunk(
    frames: readonly FrameSamples[],
    from: number,
    count: number,
    out: Float32Array,
    to: number,
  ): void {
    sums.fill(0, 0, count);
    times.fill(0, 0, count);
    for (let k = 0; k < frames.length; k += 1) {
      addRough(frames[k].codes, usableOf(frames[k].signals), seconds[k], from, count, {
        ...{ held: held[k], sums, times },
      });
    }
    for (let i = 0; i < count; i += 1) rough[i] = sums[i] / times[i];
    // The bits of a float are a logarithm: exponent first, then the mantissa's leading digits.
    const { first, last, weights } = table;
    for (let i = 0; i < count; i += 1) {
      const place = (bits[i] >> (23 - tableBits)) - first;
      places[i] = place < 0 ? 0 : place > last ? last : place;
    }
    sums.fill(0, 0, count);
    times.fill(0, 0, count);
    for (let k = 0; k < frames.length; k += 1) {
      addWeighted(held[k], seconds[k], count, weights[k], places, sums, times);
    }
    for (let i = 0; i < count; i += 1) {
      const radiance = sums[i] / times[i];
      // No frame held it: nothing over nothing.
      out[to + i] = radiance >= floor ? radiance : times[i] === 0 ? Infinity : NaN;
    }
  }

  return {
    floor,
    ceiling,
    merge(frames, from, count, out) {
      for (let done = 0; done < count; done += chunk) {
        mergeChunk(frames, from + done, Math.min(chunk, count - done), out, done);
      }
    },
  };
}

/** Tables of signals in which a clipped one is -1; each is made once. */
function usableSignals(clip: number): (signals: Float32Array) => Float32Array {
  const made = new Map<Float32Array, Float32Array>();
  return (signals) => {
    let usable = made.get(signals);
    if (!usable) {
      usable = signals.map((signal) => (signal < clip ? signal : -1));
      made.set(signals, usable);
    }
    return usable;
  };
}

/** Sum of signals over sum of times: the best estimate where photons alone scatter. */
function addRough(
  codes: Uint8Array | Uint16Array,
  usable: Float32Array,
  seconds: number,
  from: number,
  count: number,
  into: { held: Float64Array; sums: Float64Array; times: Float64Array },
): void {
  const { held, sums, times } = into;
  for (let i = 0; i < count; i += 1) {
    const signal = usable[codes[from + i]];
    held[i] = signal;
    if (signal >= 0) {
      sums[i] += signal;
      times[i] += seconds;
    }
  }
}

function addWeighted(
  held: Float64Array,
  seconds: number,
  count: number,
  weights: Float32Array,
  places: Int32Array,
  sums: Float64Array,
  times: Float64Array,
): void {
  for (let i = 0; i < count; i += 1) {
    const signal = held[i];
    if (signal >= 0) {
      const w = weights[places[i]];
      sums[i] += w * signal;
      times[i] += w * seconds;
    }
  }
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

/** Weight of each frame, seconds over variance, at each step of radiance. */
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
  const weights = seconds.map((t) =>
    Float32Array.from({ length: last + 1 }, (_, place) => {
      bits[0] = ((place + first) << shift) | (1 << (shift - 1));
      const signal = float[0] * t;
      return (t / variance(signal)) * (signal < safe ? 1 : lastResort);
    }),
  );
  return { first, last, weights };
}
