/**
 * The shape of the light over the field, from a capture of an even white surface (or of any
 * surface that is even enough): medians of the logarithm in blocks, and a smooth surface
 * through them that dust, scratches and hot spots cannot bend.
 *
 * Medians of blocks rather than pixels because the grain of paper and sensor is not light;
 * the logarithm because lamps multiply.
 *
 * References
 * - Tukey's biweight: see least-squares.ts.
 * - The degree 4 is common practice, no source: it follows inverse-square fall-off of a lamp
 *   about as far away as the plate is wide, and cos^4 vignetting, but no hot spot.
 */
import type { Estimate } from '../plane.ts';
import type { Grid } from './grid.ts';
import { cellEdges } from './grid.ts';
import { robustLeastSquares } from './least-squares.ts';
import { median, quantile } from './quantile.ts';
import type { Samples } from './samples.ts';

/** The light's surface over a picture, in natural logarithm of linear light. */
export interface FlatField {
  readonly degree: number;
  /** Coefficients of products of Chebyshev polynomials; order as {@link surfaceTerms}. */
  readonly coefficients: readonly number[];
  /** Median over the picture of the surface, natural logarithm; gains are relative to it. */
  readonly middle: number;
  /** Block medians minus the surface, natural logarithm; NaN where a block was left out. */
  readonly residual: Grid;
  /** Robust standard deviation of those residuals. */
  readonly deviation: number;
  /** Size of the measured plane, pixels. */
  readonly width: number;
  readonly height: number;
}

export interface FlatFieldOptions {
  readonly degree?: number;
  /** Side of a block, pixels. */
  readonly block?: number;
  /** Samples at or above this are clipped and left out. */
  readonly clip?: number;
  /** What a block says: its median, or a higher quantile for the bright background of a picture. */
  readonly blockQuantile?: number;
  /** Whether a block, given by its centre in pixels, takes part. */
  readonly within?: (x: number, y: number) => boolean;
}

/** Powers of the surface's terms along x and y, in the order of the coefficients. */
export function surfaceTerms(degree: number): readonly (readonly [number, number])[] {
  const terms: [number, number][] = [];
  for (let total = 0; total <= degree; total += 1) {
    for (let down = 0; down <= total; down += 1) terms.push([total - down, down]);
  }
  return terms;
}

/** Fit the light's surface to a plane of linear light, of any unit. */
export function fitFlatField(plane: Samples, options: FlatFieldOptions = {}): Estimate<FlatField> {
  const degree = options.degree ?? 4;
  const block = options.block ?? Math.max(8, Math.round(Math.max(plane.width, plane.height) / 90));
  const grid = blockLogs(plane, block, options);
  const terms = surfaceTerms(degree);
  const used: number[] = [];
  grid.values.forEach((value, i) => {
    if (!Number.isNaN(value)) used.push(i);
  });
  // Three blocks to a coefficient is the least with which a robust fit can outvote anything.
  if (used.length < 3 * terms.length) {
    return { ok: false, reason: 'too little of the picture is neither black nor clipped' };
  }
  const rows = new Float64Array(used.length * terms.length);
  used.forEach((cell, i) => {
    const [u, v] = centreOf(grid, cell);
    rows.set(termValues(terms, u, v), i * terms.length);
  });
  const values = Float64Array.from(used, (cell) => grid.values[cell]);
  const fit = robustLeastSquares(rows, terms.length, values, 1e-4);
  if (!fit) return { ok: false, reason: 'the usable blocks do not spread over the picture' };
  const residual = new Float64Array(grid.values.length).fill(NaN);
  used.forEach((cell, i) => (residual[cell] = fit.residuals[i]));
  const surface = values.map((value, i) => value - fit.residuals[i]);
  return {
    ok: true,
    value: {
      degree,
      coefficients: [...fit.coefficients],
      middle: median(surface),
      residual: { ...grid, values: residual },
      deviation: fit.deviation,
      width: plane.width,
      height: plane.height,
    },
  };
}

/**
 * Linear light of the surface at a place, relative to its median over the picture.
 * @param u -1 at the picture's left edge, 1 at its right; `v` likewise from top to bottom.
 */
export function flatFieldAt(field: FlatField, u: number, v: number): number {
  const terms = surfaceTerms(field.degree);
  const values = termValues(terms, u, v);
  let log = 0;
  for (let j = 0; j < terms.length; j += 1) log += field.coefficients[j] * values[j];
  return Math.exp(log - field.middle);
}

/**
 * One row of factors that even out a picture taken under the same light: multiply linear
 * samples by them. The picture may have any size; it must show the same field.
 */
export function flatFieldGains(
  field: FlatField,
  row: number,
  width: number,
  height: number,
): Float32Array {
  const v = (2 * (row + 0.5)) / height - 1;
  return Float32Array.from(
    { length: width },
    (_, x) => 1 / flatFieldAt(field, (2 * (x + 0.5)) / width - 1, v),
  );
}

/** The surface over a grid, relative to its median: for maps. */
export function flatFieldGrid(field: FlatField, columns: number, rows: number): Grid {
  const values = new Float64Array(columns * rows);
  for (let i = 0; i < values.length; i += 1) {
    const [u, v] = centreOf({ columns, rows }, i);
    values[i] = flatFieldAt(field, u, v);
  }
  return { columns, rows, values };
}

/** Logarithm of each block's median (or other quantile) of samples that hold light. */
function blockLogs(plane: Samples, block: number, options: FlatFieldOptions): Grid {
  const columns = Math.max(1, Math.round(plane.width / block));
  const rows = Math.max(1, Math.round(plane.height / block));
  const across = cellEdges(plane.width, columns);
  const down = cellEdges(plane.height, rows);
  const clip = options.clip ?? Infinity;
  const values = new Float64Array(columns * rows).fill(NaN);
  for (let r = 0; r < rows; r += 1) {
    for (let c = 0; c < columns; c += 1) {
      const [x0, x1, y0, y1] = [across[c], across[c + 1], down[r], down[r + 1]];
      if (options.within && !options.within((x0 + x1 - 1) / 2, (y0 + y1 - 1) / 2)) continue;
      const kept: number[] = [];
      for (let y = y0; y < y1; y += 1) {
        for (let x = x0; x < x1; x += 1) {
          const sample = plane.data[y * plane.width + x];
          if (sample > 0 && sample < clip) kept.push(sample);
        }
      }
      // A block that is mostly clipped or black says little about the light.
      if (kept.length * 2 < (x1 - x0) * (y1 - y0)) continue;
      values[r * columns + c] = Math.log(quantile(kept, options.blockQuantile ?? 0.5));
    }
  }
  return { columns, rows, values };
}

function centreOf(
  grid: { readonly columns: number; readonly rows: number },
  cell: number,
): readonly [u: number, v: number] {
  const column = cell % grid.columns;
  const row = (cell - column) / grid.columns;
  return [(2 * (column + 0.5)) / grid.columns - 1, (2 * (row + 0.5)) / grid.rows - 1];
}

function termValues(
  terms: readonly (readonly [number, number])[],
  u: number,
  v: number,
): Float64Array {
  return Float64Array.from(terms, ([i, j]) => chebyshev(i, u) * chebyshev(j, v));
}

/** Chebyshev polynomial of the first kind: keeps the normal equations well conditioned. */
function chebyshev(n: number, x: number): number {
  let before = 1;
  let here = x;
  if (n === 0) return before;
  for (let k = 1; k < n; k += 1) [before, here] = [here, 2 * x * here - before];
  return here;
}
