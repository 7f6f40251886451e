/**
 * Least squares with many unknowns of which each equation names a few, by conjugate gradients.
 *
 * References
 * - Hestenes, M. R. and Stiefel, E. (1952). Methods of conjugate gradients for solving linear
 *   systems. J. Res. Natl. Bur. Stand. 49(6), 409-436. doi:10.6028/jres.049.044
 */

/** `weight * (sum of coefficients * unknowns - value)^2` is one term of the sum. */
export interface Equation {
  readonly unknowns: readonly number[];
  readonly coefficients: readonly number[];
  readonly value: number;
  readonly weight: number;
}

/** Share of the first residual at which the search ends, and most steps. */
const tolerance = 1e-8;
const mostSteps = 600;

/** @param x A start; overwritten by the solution. */
export function solveSparse(equations: readonly Equation[], x: Float64Array): Float64Array {
  const n = x.length;
  const scale = jacobi(equations, n);
  const r = residual(equations, x);
  const z = r.map((v, i) => v * scale[i]);
  const p = z.slice();
  let rz = dot(r, z);
  const end = rz * tolerance * tolerance;
  for (let step = 0; step < mostSteps && rz > end && rz > 1e-300; step += 1) {
    const q = product(equations, p);
    const alpha = rz / dot(p, q);
    for (let i = 0; i < n; i += 1) {
      x[i] += alpha * p[i];
      r[i] -= alpha * q[i];
      z[i] = r[i] * scale[i];
    }
    const next = dot(r, z);
    const beta = next / rz;
    rz = next;
    for (let i = 0; i < n; i += 1) p[i] = z[i] + beta * p[i];
  }
  return x;
}

function jacobi(equations: readonly Equation[], n: number): Float64Array {
  const diagonal = new Float64Array(n).fill(1e-12);
  for (const { unknowns, coefficients, weight } of equations) {
    unknowns.forEach((u, k) => (diagonal[u] += weight * coefficients[k] ** 2));
  }
  return diagonal.map((v) => 1 / v);
}

function residual(equations: readonly Equation[], x: Float64Array): Float64Array {
  const out = new Float64Array(x.length);
  for (const { unknowns, coefficients, value, weight } of equations) {
    let miss = value;
    for (let k = 0; k < unknowns.length; k += 1) miss -= coefficients[k] * x[unknowns[k]];
    for (let k = 0; k < unknowns.length; k += 1)
      out[unknowns[k]] += weight * coefficients[k] * miss;
  }
  return out;
}

function product(equations: readonly Equation[], p: Float64Array): Float64Array {
  const out = new Float64Array(p.length);
  for (const { unknowns, coefficients, weight } of equations) {
    let sum = 0;
    for (let k = 0; k < unknowns.length; k += 1) sum += coefficients[k] * p[unknowns[k]];
    for (let k = 0; k < unknowns.length; k += 1) out[unknowns[k]] += weight * coefficients[k] * sum;
  }
  return out;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i] * b[i];
  return sum;
}
