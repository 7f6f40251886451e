/**
 * Data planes as tiles: K planes of 8-bit numbers pass by row after row, and every level of their
 * pyramid is made at once. A tile is one grey picture with its K planes under one another, so
 * that nothing mixes them; levels are plain means over the pixels that they cover, since a code
 * here is a number and not an encoded tone.
 *
 * Memory grows with the width and the number of planes, not with the height. `layer.json` is
 * written last: a folder that has one is complete.
 *
 * References
 * - Layout of the files: `src/records/layer.ts`.
 * - WebP container specification: no side is longer than 16383 pixels.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { srgbLight } from '../imaging/colour/light.ts';
import { rowLoops, type RowLoops } from '../imaging/row-loops.ts';
import { halveLight, halvingRoom, type TakeLight } from './halve-rows.ts';
import { layerSink, type LayerCoding } from './layer-sink.ts';
import type { PictureSink } from './picture-sink.ts';
import { levelShapes, type LevelShape, type PictureSize } from './pyramid-geometry.ts';

/** K planes over one frame, as rows that pass by once. */
export interface PlaneRows {
  readonly width: number;
  readonly height: number;
  readonly planes: number;
  /**
   * Each row from the top: codes of plane 0, then of plane 1 ..., `planes * width` in all. The
   * array may be used again for the following row.
   */
  rows(): AsyncIterable<Uint8Array> | Iterable<Uint8Array>;
}

export interface LayerOptions extends LayerCoding {
  /** Folder that receives the files; made when absent. The caller moves it into place. */
  readonly folder: string;
  /** Side of a tile, pixels. */
  readonly tile?: number | undefined;
  /**
   * The rest of `layer.json`: `kind`, `offset`, `step` and what the kind adds. A function is
   * asked when all rows have passed.
   */
  readonly own: object | (() => object);
}

/** What the writer itself puts into `layer.json`. */
export interface LayerGeometry extends PictureSize {
  readonly version: 1;
  readonly tile: number;
  readonly planes: number;
  readonly format: 'webp' | 'png';
  readonly levels: number;
}

/** A WebP picture's longest side. */
const longestSide = 16383;

/**
 * Write the tiles and `layer.json`. The same rows and options give the same bytes.
 *
 * @throws RangeError if a stack of tiles is too tall for a picture, or rows are missing or too
 *   many; what the rows throw; the first error of the encoder. Then there is no `layer.json`.
 */
export async function writeLayer(source: PlaneRows, options: LayerOptions): Promise<LayerGeometry> {
  const { folder, tile = 512, format } = options;
  const { width, height, planes } = source;
  if (planes * tile > longestSide) {
    throw new RangeError(
      `${planes} planes of ${tile} px make tiles ${planes * tile} px tall, more than ${longestSide}. Choose a smaller tile.`,
    );
  }
  const levels = levelShapes(width, height, tile);
  const sink = layerSink(folder, options);
  const takers = Array.from({ length: planes }, () => [] as TakeLight[]);
  levels.forEach((level, n) => {
    const put = stackedTiles(level, n, planes, tile, sink);
    takers.forEach((list, plane) => list.push((row) => put(plane, row)));
  });
  const room = halvingRoom(levels, 1);
  const loops = rowLoops(
    { width, channels: 1, depth: 8, light: srgbLight(8) },
    { samples: planes * room.samples + width, rows: planes * room.rows + 1 },
  );
  const chains = takers.map((list) => chain(source, levels, list, loops));
  await mkdir(folder, { recursive: true });

  const line = loops.floats(width);
  let y = 0;
  for await (const codes of source.rows()) {
    if (y === height) throw new RangeError(`More than the ${height} rows that were announced.`);
    for (let plane = 0; plane < planes; plane += 1) {
      line.set(codes.subarray(plane * width, (plane + 1) * width));
      chains[plane](line);
    }
    y += 1;
    if (sink.full) await sink.ready();
  }
  if (y < height) throw new RangeError(`Only ${y} of ${height} rows came.`);
  await sink.finish();

  const geometry: LayerGeometry = {
    ...{ version: 1, width, height, tile, planes, format, levels: levels.length },
  };
  const own = typeof options.own === 'function' ? (options.own as () => object)() : options.own;
  await writeFile(join(folder, 'layer.json'), `${JSON.stringify({ ...geometry, ...own })}\n`);
  return geometry;
}

/** One plane through all levels: each passes its rows on and hands their halves to the next. */
function chain(
  source: PictureSize,
  levels: readonly LevelShape[],
  takers: readonly TakeLight[],
  loops: RowLoops,
): TakeLight {
  return takers.reduceRight<TakeLight>(
    (next, take, n) => {
      const last = n === levels.length - 1;
      const halve = last
        ? null
        : halveLight({ source, level: levels[n], channels: 1, loops, next });
      return (row) => {
        take(row);
        halve?.(row);
      };
    },
    () => undefined,
  );
}

/** Rounds the rows of one level's planes into stacked tiles. */
function stackedTiles(
  { width, height }: LevelShape,
  level: number,
  planes: number,
  tile: number,
  sink: PictureSink,
): (plane: number, row: Float32Array) => void {
  const columns = Math.ceil(width / tile);
  const band: Uint8Array[] = [];
  const reached = new Uint32Array(planes);
  return (plane, row) => {
    const y = reached[plane];
    reached[plane] += 1;
    const within = y % tile;
    const rows = Math.min(tile, height - (y - within));
    for (let column = 0; column < columns; column += 1) {
      const left = column * tile;
      const samples = Math.min(tile, width - left);
      if (within === 0 && plane === 0) band[column] = sink.room(samples * rows * planes);
      const to = (plane * rows + within) * samples;
      const picture = band[column];
      for (let x = 0; x < samples; x += 1) picture[to + x] = row[left + x] + 0.5;
    }
    if (plane < planes - 1 || within < rows - 1) return;
    const across = Math.floor(y / tile);
    for (let column = 0; column < columns; column += 1) {
      const samples = Math.min(tile, width - column * tile);
      sink.take(`${level}/${column}-${across}`, band[column], samples, rows * planes);
    }
  };
}
