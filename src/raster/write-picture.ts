/**
 * Pictures from samples: what stands for a capture in the demonstration and in tests, with
 * profile and EXIF as a camera's file would have them. Samples are written as they are; the
 * profile says what they mean.
 */
import { rename, rm, writeFile } from 'node:fs/promises';
import type { CameraExif } from '../records/result.ts';
import { embedInJpeg, embedInPng } from './embedded-blocks.ts';
import { exifBlock } from './exif-block.ts';
import { greySrgbProfile } from './grey-profile.ts';
import { sharp } from './libvips.ts';
import { writeTiff } from './tiff-file.ts';

export interface PictureData {
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 3;
  readonly depth: 8 | 16;
  /** Encoded codes, channels interleaved, rows from the top. */
  readonly data: Uint8Array | Uint16Array;
  /** What the codes mean: sRGB (for one channel: grey with the sRGB curve), or a profile. */
  readonly profile: 'srgb' | Buffer;
  readonly exif?: Partial<CameraExif> | undefined;
  /** For TIFF: packed without loss, or plain (the default, which is read faster). */
  readonly compression?: 'none' | 'deflate' | undefined;
}

export interface WritePicture extends PictureData {
  readonly format: 'tiff' | 'jpeg' | 'png';
  /** JPEG quality, 1 to 100. */
  readonly quality?: number | undefined;
}

/**
 * Write one picture. The file appears whole or not at all; same input, same bytes.
 *
 * @throws RangeError if the samples do not fit the size, or a JPEG is asked for with 16 bits.
 */
export async function writePicture(path: string, picture: WritePicture): Promise<void> {
  check(picture);
  const profile = picture.profile === 'srgb' ? await srgbProfile(picture) : picture.profile;
  const part = `${path}.part`;
  try {
    if (picture.format === 'tiff') await writeTiff(part, picture, profile);
    else await writeFile(part, await encoded(picture, profile));
    await rename(part, path);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}

function check({ width, height, channels, depth, data, format }: WritePicture): void {
  const wanted = width * height * channels;
  if (data.length !== wanted) {
    throw new RangeError(
      `A picture of ${width} x ${height} pixels and ${channels} channels has ${wanted} samples; got ${data.length}.`,
    );
  }
  if ((depth === 16) !== data instanceof Uint16Array) {
    throw new RangeError(
      `Samples of ${depth} bits need a ${depth === 16 ? 'Uint16' : 'Uint8'}Array.`,
    );
  }
  if (format === 'jpeg' && depth === 16) {
    throw new RangeError('A JPEG has 8 bits per sample; write 16 bits as TIFF or PNG.');
  }
}

async function encoded(picture: WritePicture, profile: Buffer): Promise<Buffer> {
  const { width, height, channels, depth, data } = picture;
  const raw = { width, height, channels, ...(depth === 16 ? { depth: 'ushort' as const } : {}) };
  const space =
    channels === 1 ? (depth === 16 ? 'grey16' : 'b-w') : depth === 16 ? 'rgb16' : 'srgb';
  const pixels = sharp(data, { raw, limitInputPixels: false }).toColourspace(space);
  const words = picture.exif ? exifBlock(picture.exif) : null;
  if (picture.format === 'png') return embedInPng(await pixels.png().toBuffer(), profile, words);
  const jpeg = pixels.jpeg({ quality: picture.quality ?? 92, chromaSubsampling: '4:4:4' });
  return embedInJpeg(await jpeg.toBuffer(), profile, words);
}

/** libvips' own sRGB profile, or for grey the one with the sRGB curve. */
export async function srgbProfile({ channels }: { readonly channels: 1 | 3 }): Promise<Buffer> {
  if (channels === 1) return greySrgbProfile();
  const dot = sharp({ create: { width: 1, height: 1, channels: 3, background: '#000' } });
  const { icc } = await sharp(await dot.withIccProfile('srgb').png().toBuffer()).metadata();
  if (!icc) throw new Error('libvips wrote no sRGB profile.');
  return icc;
}
