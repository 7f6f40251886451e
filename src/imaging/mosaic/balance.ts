/**
 * Exposure balance: how much lighter or darker each close-up has to be made, so that neighbours
 * agree where they overlap. Logarithms of linear light, by least squares over all overlaps.
 *
 * First one gain for each tile, the figure that tells an exposure that differs. Then a slow
 * field of gains over each tile: the lens falls off, and a lamp that stays with the camera lights
 * a place of the plate otherwise in each close-up. The field follows the overlaps and is as level
 * as they allow in between; the mean over all tiles stays what it was.
 */
import { median } from '../inspect/quantile.ts';
import { clipLevel, white } from '../registration/masked-plane.ts';
import { lightAt, type CellTile } from './cells.ts';
import { emptyField, type GainField, nodesAt } from './gain-field.ts';
import { solveSparse, type Equation } from './sparse-squares.ts';

export interface Balance {
  /** One gain for each tile, linear light: above 1 where the tile was too dark. */
  readonly gains: readonly number[];
  readonly fields: readonly GainField[];
}

/** Below this share of white a ratio is mostly noise. Own choice. */
const darkest = 0.004;
/** Cells of a patch that must be usable for its ratio to count. */
const leastCells = 6;
/** Weight of levelness, and of staying at no gain at all, against a patch of an overlap. */
const levelness = 0.04;
const gauge = 1e-5;

/** @param pairs Indices of tiles that overlap. */
export function balanceTiles(
  tiles: readonly CellTile[],
  pairs: readonly (readonly [number, number])[],
): Balance {
  const fields = tiles.map(emptyField);
  const patches = pairs.flatMap(([first, second]) => ratios(tiles, fields, first, second));
  const scalar: Equation[] = pairs.flatMap(([first, second]) => {
    const own = patches.filter((p) => p.first === first && p.second === second);
    if (own.length === 0) return [];
    const value = median(own.map((p) => p.log));
    return { unknowns: [first, second], coefficients: [1, -1], value, weight: own.length };
  });
  const gains = centred(
    solveSparse(
      [...scalar, ...tiles.map((_, t) => still(t, 1e-6))],
      new Float64Array(tiles.length),
    ),
  );
  const offsets = fields.map((_, t) =>
    fields.slice(0, t).reduce((sum, f) => sum + f.columns * f.rows, 0),
  );
  const count = fields.reduce((sum, f) => sum + f.columns * f.rows, 0);
  const equations = [
    ...patches.map((patch) => patchEquation(patch, fields, offsets)),
    ...fields.flatMap((field, t) => levelEquations(field, offsets[t])),
  ];
  const start = new Float64Array(count);
  fields.forEach((f, t) => start.fill(gains[t], offsets[t], offsets[t] + f.columns * f.rows));
  const solved = centred(solveSparse(equations, start));
  return {
    gains: Array.from(gains, Math.exp),
    fields: fields.map((field, t) => ({
      ...field,
      log: [...solved.subarray(offsets[t], offsets[t] + field.columns * field.rows)],
    })),
  };
}

interface Patch {
  readonly first: number;
  readonly second: number;
  /** Middle, cells of the mosaic. */
  readonly x: number;
  readonly y: number;
  /** Of the second tile's light over the first's. */
  readonly log: number;
}

/** Median ratios in patches about as wide as the nodes are apart. */
function ratios(
  tiles: readonly CellTile[],
  fields: readonly GainField[],
  first: number,
  second: number,
): Patch[] {
  const [a, b] = [tiles[first], tiles[second]];
  const left = Math.max(a.left, b.left);
  const top = Math.max(a.top, b.top);
  const width = Math.min(a.left + a.width, b.left + b.width) - left;
  const height = Math.min(a.top + a.height, b.top + b.height) - top;
  if (width <= 0 || height <= 0) return [];
  const across = Math.max(1, Math.round(width / (0.7 * fields[first].stepX)));
  const down = Math.max(1, Math.round(height / (0.7 * fields[first].stepY)));
  const isUsable = (x: number, y: number): boolean =>
    [a, b].every((tile) => {
      const light = lightAt(tile, x, y);
      return light > darkest * white && light < clipLevel * white;
    });
  // At the plate's own edge a cell is part plate and part dark, in each close-up another part.
  const isInside = (x: number, y: number): boolean =>
    isUsable(x, y) &&
    isUsable(x - 2, y) &&
    isUsable(x + 2, y) &&
    isUsable(x, y - 2) &&
    isUsable(x, y + 2);
  const found = Array.from({ length: across * down }, () => ({ logs: [] as number[], x: 0, y: 0 }));
  for (let y = 0; y < height; y += 1) {
    const row = Math.floor((y * down) / height) * across;
    for (let x = 0; x < width; x += 1) {
      if (!isInside(left + x, top + y)) continue;
      const patch = found[row + Math.floor((x * across) / width)];
      const ratio = lightAt(b, left + x, top + y) / lightAt(a, left + x, top + y);
      patch.logs.push(Math.log(ratio));
      patch.x += left + x;
      patch.y += top + y;
    }
  }
  // Part of a patch may be the dark beside the plate: its place is where its light is.
  return found.flatMap(({ logs, x, y }) =>
    logs.length < leastCells
      ? []
      : { first, second, x: x / logs.length, y: y / logs.length, log: median(logs) },
  );
}

function patchEquation(
  { first, second, x, y, log }: Patch,
  fields: readonly GainField[],
  offsets: readonly number[],
): Equation {
  const a = nodesAt(fields[first], x, y);
  const b = nodesAt(fields[second], x, y);
  return {
    unknowns: [...a.map((n) => offsets[first] + n.node), ...b.map((n) => offsets[second] + n.node)],
    coefficients: [...a.map((n) => n.share), ...b.map((n) => -n.share)],
    value: log,
    weight: 1,
  };
}

function levelEquations({ columns, rows }: GainField, offset: number): Equation[] {
  const equations: Equation[] = [];
  const level = (a: number, b: number): Equation => ({
    unknowns: [a, b],
    coefficients: [1, -1],
    value: 0,
    weight: levelness,
  });
  for (let y = 0; y < rows; y += 1) {
    for (let x = 0; x < columns; x += 1) {
      const node = offset + y * columns + x;
      equations.push(still(node, gauge));
      if (x + 1 < columns) equations.push(level(node, node + 1));
      if (y + 1 < rows) equations.push(level(node, node + columns));
    }
  }
  return equations;
}

function still(unknown: number, weight: number): Equation {
  return { unknowns: [unknown], coefficients: [1], value: 0, weight };
}

function centred(values: Float64Array): Float64Array {
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  return values.map((v) => v - mean);
}
