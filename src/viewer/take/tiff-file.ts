/**
 * A picture as a baseline TIFF: eight bits to a channel, red, green, blue, not compressed, in
 * strips, with its words in tags and as an XMP packet, and its resolution, so that it prints at
 * the plate's own size.
 *
 * References
 * - TIFF Revision 6.0 (1992), part 1: section 2 (header, directory, field types), section 6
 *   (baseline RGB images), section 8 (ImageDescription, Copyright, Software: 7-bit ASCII that
 *   ends with NUL).
 * - ISO 16684-2 / XMP Specification Part 3: tag 700 holds the packet as bytes.
 */
import { xmpPacket, type PictureWords } from './xmp-packet.ts';

/** Field types: name, number, bytes of one value. */
const types = {
  byte: [1, 1],
  ascii: [2, 1],
  short: [3, 2],
  long: [4, 4],
  rational: [5, 8],
} as const;

interface Field {
  readonly tag: number;
  readonly type: keyof typeof types;
  readonly values: ArrayLike<number>;
}

export interface TiffPicture {
  readonly width: number;
  readonly height: number;
  /** Encoded sRGB with alpha, row-major; alpha is left out. */
  readonly rgba: ArrayLike<number>;
  /** Of this picture; null where the scale is not known. */
  readonly pixelsPerCentimetre: number | null;
  readonly words: PictureWords;
}

/** Bytes of a strip at most: section 3 recommends about 8 K, readers of today like more. */
const stripBytes = 1 << 16;

/** Characters that TIFF's text cannot hold, by the nearest that it can. */
const plain: Readonly<Record<string, string>> = {
  ...{ '“': '"', '”': '"', '„': '"', '«': '"', '»': '"', '‘': "'", '’': "'" },
  ...{ '–': '-', '—': '-', '−': '-', '…': '...', '×': 'x', '·': '.', '©': '(c)' },
  ...{ '°': ' deg', µ: 'u', μ: 'u', ß: 'ss', æ: 'ae', ø: 'o', œ: 'oe', ł: 'l' },
};

/** Seven-bit text; the XMP packet has every letter as it is. */
export function asciiText(text: string): string {
  return text
    .replace(/[^\x20-\x7e]/g, (letter) => plain[letter] ?? letter)
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\x20-\x7e]/gu, '?');
}

function ascii(tag: number, text: string): Field {
  return { tag, type: 'ascii', values: [...new TextEncoder().encode(`${asciiText(text)}\0`)] };
}

/** A positive number as a fraction of two 32-bit numbers. */
function rational(value: number): readonly [number, number] {
  const below = value < 4e5 ? 10_000 : 1;
  return [Math.round(value * below), below];
}

function fieldsOf(picture: TiffPicture, offsets: readonly number[], rows: number): Field[] {
  const { width, height, words, pixelsPerCentimetre } = picture;
  const row = 3 * width;
  const counts = offsets.map((_, n) => row * Math.min(rows, height - n * rows));
  // Without a scale: one pixel to the unit, and no unit.
  const resolution = rational(pixelsPerCentimetre ?? 1);
  return [
    { tag: 256, type: 'long', values: [width] },
    { tag: 257, type: 'long', values: [height] },
    { tag: 258, type: 'short', values: [8, 8, 8] },
    { tag: 259, type: 'short', values: [1] },
    { tag: 262, type: 'short', values: [2] },
    ascii(270, `${words.title}. ${words.description}`),
    { tag: 273, type: 'long', values: offsets },
    { tag: 277, type: 'short', values: [3] },
    { tag: 278, type: 'long', values: [rows] },
    { tag: 279, type: 'long', values: counts },
    { tag: 282, type: 'rational', values: resolution },
    { tag: 283, type: 'rational', values: resolution },
    { tag: 284, type: 'short', values: [1] },
    { tag: 296, type: 'short', values: [pixelsPerCentimetre === null ? 1 : 3] },
    ascii(305, 'Mirrorleaf'),
    { tag: 700, type: 'byte', values: new TextEncoder().encode(xmpPacket(words)) },
    ascii(33432, [words.credit, words.rights].filter((part) => part !== '').join('. ')),
  ];
}

/** Bytes that a field's values take. */
function bytesOf({ type, values }: Field): number {
  const [, size] = types[type];
  return (type === 'rational' ? values.length / 2 : values.length) * size;
}

/** @throws RangeError if the file would be larger than TIFF's 32-bit offsets can tell. */
export function tiffFile(picture: TiffPicture): Uint8Array<ArrayBuffer> {
  const { width, height, rgba } = picture;
  const row = 3 * width;
  const rows = Math.max(1, Math.floor(stripBytes / row));
  const strips = Math.ceil(height / rows);
  const begin = 8;
  const offsets = Array.from({ length: strips }, (_, n) => begin + n * rows * row);
  const end = begin + row * height;
  const directory = end + (end % 2);
  const fields = fieldsOf(picture, offsets, rows);
  const beyond = fields.map((field) => bytesOf(field)).filter((bytes) => bytes > 4);
  const size =
    directory +
    6 +
    12 * fields.length +
    beyond.reduce((sum, bytes) => sum + bytes + (bytes % 2), 0);
  if (size >= 2 ** 32) throw new RangeError('This picture is too large for a TIFF.');
  const file = new Uint8Array(size);
  for (let pixel = 0, at = begin; pixel < width * height; pixel++) {
    file[at++] = rgba[4 * pixel];
    file[at++] = rgba[4 * pixel + 1];
    file[at++] = rgba[4 * pixel + 2];
  }
  writeDirectory(new DataView(file.buffer), directory, fields);
  return file;
}

/** Header and directory, little-endian. */
function writeDirectory(view: DataView, directory: number, fields: readonly Field[]): void {
  view.setUint16(0, 0x4949);
  view.setUint16(2, 42, true);
  view.setUint32(4, directory, true);
  view.setUint16(directory, fields.length, true);
  let beyond = directory + 6 + 12 * fields.length;
  for (const [n, field] of fields.entries()) {
    const at = directory + 2 + 12 * n;
    const [type] = types[field.type];
    const bytes = bytesOf(field);
    view.setUint16(at, field.tag, true);
    view.setUint16(at + 2, type, true);
    view.setUint32(at + 4, field.type === 'rational' ? 1 : field.values.length, true);
    if (bytes <= 4) writeValues(view, at + 8, field);
    else {
      view.setUint32(at + 8, beyond, true);
      writeValues(view, beyond, field);
      beyond += bytes + (bytes % 2);
    }
  }
}

function writeValues(view: DataView, at: number, { type, values }: Field): void {
  for (let i = 0; i < values.length; i++) {
    if (type === 'short') view.setUint16(at + 2 * i, values[i], true);
    else if (type === 'byte' || type === 'ascii') view.setUint8(at + i, values[i]);
    else view.setUint32(at + 4 * i, values[i], true);
  }
}
