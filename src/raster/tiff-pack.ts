/**
 * TIFF directories as bytes: the camera's words of a large TIFF in a block small enough to hand
 * to an EXIF reader, and the structure of the files and EXIF blocks that are written here.
 *
 * References
 * - TIFF Revision 6.0, section 2: entries in ascending order, values over 4 bytes elsewhere at
 *   even offsets.
 * - CIPA DC-008-2019 (Exif 2.32), clause 4.6.3: the pointer to the Exif directory.
 */
import type { TiffDirectory, TiffEntry } from './tiff-directory.ts';

type Entries = ReadonlyMap<number, TiffEntry>;

const exifPointer = 34665;
/** Tags that place pixels or other directories in the file they came from, or are large. */
const leftOut = new Set([273, 279, 324, 325, 330, 700, 33723, 34377, 34665, 34675, 34853, 37500]);

/** First directory and Exif directory of a file as a TIFF block without pixels. */
export function packDirectories(first: TiffDirectory, exif: TiffDirectory): Buffer {
  const kept = (entries: Entries): Entries =>
    new Map([...entries].filter(([tag, e]) => !leftOut.has(tag) && e.bytes.length <= 4096));
  return packTiff(kept(first.entries), kept(exif.entries), first.littleEndian);
}

/**
 * A classic TIFF of a header and one directory, with an Exif directory below it where there is
 * one. Values must be in the byte order asked for.
 */
export function packTiff(first: Entries, exif: Entries | null, littleEndian: boolean): Buffer {
  const head = Buffer.alloc(8);
  head.write(littleEndian ? 'II' : 'MM', 0, 'latin1');
  put16(head, 2, 42, littleEndian);
  put32(head, 4, 8, littleEndian);
  if (!exif) return Buffer.concat([head, packDirectory(first, 8, littleEndian)]);

  // The pointer's value does not change the length, so the first pass finds the place.
  const withPointer = (offset: number): Entries => {
    const bytes = Buffer.alloc(4);
    put32(bytes, 0, offset, littleEndian);
    return new Map([...first, [exifPointer, { type: 4, count: 1, bytes }]]);
  };
  const place = 8 + packDirectory(withPointer(0), 8, littleEndian).length;
  return Buffer.concat([
    head,
    packDirectory(withPointer(place), 8, littleEndian),
    packDirectory(exif, place, littleEndian),
  ]);
}

/** One directory that starts at `offset`, followed by its longer values. */
function packDirectory(entries: Entries, offset: number, littleEndian: boolean): Buffer {
  const sorted = [...entries].sort(([a], [b]) => a - b);
  const table = Buffer.alloc(2 + sorted.length * 12 + 4);
  put16(table, 0, sorted.length, littleEndian);
  const values: Buffer[] = [];
  let end = offset + table.length;
  for (const [i, [tag, { type, count, bytes }]] of sorted.entries()) {
    const at = 2 + i * 12;
    put16(table, at, tag, littleEndian);
    put16(table, at + 2, type, littleEndian);
    put32(table, at + 4, count, littleEndian);
    if (bytes.length <= 4) {
      bytes.copy(table, at + 8);
    } else {
      put32(table, at + 8, end, littleEndian);
      values.push(bytes, Buffer.alloc(bytes.length % 2));
      end += bytes.length + (bytes.length % 2);
    }
  }
  return Buffer.concat([table, ...values]);
}

function put16(into: Buffer, at: number, value: number, littleEndian: boolean): void {
  if (littleEndian) into.writeUInt16LE(value, at);
  else into.writeUInt16BE(value, at);
}

function put32(into: Buffer, at: number, value: number, littleEndian: boolean): void {
  if (littleEndian) into.writeUInt32LE(value, at);
  else into.writeUInt32BE(value, at);
}
