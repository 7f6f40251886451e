/**
 * A deep-zoom pyramid from one pass over the rows of a picture: every level at once, shrunk in
 * linear light, nothing kept on disk but the result. Memory grows with the picture's width, not
 * with its height.
 *
 * The result is an IIIF Image API 3.0 service of level 0, which any host of static files can
 * serve. `info.json` is written last: a folder that has one is complete.
 *
 * References: see `pyramid-geometry.ts`.
 */
import { copyFile, mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { rowLoops } from '../imaging/row-loops.ts';
import { halveCodes, halveLight, halvingRoom, type TakeLight } from './halve-rows.ts';
import { jpegSink } from './jpeg-sink.ts';
import { paintCodes, paintLight } from './paint-row.ts';
import type { PictureSink } from './picture-sink.ts';
import {
  infoDocument,
  levelShapes,
  pyramidAddresses,
  tileAddress,
  wholeAddress,
  wholeLevels,
  type LevelShape,
  type PictureSize,
} from './pyramid-geometry.ts';
import { rightsPacket, type PictureRights } from './rights-packet.ts';
import type { RowSource } from './row-source.ts';

/** Pixels of the largest whole picture; larger ones are given as tiles alone. */
export const defaultMaxPixels = 4_200_000;

export interface PyramidOptions {
  /** Folder that receives the files; made when absent. The caller moves it into place. */
  readonly folder: string;
  /** Address of the service in `info.json`, without a final slash. */
  readonly id: string;
  /** Side of a tile, pixels. */
  readonly tile?: number | undefined;
  /** JPEG quality, 1 to 100. */
  readonly quality?: number | undefined;
  /** Rights, credit and text alternative, written into whole pictures. */
  readonly metadata?: PictureRights | undefined;
  /** Pixels of the largest whole picture. */
  readonly maxPixels?: number | undefined;
}

export interface PyramidResult {
  readonly width: number;
  readonly height: number;
  /** Whole pictures that exist, smallest first. */
  readonly sizes: readonly PictureSize[];
  /** Pictures written, tiles and whole ones. */
  readonly tiles: number;
}

/**
 * Write the pyramid of a picture. The same rows and options give the same bytes.
 *
 * @throws what the source's rows throw, and the first error of the encoder; then there is no
 *   `info.json`.
 */
export async function writePyramid(
  source: RowSource,
  options: PyramidOptions,
): Promise<PyramidResult> {
  const { folder, id, tile = 512, quality = 85, maxPixels = defaultMaxPixels } = options;
  const packet = options.metadata && rightsPacket(options.metadata);
  await mkdir(folder, { recursive: true });
  await paintPyramid(
    source,
    { tile, maxPixels },
    jpegSink(folder, { channels: source.channels, quality, packet }),
  );

  const { width, height } = source;
  const info = infoDocument(id, source, tile, maxPixels, options.metadata?.statement);
  const sizes = info['sizes'] as PictureSize[];
  const largest = sizes[sizes.length - 1];
  await mkdir(join(folder, 'full/max/0'), { recursive: true });
  await copyFile(
    join(folder, wholeAddress(largest), 'default.jpg'),
    join(folder, 'full/max/0/default.jpg'),
  );
  await writeFile(join(folder, 'info.json'), `${JSON.stringify(info, null, 2)}\n`);
  return { width, height, sizes, tiles: pyramidAddresses(source, tile, maxPixels).length };
}

/** Every picture of the pyramid but `full/max`, as painted bytes, to a sink. */
export async function paintPyramid(
  source: RowSource,
  { tile, maxPixels }: { tile: number; maxPixels: number },
  sink: PictureSink,
): Promise<void> {
  const { channels, light } = source;
  const levels = levelShapes(source.width, source.height, tile);
  // The level that fits one tile is a whole picture already.
  const whole = new Set(wholeLevels(levels, maxPixels).filter((l) => l !== levels.at(-1)));

  const loops = rowLoops(source, halvingRoom(levels, channels));

  /** Puts the painted row of a level into its pictures. */
  function pictures(level: LevelShape): () => void {
    const parts = [tileRows(source, level, tile, loops.bytes, sink)];
    if (whole.has(level)) parts.push(wholeRows(channels, level, loops.bytes, sink));
    return () => {
      for (const part of parts) part();
    };
  }

  // From the smallest level up, so that each level knows the one that takes its rows.
  const paint = paintLight(loops, light);
  const take = levels.slice(1).reduceRight<TakeLight | null>((next, level) => {
    const put = pictures(level);
    const halve = next && halveLight({ source, level, channels, loops, next });
    return (row) => {
      paint(row);
      put();
      halve?.(row);
    };
  }, null);
  const paintFull = paintCodes(loops, light);
  const put = pictures(levels[0]);
  const halve =
    take && halveCodes({ source, level: levels[0], channels, loops, next: take }, light.toLinear);

  const line = source.width * channels;
  for await (const { data, rows } of source.batches()) {
    for (let r = 0; r < rows; r += 1) {
      loops.codes.set(data.subarray(r * line, (r + 1) * line));
      paintFull();
      put();
      // Last, since the smaller levels are painted over this row.
      halve?.();
      if (sink.full) await sink.ready();
    }
  }
  await sink.finish();
}

/** Cuts the rows of a level into tiles; each call takes the row that `painted` holds. */
function tileRows(
  source: RowSource,
  level: LevelShape,
  tile: number,
  painted: Uint8Array,
  sink: PictureSink,
): () => void {
  const { width, height } = level;
  const { channels } = source;
  const line = tile * channels;
  const parts = Array.from({ length: Math.ceil(width / tile) }, (_, column) =>
    painted.subarray(column * line, Math.min(width * channels, (column + 1) * line)),
  );
  const band: Uint8Array[] = [];
  let y = 0;
  return () => {
    const within = y % tile;
    // A loop by number: this runs a few million times, and an iterator makes garbage each time.
    for (let column = 0; column < parts.length; column += 1) {
      const part = parts[column];
      if (within === 0) band[column] = sink.room(tile * line);
      band[column].set(part, within * part.length);
    }
    y += 1;
    if (within < tile - 1 && y < height) return;
    for (const [column, part] of parts.entries()) {
      const address = tileAddress(source, level, tile, column, Math.floor((y - 1) / tile));
      sink.take(address, band[column], part.length / channels, within + 1);
    }
  };
}

/** Collects the rows of a level into one picture. */
function wholeRows(
  channels: 1 | 3,
  { width, height }: LevelShape,
  painted: Uint8Array,
  sink: PictureSink,
): () => void {
  const row = painted.subarray(0, width * channels);
  const picture = sink.room(row.length * height);
  let y = 0;
  return () => {
    picture.set(row, y * row.length);
    y += 1;
    if (y === height) sink.take(wholeAddress({ width, height }), picture, width, height);
  };
}
