/**
 * Rows of an uncompressed 8- or 16-bit grey or RGB TIFF, in strips or in tiles, read once and in
 * order without decoding anything. Cameras and raw developers write such files for work, and
 * they are the large ones; every other kind goes through `scratch-rows.ts`.
 *
 * References
 * - TIFF Revision 6.0, sections 3 (baseline tags) and 15 (tiled images).
 */
import type { ByteReader } from './byte-reader.ts';
import type { RowBatch } from './row-source.ts';
import { numbersOf, type TiffDirectory } from './tiff-directory.ts';

/** Where the samples of a plain TIFF lie. */
export interface TiffLayout {
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 3;
  readonly depth: 8 | 16;
  readonly swapped: boolean;
  /** Size of a strip or tile, pixels; a strip is as wide as the picture. */
  readonly cellWidth: number;
  readonly cellHeight: number;
  readonly offsets: readonly number[];
}

const machineIsLittleEndian = new Uint8Array(Uint16Array.of(1).buffer)[0] === 1;

/** The layout, or null when the file is not of the plain kind that this reader takes. */
export function plainLayout(directory: TiffDirectory): TiffLayout | null {
  const one = (tag: number, otherwise: number): number => numbersOf(directory, tag)[0] ?? otherwise;
  const [width, height, channels] = [one(256, 0), one(257, 0), one(277, 1)];
  const depths = new Set(numbersOf(directory, 258));
  const depth = one(258, 1);
  const photometric = one(262, -1);
  const plain =
    depths.size === 1 &&
    (depth === 8 || depth === 16) &&
    one(259, 1) === 1 && // not compressed
    one(284, 1) === 1 && // channels interleaved
    one(339, 1) === 1 && // unsigned
    one(274, 1) === 1 && // first row at the top, first column at the left
    one(266, 1) === 1 && // bits from the high end
    ((channels === 3 && photometric === 2) || (channels === 1 && photometric === 1));
  if (!plain || width < 1 || height < 1) return null;

  const tiled = directory.entries.has(322);
  const cellWidth = tiled ? one(322, 0) : width;
  const cellHeight = tiled ? one(323, 0) : Math.min(one(278, height), height);
  const offsets = numbersOf(directory, tiled ? 324 : 273);
  if (cellWidth < 1 || cellHeight < 1) return null;
  if (offsets.length !== Math.ceil(width / cellWidth) * Math.ceil(height / cellHeight)) return null;
  const swapped = depth === 16 && directory.littleEndian !== machineIsLittleEndian;
  const [c, d] = [channels === 3 ? 3 : 1, depth === 16 ? 16 : 8] as const;
  return { width, height, channels: c, depth: d, swapped, cellWidth, cellHeight, offsets };
}

/** Bytes held at once: a few megabytes of strips, or at most this much of one row of tiles. */
const stripBatchBytes = 4e6;
const tileBatchBytes = 24e6;

/** The rows of a plain TIFF, from the first or from the last one. */
export async function* plainTiffRows(
  file: ByteReader,
  layout: TiffLayout,
  order: 'down' | 'up',
): AsyncGenerator<RowBatch> {
  const { width, height, channels, depth, swapped, cellWidth, cellHeight, offsets } = layout;
  const pixel = (channels * depth) / 8;
  const line = width * pixel;
  const cellLine = cellWidth * pixel;
  const across = Math.ceil(width / cellWidth);
  const budget = across > 1 ? tileBatchBytes : stripBatchBytes;
  const most = Math.max(1, Math.min(cellHeight, Math.floor(budget / line)));
  const out = Buffer.from(new ArrayBuffer(most * line));
  const cell = across > 1 || cellWidth !== width ? Buffer.alloc(most * cellLine) : out;
  // Lines of a cell and of one at the right edge, cut once: a plate has millions of them.
  const cut = (kept: number) =>
    Array.from({ length: most }, (_, r) => cell.subarray(r * cellLine, r * cellLine + kept));
  const whole = cut(cellLine);
  const last = cut((width - (across - 1) * cellWidth) * pixel);

  for (const { top, rows } of spans(height, cellHeight, most, order)) {
    const row = Math.floor(top / cellHeight);
    for (let column = 0; column < across; column += 1) {
      const at = offsets[row * across + column] + (top - row * cellHeight) * cellLine;
      await file.fill(cell, rows * cellLine, at);
      if (cell === out) continue;
      const lines = column === across - 1 ? last : whole;
      for (let r = 0; r < rows; r += 1) out.set(lines[r], r * line + column * cellLine);
    }
    const bytes = out.subarray(0, rows * line);
    if (swapped) bytes.swap16();
    if (order === 'up') turnRowsOver(bytes, line);
    yield {
      rows,
      data: depth === 16 ? new Uint16Array(bytes.buffer, 0, bytes.length / 2) : bytes,
    };
  }
}

/** Runs of rows that do not cross a strip or tile. */
function* spans(
  height: number,
  cellHeight: number,
  most: number,
  order: 'down' | 'up',
): Generator<{ top: number; rows: number }> {
  if (order === 'down') {
    for (let top = 0; top < height;) {
      const rows = Math.min(most, cellHeight - (top % cellHeight), height - top);
      yield { top, rows };
      top += rows;
    }
    return;
  }
  for (let end = height; end > 0;) {
    const cellTop = Math.floor((end - 1) / cellHeight) * cellHeight;
    const top = Math.max(cellTop, end - most);
    yield { top, rows: end - top };
    end = top;
  }
}

/** Last row first, in place. */
export function turnRowsOver(bytes: Buffer, line: number): void {
  const kept = Buffer.alloc(line);
  for (let a = 0, b = bytes.length - line; a < b; a += line, b -= line) {
    bytes.copy(kept, 0, a, a + line);
    bytes.copy(bytes, a, b, b + line);
    kept.copy(bytes, b);
  }
}
