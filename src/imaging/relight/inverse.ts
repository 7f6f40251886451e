/** Inverse of a small dense matrix, by Gauss and Jordan with partial pivoting. */

/** @returns Row-major n x n, or null when the matrix is singular. */
export function inverse(matrix: ArrayLike<number>, n: number): Float64Array | null {
  const wide = 2 * n;
  const a = new Float64Array(n * wide);
  let largest = 0;
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) {
      a[i * wide + j] = matrix[i * n + j];
      largest = Math.max(largest, Math.abs(matrix[i * n + j]));
    }
    a[i * wide + n + i] = 1;
  }
  for (let i = 0; i < n; i += 1) {
    let pivot = i;
    for (let r = i + 1; r < n; r += 1) {
      if (Math.abs(a[r * wide + i]) > Math.abs(a[pivot * wide + i])) pivot = r;
    }
    // Relative to the largest element: what is left below this is rounding.
    if (!(Math.abs(a[pivot * wide + i]) > 1e-13 * largest)) return null;
    if (pivot !== i) {
      for (let k = 0; k < wide; k += 1) {
        const kept = a[i * wide + k];
        a[i * wide + k] = a[pivot * wide + k];
        a[pivot * wide + k] = kept;
      }
    }
    const scale = 1 / a[i * wide + i];
    for (let k = 0; k < wide; k += 1) a[i * wide + k] *= scale;
    for (let r = 0; r < n; r += 1) {
      const factor = a[r * wide + i];
      if (r === i || factor === 0) continue;
      for (let k = i; k < wide; k += 1) a[r * wide + k] -= factor * a[i * wide + k];
    }
  }
  return Float64Array.from(
    { length: n * n },
    (_, at) => a[Math.floor(at / n) * wide + n + (at % n)],
  );
}
