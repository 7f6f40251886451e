import { smallestBut } from '../registration/smallest-but.ts';

/**
 * The value below which a share `q` (0 to 1) of the numbers lies, by linear interpolation
 * between order statistics (type 7 of Hyndman and Fan, as NumPy's default).
 * NaN for an empty list. NaN entries must not be in the list.
 *
 * References
 * - Hyndman, R. J. and Fan, Y. (1996). Sample quantiles in statistical packages.
 *   The American Statistician 50(4), 361-365. doi:10.2307/2684934
 */
export function quantile(values: ArrayLike<number>, q: number): number {
  const own = new Float64Array(values);
  if (own.length === 0) return NaN;
  const place = q * (own.length - 1);
  const below = Math.floor(place);
  const value = smallestBut(own, below);
  if (below === place) return value;
  // What stands behind is not smaller; the least of it is the next one.
  let next = Infinity;
  for (let i = below + 1; i < own.length; i += 1) if (own[i] < next) next = own[i];
  return value + (place - below) * (next - value);
}

/** As {@link quantile}, of numbers already in ascending order. */
export function sortedQuantile(sorted: Float64Array, q: number): number {
  if (sorted.length === 0) return NaN;
  const place = q * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
}

export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5);
}

/** 1.4826 = 1 / (normal quantile of 0.75): makes the median deviation a normal law's sigma. */
const normalConsistency = 1.482602218505602;

/** Robust standard deviation: the scaled median absolute deviation from the median. */
export function robustDeviation(values: ArrayLike<number>): number {
  const middle = median(values);
  const away = new Float64Array(values);
  for (let i = 0; i < away.length; i += 1) away[i] = Math.abs(away[i] - middle);
  return normalConsistency * median(away);
}
