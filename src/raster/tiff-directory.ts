/**
 * The directories of a TIFF file, classic and BigTIFF, in either byte order: which tags there
 * are and their raw values. Also reads the TIFF structure that an EXIF block is.
 *
 * References
 * - TIFF Revision 6.0, Adobe, 1992, section 2 (structure) and section 8 (tags).
 * - BigTIFF as libtiff documents it (8-byte offsets, version 43).
 */
import type { ByteReader } from './byte-reader.ts';

/** One tag of a directory, its values as bytes in the file's own byte order. */
export interface TiffEntry {
  readonly type: number;
  readonly count: number;
  readonly bytes: Buffer;
}

export interface TiffDirectory {
  readonly littleEndian: boolean;
  readonly entries: ReadonlyMap<number, TiffEntry>;
  /** Offset of the next directory in the file; 0 at the end. */
  readonly next: number;
}

/** Bytes of one value by TIFF type number; types not listed are passed over. */
const typeBytes: Readonly<Record<number, number>> = {
  1: 1,
  2: 1,
  3: 2,
  4: 4,
  5: 8,
  6: 1,
  7: 1,
  8: 2,
  9: 4,
  10: 8,
  11: 4,
  12: 8,
  13: 4,
  16: 8,
  17: 8,
  18: 8,
};

/** Largest directory and largest value that is read: more is damage or an attack. */
const entryLimit = 4096;
const valueLimit = 64 * 1024 * 1024;

interface TiffHead {
  readonly littleEndian: boolean;
  readonly big: boolean;
  readonly first: number;
}

async function readHead(file: ByteReader): Promise<TiffHead | null> {
  if (file.size < 16) return null;
  const head = await file.read(16, 0);
  const order = head.toString('latin1', 0, 2);
  if (order !== 'II' && order !== 'MM') return null;
  const littleEndian = order === 'II';
  const version = unsigned(head, 2, 2, littleEndian);
  if (version !== 42 && version !== 43) return null;
  const big = version === 43;
  return { littleEndian, big, first: unsigned(head, big ? 8 : 4, big ? 8 : 4, littleEndian) };
}

/** An unsigned number of 1, 2, 4 or 8 bytes. */
function unsigned(from: Buffer, at: number, bytes: number, littleEndian: boolean): number {
  switch (bytes) {
    case 1:
      return from[at];
    case 2:
      return littleEndian ? from.readUInt16LE(at) : from.readUInt16BE(at);
    case 4:
      return littleEndian ? from.readUInt32LE(at) : from.readUInt32BE(at);
    default:
      return Number(littleEndian ? from.readBigUInt64LE(at) : from.readBigUInt64BE(at));
  }
}

async function readDirectory(
  file: ByteReader,
  head: TiffHead,
  offset: number,
): Promise<TiffDirectory> {
  const { littleEndian, big } = head;
  const [word, countBytes, entryBytes] = big ? [8, 8, 20] : [4, 2, 12];
  const number = (from: Buffer, at: number, bytes: number): number =>
    unsigned(from, at, bytes, littleEndian);
  const count = number(await file.read(countBytes, offset), 0, countBytes);
  if (count > entryLimit) {
    return { littleEndian, entries: new Map(), next: 0 };
  }
  const table = await file.read(count * entryBytes + word, offset + countBytes);
  const entries = new Map<number, TiffEntry>();
  for (let i = 0; i < count; i += 1) {
    const at = i * entryBytes;
    const type = number(table, at + 2, 2);
    const values = number(table, at + 4, word);
    const bytes = values * (typeBytes[type] ?? 0);
    if (bytes === 0 || bytes > valueLimit) continue;
    const inline = table.subarray(at + 4 + word, at + 4 + word + bytes);
    const position = number(table, at + 4 + word, word);
    if (bytes > word && position + bytes > file.size) continue;
    entries.set(number(table, at, 2), {
      type,
      count: values,
      bytes: bytes <= word ? inline : await file.read(bytes, position),
    });
  }
  return { littleEndian, entries, next: number(table, count * entryBytes, word) };
}

/** Most directories that are followed: a chain may be a loop. */
const directoryLimit = 64;

/** All directories in file order, or null when the file is not a TIFF. */
export async function readDirectories(file: ByteReader): Promise<TiffDirectory[] | null> {
  const head = await readHead(file);
  if (!head) return null;
  const found: TiffDirectory[] = [];
  const seen = new Set<number>();
  let offset = head.first;
  while (offset !== 0 && !seen.has(offset) && found.length < directoryLimit) {
    seen.add(offset);
    const directory = await readDirectory(file, head, offset);
    found.push(directory);
    offset = directory.next;
  }
  return found;
}

/** The directory that a tag of another points at, such as the EXIF one; null where there is none. */
export async function readSubDirectory(
  file: ByteReader,
  parent: TiffDirectory,
  tag: number,
): Promise<TiffDirectory | null> {
  const head = await readHead(file);
  const [offset] = numbersOf(parent, tag);
  return head && offset ? await readDirectory(file, head, offset) : null;
}

/** The values of a tag as whole numbers; empty where it is absent or of another kind. */
export function numbersOf(directory: TiffDirectory, tag: number): number[] {
  const entry = directory.entries.get(tag);
  if (!entry || ![1, 3, 4, 13, 16, 18].includes(entry.type)) return [];
  const size = typeBytes[entry.type];
  return Array.from({ length: entry.count }, (_, i) =>
    unsigned(entry.bytes, i * size, size, directory.littleEndian),
  );
}
