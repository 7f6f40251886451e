/**
 * Weighted linear least squares by normal equations, and its robust form with Tukey's
 * biweight: points far from the fit lose their vote, so that a scratch, a lamp's hot spot or
 * the sitter's collar does not bend a surface that describes the light.
 *
 * References
 * - Holland, P. W. and Welsch, R. E. (1977). Robust regression using iteratively reweighted
 *   least-squares. Communications in Statistics A6(9), 813-827. doi:10.1080/03610927708827533
 */
import { median } from './quantile.ts';

/**
 * Coefficients c that make sum w_i (a_i . c - b_i)^2 least.
 * @param rows Row-major design matrix, n rows of `terms` numbers.
 * @returns null when the equations do not determine every coefficient.
 */
export function leastSquares(
  rows: Float64Array,
  terms: number,
  values: ArrayLike<number>,
  weights?: ArrayLike<number>,
): Float64Array | null {
  const normal = new Float64Array(terms * terms);
  const right = new Float64Array(terms);
  for (let i = 0; i < values.length; i += 1) {
    const w = weights ? weights[i] : 1;
    if (w === 0) continue;
    const at = i * terms;
    for (let j = 0; j < terms; j += 1) {
      const scaled = w * rows[at + j];
      right[j] += scaled * values[i];
      for (let k = 0; k <= j; k += 1) normal[j * terms + k] += scaled * rows[at + k];
    }
  }
  return solveCholesky(normal, right, terms);
}

/** Solve a symmetric positive definite system given by its lower triangle; null when it is not one. */
function solveCholesky(matrix: Float64Array, right: Float64Array, n: number): Float64Array | null {
  const scale = Math.max(...Array.from({ length: n }, (_, j) => matrix[j * n + j]));
  for (let j = 0; j < n; j += 1) {
    let pivot = matrix[j * n + j];
    for (let k = 0; k < j; k += 1) pivot -= matrix[j * n + k] ** 2;
    // Relative to the largest diagonal element: what is left below this is rounding.
    if (!(pivot > scale * 1e-12)) return null;
    const root = Math.sqrt(pivot);
    matrix[j * n + j] = root;
    for (let i = j + 1; i < n; i += 1) {
      let sum = matrix[i * n + j];
      for (let k = 0; k < j; k += 1) sum -= matrix[i * n + k] * matrix[j * n + k];
      matrix[i * n + j] = sum / root;
    }
  }
  const x = Float64Array.from(right);
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < i; k += 1) x[i] -= matrix[i * n + k] * x[k];
    x[i] /= matrix[i * n + i];
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < n; k += 1) x[i] -= matrix[k * n + i] * x[k];
    x[i] /= matrix[i * n + i];
  }
  return x;
}

export interface RobustFit {
  readonly coefficients: Float64Array;
  /** Value minus fit, in the order of the values. */
  readonly residuals: Float64Array;
  /** Robust standard deviation of the residuals. */
  readonly deviation: number;
}

/** 4.685: 95 % efficiency on normal errors (Holland and Welsch 1977, table 1). */
const biweightTuning = 4.685;

/**
 * The same with Tukey's biweight, iterated from a plain fit.
 * @param floor Deviation below which no residual is distrusted, in the values' unit.
 */
export function robustLeastSquares(
  rows: Float64Array,
  terms: number,
  values: ArrayLike<number>,
  floor = 1e-9,
  iterations = 20,
): RobustFit | null {
  const n = values.length;
  const weights = new Float64Array(n).fill(1);
  const residuals = new Float64Array(n);
  let coefficients = new Float64Array(terms);
  let deviation = Infinity;
  for (let round = 0; round < iterations; round += 1) {
    const solved = leastSquares(rows, terms, values, weights);
    if (!solved) return null;
    let moved = 0;
    for (let j = 0; j < terms; j += 1) moved += Math.abs(solved[j] - coefficients[j]);
    coefficients = Float64Array.from(solved);
    for (let i = 0; i < n; i += 1) {
      let fit = 0;
      for (let j = 0; j < terms; j += 1) fit += rows[i * terms + j] * coefficients[j];
      residuals[i] = values[i] - fit;
    }
    deviation = 1.4826 * median(residuals.map(Math.abs));
    if (round > 0 && moved < 1e-9) break;
    const cut = biweightTuning * Math.max(deviation, floor);
    for (let i = 0; i < n; i += 1) {
      const u = residuals[i] / cut;
      weights[i] = Math.abs(u) >= 1 ? 0 : (1 - u * u) ** 2;
    }
  }
  return { coefficients, residuals, deviation };
}
