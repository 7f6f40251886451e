/**
 * The textbook fits to compare with: for each pixel and channel its own coefficients of a fixed
 * basis. Fewer numbers than frames, but a polished plate is beyond them.
 *
 * References
 * - Quadratic in the lamp's direction projected on the plate: Proc. SIGGRAPH 2001, 519-528.
 *   doi:10.1145/383259.383320 (equation; the peak from memory, checked by its closed form).
 */
import { hemisphericalBasis } from './hemispherical.ts';
import { inverse } from './inverse.ts';
import type { Direction } from './light-place.ts';

export type TextbookBasis = (direction: Direction) => ArrayLike<number>;

/** u^2, v^2, uv, u, v, 1. */
export const biquadratic: TextbookBasis = ([u, v]) => [u * u, v * v, u * v, u, v, 1];
export const hemispherical: TextbookBasis = (direction) => hemisphericalBasis(direction);

/**
 * The matrix that takes a pixel's values under all lamps to its coefficients of least squares,
 * row-major, one row for each coefficient; null where the lamps do not determine them.
 *
 * @param ridge Added to the normal equations' diagonal, for each lamp.
 */
export function fitMatrix(
  basis: TextbookBasis,
  lamps: readonly Direction[],
  ridge = 0,
): Float64Array | null {
  const rows = lamps.map((lamp) => basis(lamp));
  const terms = rows[0].length;
  const normal = new Float64Array(terms * terms);
  for (const row of rows) {
    for (let i = 0; i < terms; i += 1) {
      for (let j = 0; j < terms; j += 1) normal[i * terms + j] += row[i] * row[j];
    }
  }
  for (let i = 0; i < terms; i += 1) normal[i * terms + i] += ridge * lamps.length;
  const solved = inverse(normal, terms);
  if (!solved) return null;
  const matrix = new Float64Array(terms * lamps.length);
  for (let i = 0; i < terms; i += 1) {
    for (let l = 0; l < lamps.length; l += 1) {
      let sum = 0;
      for (let j = 0; j < terms; j += 1) sum += solved[i * terms + j] * rows[l][j];
      matrix[i * lamps.length + l] = sum;
    }
  }
  return matrix;
}

/** Coefficients of one pixel's values. */
export function fitPixel(matrix: Float64Array, values: ArrayLike<number>): Float64Array {
  const lamps = values.length;
  return Float64Array.from({ length: matrix.length / lamps }, (_, i) => {
    let sum = 0;
    for (let l = 0; l < lamps; l += 1) sum += matrix[i * lamps + l] * values[l];
    return sum;
  });
}

/** Value of a fit under a lamp. */
export function fittedValue(
  basis: TextbookBasis,
  coefficients: ArrayLike<number>,
  direction: Direction,
): number {
  const terms = basis(direction);
  let sum = 0;
  for (let i = 0; i < terms.length; i += 1) sum += coefficients[i] * terms[i];
  return sum;
}

/** Where a biquadratic is largest, as (u, v); null where it has no maximum. */
export function biquadraticPeak(a: ArrayLike<number>): readonly [u: number, v: number] | null {
  const determinant = 4 * a[0] * a[1] - a[2] * a[2];
  if (!(a[0] < 0 && determinant > 0)) return null;
  return [
    (a[2] * a[4] - 2 * a[1] * a[3]) / determinant,
    (a[2] * a[3] - 2 * a[0] * a[4]) / determinant,
  ];
}
