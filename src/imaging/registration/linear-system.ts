/**
 * Small dense systems of linear equations, as least squares gives them.
 *
 * References
 * - Golub, G. H. and Van Loan, C. F. (2013). Matrix Computations, 4th ed., section 3.4
 *   (elimination with partial pivoting). Johns Hopkins University Press.
 */

/**
 * Solve `matrix * x = right`; both are overwritten.
 *
 * @param matrix Row-major n x n.
 * @param least A pivot smaller than this share of the largest element counts as zero.
 * @returns x, or null when the matrix is singular.
 */
export function solveInPlace(
  matrix: Float64Array,
  right: Float64Array,
  least = 0,
): Float64Array | null {
  const n = right.length;
  const floor = Math.max(1e-300, least * matrix.reduce((m, v) => Math.max(m, Math.abs(v)), 0));
  for (let i = 0; i < n; i += 1) {
    let pivot = i;
    for (let r = i + 1; r < n; r += 1) {
      if (Math.abs(matrix[r * n + i]) > Math.abs(matrix[pivot * n + i])) pivot = r;
    }
    const largest = matrix[pivot * n + i];
    if (!(Math.abs(largest) > floor)) return null;
    if (pivot !== i) swapRows(matrix, right, n, i, pivot);
    for (let r = i + 1; r < n; r += 1) {
      const factor = matrix[r * n + i] / largest;
      if (factor === 0) continue;
      for (let k = i; k < n; k += 1) matrix[r * n + k] -= factor * matrix[i * n + k];
      right[r] -= factor * right[i];
    }
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    let s = right[i];
    for (let k = i + 1; k < n; k += 1) s -= matrix[i * n + k] * right[k];
    right[i] = s / matrix[i * n + i];
  }
  return right;
}

function swapRows(matrix: Float64Array, right: Float64Array, n: number, a: number, b: number) {
  for (let k = 0; k < n; k += 1) {
    const kept = matrix[a * n + k];
    matrix[a * n + k] = matrix[b * n + k];
    matrix[b * n + k] = kept;
  }
  const kept = right[a];
  right[a] = right[b];
  right[b] = kept;
}
