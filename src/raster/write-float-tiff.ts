/**
 * Numbers that are no picture for the eye (radiance, normals) as a TIFF of 32-bit floating-point
 * samples, plain strips, little-endian: the simplest form that other programs read.
 *
 * References
 * - TIFF Revision 6.0, section 19: tag 339, SampleFormat, 3 for IEEE floating point.
 */
import { open, rename, rm } from 'node:fs/promises';
import { longs, shorts } from './exif-block.ts';
import { type TiffEntry } from './tiff-directory.ts';
import { packTiff } from './tiff-pack.ts';

export interface FloatPicture {
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 3;
  /** Channels interleaved, rows from the top. */
  readonly data: Float32Array;
}

/** Write one file, whole or not at all. @throws RangeError if the samples do not fit the size. */
export async function writeFloatTiff(path: string, picture: FloatPicture): Promise<void> {
  const { width, height, channels, data } = picture;
  const wanted = width * height * channels;
  if (data.length !== wanted) {
    throw new RangeError(
      `Numbers of ${width} x ${height} pixels and ${channels} channels are ${wanted}; got ${data.length}.`,
    );
  }
  const part = `${path}.part`;
  const bytes = Buffer.from(data.buffer, data.byteOffset, data.byteLength);
  const head = directory(picture, 0);
  const start = head.length + (head.length % 2);
  try {
    const file = await open(part, 'w');
    try {
      const whole = directory(picture, start);
      await file.write(whole, 0, whole.length, 0);
      await file.write(bytes, 0, bytes.length, start);
    } finally {
      await file.close();
    }
    await rename(part, path);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}

/** The head of a file whose only strip begins at `start`; as long for any start. */
function directory({ width, height, channels, data }: FloatPicture, start: number): Buffer {
  const each = <T>(value: T) => new Array<T>(channels).fill(value);
  const entries = new Map<number, TiffEntry>([
    [256, longs([width])],
    [257, longs([height])],
    [258, shorts(...each(32))],
    [259, shorts(1)],
    [262, shorts(channels === 3 ? 2 : 1)],
    [273, longs([start])],
    [274, shorts(1)],
    [277, shorts(channels)],
    [278, longs([height])],
    [279, longs([data.byteLength])],
    [284, shorts(1)],
    [339, shorts(...each(3))],
  ]);
  return packTiff(entries, null, true);
}
