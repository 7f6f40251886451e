/**
 * Randomness that depends on a seed and a place and on nothing else, so that a picture is the
 * same whoever renders which part of it, in whatever order.
 *
 * References
 * - Integer mixing: the finaliser of MurmurHash3 (public domain), constants from memory; only
 *   its evenness matters here and is tested.
 * - Normal quantiles: Acklam, P. J., rational approximation of the inverse normal distribution
 *   (relative error below 1.2e-9; coefficients from memory, tested against table values).
 */

/** 32 bits for a lattice place, evenly spread. */
export function hashAt(x: number, y: number, seed: number): number {
  let h = Math.imul(x, 0x27d4eb2d) + Math.imul(y, 0x165667b1) + Math.imul(seed, 0x9e3779b1);
  h ^= h >>> 16;
  h = Math.imul(h, 0x85ebca6b);
  h ^= h >>> 13;
  h = Math.imul(h, 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** A stream of numbers from 0 up to, not including, 1. */
export function numbersFrom(seed: number): () => number {
  let count = 0;
  return () => {
    count += 1;
    return hashAt(count, 0x51ed27, seed) / 4294967296;
  };
}

/** A seed from a word and a number, so that layers of one plate do not share their noise. */
export function seedOf(word: string, seed: number): number {
  let h = seed | 0;
  for (let i = 0; i < word.length; i += 1) h = hashAt(word.charCodeAt(i), i, h) | 0;
  return h;
}

const quantiles = 4096;

/** Standard normal values, 4096 equally likely ones with variance 1; index with 12 random bits. */
export const normalTable: Float64Array = normalQuantiles();

function normalQuantiles(): Float64Array {
  const table = new Float64Array(quantiles);
  let power = 0;
  for (let i = 0; i < quantiles; i += 1) {
    table[i] = inverseNormal((i + 0.5) / quantiles);
    power += table[i] * table[i];
  }
  const scale = Math.sqrt(quantiles / power);
  return table.map((value) => value * scale);
}

/** The value that a standard normal variable stays below with probability p, 0 < p < 1. */
export function inverseNormal(p: number): number {
  if (p > 0.5) return -inverseNormal(1 - p);
  if (p < 0.02425) {
    const q = Math.sqrt(-2 * Math.log(p));
    return (
      (((((-7.784894002430293e-3 * q - 0.3223964580411365) * q - 2.400758277161838) * q -
        2.549732539343734) *
        q +
        4.374664141464968) *
        q +
        2.938163982698783) /
      ((((7.784695709041462e-3 * q + 0.3224671290700398) * q + 2.445134137142996) * q +
        3.754408661907416) *
        q +
        1)
    );
  }
  const q = p - 0.5;
  const r = q * q;
  return (
    ((((((-39.69683028665376 * r + 220.9460984245205) * r - 275.9285104469687) * r +
      138.357751867269) *
      r -
      30.66479806614716) *
      r +
      2.506628277459239) *
      q) /
    (((((-54.47609879822406 * r + 161.5858368580409) * r - 155.6989798598866) * r +
      66.80131188771972) *
      r -
      13.28068155288572) *
      r +
      1)
  );
}
