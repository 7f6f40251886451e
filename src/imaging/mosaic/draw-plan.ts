/**
 * From tiles whose places are known to the plan of the mosaic: tones balanced, seams chosen.
 */
import { project, type Homography } from '../conventions.ts';
import type { Plane16 } from '../plane.ts';
import { compose, corners, normalise, translation } from '../registration/homography.ts';
import { white } from '../registration/masked-plane.ts';
import { alongSeams } from './along-seams.ts';
import { balanceTiles, type Balance } from './balance.ts';
import { balanced } from './gain-field.ts';
import { cellGrid, cellTile, type CellGrid, type CellTile } from './cells.ts';
import type { MosaicPlan } from './plan.ts';
import { seamLevels } from './seam-levels.ts';
import { findSeams } from './seams.ts';
import { seamSteps, type SeamSteps } from './seam-steps.ts';

export interface PlacedTile {
  readonly file: string;
  readonly row: number;
  readonly width: number;
  readonly height: number;
  /** From the tile to the frame, pixels. */
  readonly map: Homography;
  /** Linear luminance, shrunk by the survey's factor. */
  readonly small: Plane16;
}

export interface Frame {
  readonly width: number;
  readonly height: number;
}

export interface DrawnPlan {
  readonly plan: MosaicPlan;
  readonly gains: Balance['gains'];
  readonly steps: SeamSteps;
  /** Share of the frame that some tile covers, 0 to 1. */
  readonly covered: number;
}

/** Half the width of the ramp across a seam, pixels. */
const feather = 6;
/** Distance over which the levels of a seam fade, as a share of the shortest side of a tile. */
const levelShare = 0.08;

/**
 * @param pairs Indices of tiles that overlap.
 * @param factor Of the survey.
 */
export function drawPlan(
  tiles: readonly PlacedTile[],
  pairs: readonly (readonly [number, number])[],
  frame: Frame,
  factor: number,
): DrawnPlan {
  const { width, height } = frame;
  const grid = cellGrid(width, height, factor);
  const cells = cellsOf(tiles, factor, grid);
  const { gains, fields } = balanceTiles(cells, pairs);
  const even = cells.map((tile, t) => balanced(tile, fields[t]));
  const seams = findSeams(
    even,
    tiles.map((t) => t.row),
    grid,
  );
  const lines = alongSeams(seams, even);
  const within = lines.within.map((own) => own.map((line) => seamLevels(line, factor)));
  const between = lines.between.map((line) => seamLevels(line, factor));
  const rounded = (values: readonly number[], digits: number) =>
    values.map((v) => Number(v.toFixed(digits)));
  const plan: MosaicPlan = {
    width,
    height,
    cell: factor,
    feather,
    tiles: tiles.map((tile, t) => ({
      file: tile.file,
      width: tile.width,
      height: tile.height,
      map: tile.map,
      gain: { ...fields[t], log: rounded(fields[t].log, 6) },
    })),
    levelReach: Math.round(
      Math.max(
        2 * feather,
        levelShare * Math.min(...tiles.map((t) => Math.min(t.width, t.height))),
      ),
    ),
    bands: seams.bands.map((band, b) => ({
      tiles: band.tiles,
      seams: band.seams.map((s) => rounded(s, 2)),
      levels: within[b].map((l) => rounded(l, 5)),
    })),
    between: seams.between.map((s) => rounded(s, 2)),
    betweenLevels: between.map((l) => rounded(l, 5)),
  };
  const steps = seamSteps(
    [...lines.within.flat(), ...lines.between],
    [...within.flat(), ...between],
    factor,
  );
  return { plan, gains, steps, covered: coveredShare(cells, grid) };
}

function cellsOf(tiles: readonly PlacedTile[], factor: number, grid: CellGrid): CellTile[] {
  return tiles.map((tile) => cellTile(tile.small, factor, tile.map, grid));
}

function coveredShare(cells: readonly CellTile[], { columns, rows }: CellGrid): number {
  const covered = new Uint8Array(columns * rows);
  for (const { left, top, width, light } of cells) {
    light.forEach((v, i) => {
      if (v >= 0) covered[(top + Math.floor(i / width)) * columns + left + (i % width)] = 1;
    });
  }
  return covered.reduce((sum, v) => sum + v, 0) / covered.length;
}

/** The smallest frame around the tiles, and their maps into it. */
export function ownFrame(
  sizes: readonly Frame[],
  maps: readonly Homography[],
): Frame & { readonly maps: readonly Homography[] } {
  const points = maps.flatMap((map, t) =>
    corners(sizes[t].width, sizes[t].height).map(([x, y]) => project(map, x, y)),
  );
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  const [left, top] = [Math.floor(Math.min(...xs)), Math.floor(Math.min(...ys))];
  const move = translation(-left, -top);
  return {
    width: Math.ceil(Math.max(...xs)) - left + 1,
    height: Math.ceil(Math.max(...ys)) - top + 1,
    maps: maps.map((map) => normalise(compose(move, map))),
  };
}

/**
 * The mosaic as a small picture without seams, for laying it on the base: tiles are mixed with
 * weights that fall to nothing at their edges.
 */
export function overview(tiles: readonly PlacedTile[], frame: Frame, factor: number): Plane16 {
  const grid = cellGrid(frame.width, frame.height, factor);
  // A last, partial cell would not be a picture of its place.
  const width = Math.floor(frame.width / factor);
  const height = Math.floor(frame.height / factor);
  const sums = new Float32Array(grid.columns * grid.rows);
  const weights = new Float32Array(grid.columns * grid.rows);
  for (const tile of cellsOf(tiles, factor, grid)) {
    for (let y = 0, i = 0; y < tile.height; y += 1) {
      const down = Math.min(y + 1, tile.height - y) / tile.height;
      for (let x = 0; x < tile.width; x += 1, i += 1) {
        if (tile.light[i] < 0) continue;
        const weight = down * (Math.min(x + 1, tile.width - x) / tile.width);
        const at = (tile.top + y) * grid.columns + tile.left + x;
        sums[at] += weight * tile.light[i];
        weights[at] += weight;
      }
    }
  }
  const data = new Uint16Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const at = y * grid.columns + x;
      data[y * width + x] = weights[at] > 0 ? Math.min(white, sums[at] / weights[at] + 0.5) : 0;
    }
  }
  return { width, height, data };
}
