/** What a rendering has to know of a merged picture before it begins, from luminances that pass by once. */

/** Steps of the histogram to an octave. */
const steps = 16;
/** Octaves of luminance that are counted, around 1. */
const octaves = 64;

export interface LuminanceRange {
  /** Count luminances; what is not finite or not above 0 is left out. */
  readonly add: (luminances: ArrayLike<number>, count: number) => void;
  /** Geometric mean. NaN when nothing was counted. */
  readonly logAverage: () => number;
  /** Luminance below which a share of the pixels lies, to a sixteenth of a stop. */
  readonly quantile: (share: number) => number;
}

export function luminanceRange(): LuminanceRange {
  const counts = new Float64Array(steps * octaves);
  let [sum, total] = [0, 0];
  return {
    add(luminances, count) {
      for (let i = 0; i < count; i += 1) {
        const value = luminances[i];
        if (!(value > 0) || value === Infinity) continue;
        const log = Math.log2(value);
        sum += log;
        total += 1;
        const bin = Math.floor((log + octaves / 2) * steps);
        counts[Math.max(0, Math.min(counts.length - 1, bin))] += 1;
      }
    },
    logAverage: () => (total === 0 ? NaN : 2 ** (sum / total)),
    quantile(share) {
      if (total === 0) return NaN;
      let below = 0;
      for (let bin = 0; bin < counts.length; bin += 1) {
        const here = counts[bin];
        if (here > 0 && below + here >= share * total) {
          return 2 ** ((bin + (share * total - below) / here) / steps - octaves / 2);
        }
        below += here;
      }
      return 2 ** (octaves / 2);
    },
  };
}
