/**
 * The camera's words as EXIF directories, for pictures that stand for captures.
 *
 * References
 * - CIPA DC-008-2019 (Exif 2.32), clauses 4.6.4 to 4.6.6: tags, types and number forms.
 */
import type { CameraExif } from '../records/result.ts';
import { packTiff } from './tiff-pack.ts';
import type { TiffEntry } from './tiff-directory.ts';

type Entries = Map<number, TiffEntry>;

function ascii(text: string): TiffEntry {
  // ASCII by the standard; UTF-8 is what readers accept where a name needs more.
  const bytes = Buffer.from(`${text}\0`, 'utf8');
  return { type: 2, count: bytes.length, bytes };
}

export function shorts(...values: number[]): TiffEntry {
  const bytes = Buffer.alloc(values.length * 2);
  for (const [i, v] of values.entries()) bytes.writeUInt16LE(v, i * 2);
  return { type: 3, count: values.length, bytes };
}

export function longs(values: readonly number[]): TiffEntry {
  const bytes = Buffer.alloc(values.length * 4);
  for (const [i, v] of values.entries()) bytes.writeUInt32LE(v, i * 4);
  return { type: 4, count: values.length, bytes };
}

/** As a fraction: one over a whole number where it is one, as shutter times are. */
function rational(value: number): TiffEntry {
  const inverse = Math.round(1 / value);
  const isUnit = value < 1 && Math.abs(value * inverse - 1) < 1e-9;
  const bytes = Buffer.alloc(8);
  bytes.writeUInt32LE(isUnit ? 1 : Math.round(value * 10_000), 0);
  bytes.writeUInt32LE(isUnit ? inverse : 10_000, 4);
  return { type: 5, count: 1, bytes };
}

/** Tags of the first directory and of the Exif directory, little-endian. */
export function exifEntries(exif: Partial<CameraExif>): { first: Entries; exif: Entries } {
  const first: Entries = new Map();
  const below: Entries = new Map();
  const put = <T>(
    into: Entries,
    tag: number,
    value: T | null | undefined,
    form: (value: T) => TiffEntry,
  ): void => {
    if (value !== null && value !== undefined) into.set(tag, form(value));
  };
  put(first, 271, exif.make, ascii);
  put(first, 272, exif.model, ascii);
  put(below, 33434, exif.seconds, rational);
  put(below, 33437, exif.aperture, rational);
  put(below, 34855, exif.iso, (v) => shorts(Math.round(v)));
  below.set(36864, { type: 7, count: 4, bytes: Buffer.from('0232', 'latin1') });
  put(below, 36867, exif.taken, (v) => ascii(v.replaceAll('-', ':').replace('T', ' ')));
  put(below, 37386, exif.focalLength, rational);
  put(below, 42036, exif.lens, ascii);
  return { first, exif: below };
}

/** The EXIF block of a JPEG or PNG, from its byte order mark on. */
export function exifBlock(exif: Partial<CameraExif>): Buffer {
  const { first, exif: below } = exifEntries(exif);
  return packTiff(first, below, true);
}
