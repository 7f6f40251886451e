/**
 * A TIFF that is written row by row: 16-bit codes, or 32-bit floats for linear light that has no
 * largest value. Not compressed, in strips that follow one another, so that nothing but the rows
 * at hand is held and any program can read it.
 *
 * References
 * - TIFF Revision 6.0, sections 3 and 6; section 19 (SampleFormat 3: IEEE floating point).
 */
import { open } from 'node:fs/promises';
import { longs, shorts } from './exif-block.ts';
import { srgbProfile } from './write-picture.ts';
import { packTiff } from './tiff-pack.ts';
import type { TiffEntry } from './tiff-directory.ts';

export interface StripShape {
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 3;
  /** `codes`: 16 bits through the sRGB curve. `floats`: 32 bits, linear. */
  readonly samples: 'codes' | 'floats';
  /** What the numbers are, for whoever opens the file. */
  readonly description: string;
}

export interface TiffStrips {
  /** The next rows. The array may be used again when the promise is kept. */
  write(rows: Uint16Array | Float32Array): Promise<void>;
  /** Close the file. @throws RangeError if rows are missing or too many. */
  finish(): Promise<void>;
  /** Close without asking whether it is whole. */
  abandon(): Promise<void>;
}

const stripBytes = 1 << 20;
/** Offsets of a classic TIFF have 32 bits. */
const largest = 2 ** 32 - 1;

/** @throws RangeError if the picture is too large for a classic TIFF. */
export async function openTiffStrips(path: string, shape: StripShape): Promise<TiffStrips> {
  const { width, height, channels, samples } = shape;
  const line = width * channels * (samples === 'floats' ? 4 : 2);
  if (line * height > largest - stripBytes) {
    throw new RangeError(
      `A TIFF of ${width} x ${height} pixels would have ${line * height} bytes, more than its offsets can say.`,
    );
  }
  const rowsPerStrip = Math.max(1, Math.min(height, Math.floor(stripBytes / line)));
  const starts = Array.from(
    { length: Math.ceil(height / rowsPerStrip) },
    (_, i) => i * rowsPerStrip,
  );
  const counts = starts.map((top) => Math.min(rowsPerStrip, height - top) * line);
  const profile = samples === 'codes' ? await srgbProfile({ channels }) : null;
  const pack = (from: number): Buffer =>
    packTiff(
      entries(
        shape,
        rowsPerStrip,
        starts.map((top) => from + top * line),
        counts,
        profile,
      ),
      null,
      true,
    );
  // Offsets do not change the length of the head, so it can be measured before they are known.
  const from = Math.ceil(pack(0).length / 4) * 4;
  const file = await open(path, 'w');
  await file.write(pack(from), 0, undefined, 0);
  let end = from;
  return {
    async write(rows) {
      const bytes = Buffer.from(rows.buffer, rows.byteOffset, rows.byteLength);
      await file.write(bytes, 0, bytes.length, end);
      end += bytes.length;
    },
    async finish() {
      await file.close();
      if (end !== from + line * height) {
        throw new RangeError(`${(end - from) / line} of ${height} rows were written.`);
      }
    },
    abandon: () => file.close(),
  };
}

function entries(
  { width, height, channels, samples, description }: StripShape,
  rowsPerStrip: number,
  offsets: readonly number[],
  counts: readonly number[],
  profile: Buffer | null,
): Map<number, TiffEntry> {
  const text = Buffer.from(`${description.replace(/[^ -~]/g, '?')}\0`, 'latin1');
  const each = (value: number) => shorts(...new Array<number>(channels).fill(value));
  return new Map<number, TiffEntry>([
    [256, longs([width])],
    [257, longs([height])],
    [258, each(samples === 'floats' ? 32 : 16)],
    [259, shorts(1)],
    [262, shorts(channels === 3 ? 2 : 1)],
    [270, { type: 2, count: text.length, bytes: text }],
    [273, longs(offsets)],
    [274, shorts(1)],
    [277, shorts(channels)],
    [278, longs([rowsPerStrip])],
    [279, longs(counts)],
    [284, shorts(1)],
    [339, each(samples === 'floats' ? 3 : 1)],
    ...(profile ? [[34675, { type: 7, count: profile.length, bytes: profile }] as const] : []),
  ]);
}
