/**
 * How even the light lies on the field, and where it does not.
 *
 * Two figures are given because tables differ in what they mean: the spread between the 5th
 * and the 95th percentile of the surface against its median, and the standard deviation
 * against the mean. Neither counts grain, dust or hot spots; hot spots are listed apart.
 *
 * References
 * - FADGI (2016). Technical Guidelines for Digitizing Cultural Heritage Materials, "Prints
 *   and Photographs": "illuminance non-uniformity", per cent. The chapter gives the limit,
 *   not the formula; that it is the spread used here is our reading.
 * - FADGI (2023), 3rd edition, as quoted by a secondary source: standard deviation / mean.
 */
import type { FlatField } from './flat-field.ts';
import { flatFieldGrid } from './flat-field.ts';
import type { Grid } from './grid.ts';
import { quantile } from './quantile.ts';

export interface Evenness {
  /** (95th - 5th percentile) / median of the surface, per cent of linear light. */
  readonly spreadPercent: number;
  /** Standard deviation / mean of the surface, per cent. */
  readonly deviationPercent: number;
  /** Darkest over brightest place of the surface, 0 to 1. */
  readonly darkestOverBrightest: number;
  /** Where the surface is brightest and darkest, 0 to 1 across and down the picture. */
  readonly brightest: Place;
  readonly darkest: Place;
}

export interface Place {
  readonly across: number;
  readonly down: number;
}

/** A place much brighter than the smooth light around it. */
export interface HotSpot {
  /** Centre, pixels of the measured plane. */
  readonly x: number;
  readonly y: number;
  /** Largest excess over the surface, per cent. */
  readonly excessPercent: number;
  readonly blocks: number;
}

/** Measure a fitted surface on a grid that is fine against degree 4. */
export function measureEvenness(field: FlatField): Evenness {
  const grid = flatFieldGrid(field, 48, 36);
  const { values } = grid;
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  const variance = values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length;
  let low = 0;
  let high = 0;
  values.forEach((v, i) => {
    if (v < values[low]) low = i;
    if (v > values[high]) high = i;
  });
  return {
    spreadPercent:
      (100 * (quantile(values, 0.95) - quantile(values, 0.05))) / quantile(values, 0.5),
    deviationPercent: (100 * Math.sqrt(variance)) / mean,
    darkestOverBrightest: values[low] / values[high],
    brightest: placeOf(grid, high),
    darkest: placeOf(grid, low),
  };
}

function placeOf(grid: Grid, cell: number): Place {
  const column = cell % grid.columns;
  return {
    across: (column + 0.5) / grid.columns,
    down: ((cell - column) / grid.columns + 0.5) / grid.rows,
  };
}

/** Excess over the surface from which a block counts as hot; common practice, no source. */
const hotExcess = Math.log(1.08);
/** Fewer adjoining blocks than this are dust or a scratch, not light; common practice, no source. */
const fewestHotBlocks = 3;

/** Hot spots of a blank field, the strongest first. */
export function findHotSpots(field: FlatField): readonly HotSpot[] {
  const { columns, rows, values } = field.residual;
  const seen = new Uint8Array(values.length);
  const spots: HotSpot[] = [];
  for (let start = 0; start < values.length; start += 1) {
    if (seen[start] || !(values[start] > hotExcess)) continue;
    const group: number[] = [start];
    seen[start] = 1;
    for (let k = 0; k < group.length; k += 1) {
      for (const next of neighbours(group[k], columns, rows)) {
        if (seen[next] || !(values[next] > hotExcess)) continue;
        seen[next] = 1;
        group.push(next);
      }
    }
    if (group.length >= fewestHotBlocks) spots.push(describeSpot(field, group));
  }
  return spots.sort((a, b) => b.excessPercent - a.excessPercent);
}

function neighbours(cell: number, columns: number, rows: number): number[] {
  const column = cell % columns;
  const row = (cell - column) / columns;
  const found: number[] = [];
  if (column > 0) found.push(cell - 1);
  if (column < columns - 1) found.push(cell + 1);
  if (row > 0) found.push(cell - columns);
  if (row < rows - 1) found.push(cell + columns);
  return found;
}

function describeSpot(field: FlatField, group: readonly number[]): HotSpot {
  const { columns, rows, values } = field.residual;
  let weight = 0;
  let x = 0;
  let y = 0;
  let top = 0;
  for (const cell of group) {
    const excess = Math.expm1(values[cell]);
    const column = cell % columns;
    weight += excess;
    x += excess * (column + 0.5);
    y += excess * ((cell - column) / columns + 0.5);
    top = Math.max(top, excess);
  }
  return {
    x: ((x / weight) * field.width) / columns - 0.5,
    y: ((y / weight) * field.height) / rows - 0.5,
    excessPercent: 100 * top,
    blocks: group.length,
  };
}
