/**
 * One order statistic without sorting the rest.
 *
 * References
 * - Hoare, C. A. R. (1961). Algorithm 65: Find. Communications of the ACM 4(7), 321-322.
 *   doi:10.1145/366622.366647 (DOI from memory)
 */

/**
 * The number that would stand at index `k` if the list were in ascending order.
 *
 * @param values Not empty, no NaN; left in another order.
 * @param k 0 for the smallest.
 */
export function smallestBut(values: Float32Array | Float64Array, k: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = values[(low + high) >> 1];
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i] < pivot) i += 1;
      while (values[j] > pivot) j -= 1;
      if (i > j) break;
      const kept = values[i];
      values[i] = values[j];
      values[j] = kept;
      i += 1;
      j -= 1;
    }
    if (k <= j) high = j;
    else if (k >= i) low = i;
    else break;
  }
  return values[k];
}
