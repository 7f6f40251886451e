/**
 * What the camera wrote about a capture, as far as a record of it needs: the technical part.
 * Place, serial numbers and owner are not even read.
 *
 * References
 * - CIPA DC-008-2019 (Exif 2.32): tags by name; DateTimeOriginal is local time as text.
 */
import ExifReader from 'exifreader';
import type { CameraExif } from '../records/result.ts';
import { openBytes } from './byte-reader.ts';
import type { CaptureHead } from './capture-head.ts';
import { packDirectories } from './tiff-pack.ts';
import { readSubDirectory } from './tiff-directory.ts';

export const silentExif: CameraExif = {
  make: null,
  model: null,
  lens: null,
  focalLength: null,
  aperture: null,
  iso: null,
  seconds: null,
  taken: null,
};

const exifTag = 34665;

/** The technical EXIF of a capture; what is absent or damaged is null. */
export async function readExif(head: CaptureHead): Promise<CameraExif> {
  const block = head.exif ?? (await tiffBlock(head));
  if (block === null) return silentExif;
  try {
    const copy = block.buffer.slice(block.byteOffset, block.byteOffset + block.byteLength);
    return pick(ExifReader.load(copy as ArrayBuffer));
  } catch {
    // A damaged block is the camera's word lost, not a reason to refuse the pixels.
    return silentExif;
  }
}

/** The directories of a TIFF file that speak of the camera, without its pixels. */
async function tiffBlock(head: CaptureHead): Promise<Buffer | null> {
  if (!head.directory?.entries.has(exifTag)) return null;
  const file = await openBytes(head.path);
  try {
    const exif = await readSubDirectory(file, head.directory, exifTag);
    return exif && packDirectories(head.directory, exif);
  } catch {
    return null;
  } finally {
    await file.close();
  }
}

function pick(tags: ExifReader.Tags): CameraExif {
  return {
    make: textOf(tags.Make),
    model: textOf(tags.Model),
    lens: textOf(tags.LensModel),
    focalLength: numberOf(tags.FocalLength),
    aperture: numberOf(tags.FNumber),
    iso: numberOf(tags.ISOSpeedRatings),
    seconds: numberOf(tags.ExposureTime),
    taken: timeOf(textOf(tags.DateTimeOriginal)),
  };
}

interface Tag {
  readonly value: unknown;
  readonly description?: string;
}

function textOf(tag: Tag | undefined): string | null {
  if (tag === undefined) return null;
  const value = Array.isArray(tag.value) ? (tag.value as unknown[])[0] : tag.value;
  const text = typeof value === 'string' ? value : (tag.description ?? '');
  // Padding and damage in files are control characters.
  return (
    text
      .replace(/\p{Cc}/gu, '')
      .trim()
      .slice(0, 200) || null
  );
}

/** A number above 0, from a rational as numerator and denominator, or from a plain number. */
function numberOf(tag: Tag | undefined): number | null {
  if (tag === undefined) return null;
  const raw = tag.value;
  const value: unknown = Array.isArray(raw) && raw.length === 1 ? (raw as unknown[])[0] : raw;
  const number = Array.isArray(value) ? Number(value[0]) / Number(value[1]) : Number(value);
  return Number.isFinite(number) && number > 0 ? number : null;
}

/** `2026:03:14 09:30:00` as `2026-03-14T09:30:00`, text to text: a Date would move its zone. */
function timeOf(text: string | null): string | null {
  const found = /^(\d{4}):(\d\d):(\d\d) (\d\d):(\d\d):(\d\d)/.exec(text ?? '');
  if (!found || found[1] === '0000') return null;
  const [, year, month, day, hours, minutes, seconds] = found;
  return `${year}-${month}-${day}T${hours}:${minutes}:${seconds}`;
}
