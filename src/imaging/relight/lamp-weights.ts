/**
 * How much each captured lamp counts for a lamp in another place. Any method whose weights do
 * not depend on the pixel is one small matrix times the terms of the direction, and how well it
 * would have foretold a frame from the others follows without fitting again.
 *
 * References
 * - Duchon, J. (1977), as in `lamp-terms.ts`.
 * - Leave-one-out error (Q y)_i / Q_ii: Wahba, G. (1990). Spline models for observational data,
 *   section 4.2. SIAM. doi:10.1137/1.9781611970128
 */
import { hemisphericalTerms } from './hemispherical.ts';
import { inverse } from './inverse.ts';
import { lampTerms, type TermKind } from './lamp-terms.ts';
import type { Direction } from './light-place.ts';
import type { Estimate } from '../plane.ts';

export interface LampWeights {
  readonly kind: TermKind;
  readonly lamps: number;
  /** Terms of a direction. */
  readonly terms: number;
  /** Row-major, one row for each lamp: weights = matrix * terms. */
  readonly matrix: Float64Array;
  /** Row-major: error of lamp i foretold from the others is (residual * y)_i / residual_ii. */
  readonly residual: Float64Array;
}

/** Ridge of the hemispherical fit, relative to the number of lamps: keeps rings solvable. */
const ridge = 1e-4;

export function lampWeights(kind: TermKind, lamps: readonly Direction[]): Estimate<LampWeights> {
  return kind === 'thin-plate' ? thinPlate(lamps) : hemispherical(lamps);
}

function thinPlate(lamps: readonly Direction[]): Estimate<LampWeights> {
  const count = lamps.length;
  const size = count + 3;
  const system = new Float64Array(size * size);
  lamps.forEach((lamp, i) => {
    const terms = lampTerms('thin-plate', lamps, lamp);
    for (let j = 0; j < size; j += 1) system[i * size + j] = terms[j];
    for (let j = count; j < size; j += 1) system[j * size + i] = terms[j];
  });
  const solved = inverse(system, size);
  if (!solved) {
    return { ok: false, reason: 'two lamps stand in the same place, or all in one line' };
  }
  const matrix = solved.slice(0, count * size);
  const residual = new Float64Array(count * count);
  for (let i = 0; i < count; i += 1) {
    residual.set(matrix.subarray(i * size, i * size + count), i * count);
  }
  return { ok: true, value: { kind: 'thin-plate', lamps: count, terms: size, matrix, residual } };
}

function hemispherical(lamps: readonly Direction[]): Estimate<LampWeights> {
  const count = lamps.length;
  const terms = hemisphericalTerms;
  const rows = lamps.map((lamp) => lampTerms('hemispherical', lamps, lamp));
  const normal = new Float64Array(terms * terms);
  for (let i = 0; i < terms; i += 1) {
    for (let j = 0; j < terms; j += 1) {
      for (const row of rows) normal[i * terms + j] += row[i] * row[j];
    }
    normal[i * terms + i] += ridge * count;
  }
  const solved = inverse(normal, terms);
  if (!solved) return { ok: false, reason: 'the lamps do not determine sixteen functions' };
  const matrix = new Float64Array(count * terms);
  const residual = new Float64Array(count * count);
  for (let l = 0; l < count; l += 1) {
    for (let i = 0; i < terms; i += 1) {
      let sum = 0;
      for (let j = 0; j < terms; j += 1) sum += solved[i * terms + j] * rows[l][j];
      matrix[l * terms + i] = sum;
    }
    for (let m = 0; m < count; m += 1) {
      let hat = 0;
      for (let i = 0; i < terms; i += 1) hat += matrix[l * terms + i] * rows[m][i];
      // Row m of the hat matrix is what lamp l has to say of lamp m.
      residual[m * count + l] = (l === m ? 1 : 0) - hat;
    }
  }
  return { ok: true, value: { kind: 'hemispherical', lamps: count, terms, matrix, residual } };
}

/** Weights of the lamps for a direction. */
export function weightsFor(
  weights: LampWeights,
  lamps: readonly Direction[],
  direction: Direction,
): Float64Array {
  const terms = lampTerms(weights.kind, lamps, direction);
  return Float64Array.from({ length: weights.lamps }, (_, l) => {
    let sum = 0;
    for (let t = 0; t < weights.terms; t += 1)
      sum += weights.matrix[l * weights.terms + t] * terms[t];
    return sum;
  });
}
