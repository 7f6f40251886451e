import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { writePicture, type WritePicture } from '../../src/raster/write-picture.ts';
import { hasProgram, run } from './other-programs.ts';
import { scratchFolder } from './scratch-folder.ts';
import { platePicture, seeded } from './test-pictures.ts';

const folder = scratchFolder();
const [width, height] = [90, 60];
const random = seeded(9);
const rgb16 = platePicture(width, height);
const grey16 = new Uint16Array(width * height).map(() => random() * 65536);
const rgb8 = Uint8Array.from(rgb16, (v) => v >> 8);
const base = {
  width,
  height,
  profile: 'srgb',
  exif: {
    make: 'Invented Works',
    model: 'Modèle 1',
    lens: '100 mm macro',
    focalLength: 100,
    aperture: 5.6,
    iso: 100,
    seconds: 1 / 125,
    taken: '2026-03-14T09:30:00',
  },
} as const;

type Case = readonly [string, Omit<WritePicture, keyof typeof base>];
const lossless: readonly Case[] = [
  ['rgb16.tif', { format: 'tiff', channels: 3, depth: 16, data: rgb16 }],
  ['rgb16z.tif', { format: 'tiff', channels: 3, depth: 16, data: rgb16, compression: 'deflate' }],
  ['grey16.tif', { format: 'tiff', channels: 1, depth: 16, data: grey16 }],
  ['grey16z.tif', { format: 'tiff', channels: 1, depth: 16, data: grey16, compression: 'deflate' }],
  ['rgb8.tif', { format: 'tiff', channels: 3, depth: 8, data: rgb8, compression: 'deflate' }],
  ['rgb16.png', { format: 'png', channels: 3, depth: 16, data: rgb16 }],
  ['grey16.png', { format: 'png', channels: 1, depth: 16, data: grey16 }],
  ['rgb8.png', { format: 'png', channels: 3, depth: 8, data: rgb8 }],
];

describe.skipIf(!hasProgram('convert'))(
  'a picture without loss, read by ImageMagick (skipped without it)',
  () => {
    test.each(lossless)('%s holds the samples it was given', async (name, picture) => {
      const path = join(folder, name);
      await writePicture(path, { ...base, ...picture });
      const kind = picture.channels === 1 ? 'gray:-' : 'rgb:-';
      const bytes = run('convert', [path, '-depth', `${picture.depth}`, '-endian', 'LSB', kind]);
      const read = picture.depth === 8 ? bytes : new Uint16Array(Uint8Array.from(bytes).buffer);
      expect([...read]).toEqual([...picture.data]);
      expect(existsSync(`${path}.part`)).toBe(false);
    });
  },
);

describe.skipIf(!hasProgram('exiftool'))(
  'profile and camera, read by exiftool (skipped without it)',
  () => {
    test.each([
      ...lossless.filter(([n]) => /^rgb16|^grey16\./.test(n)),
      ['rgb8.jpg', { format: 'jpeg', channels: 3, depth: 8, data: rgb8 }] as Case,
    ])('are in %s', async (name, picture) => {
      const path = join(folder, `meta-${name}`);
      await writePicture(path, { ...base, ...picture });
      const [tags] = JSON.parse(run('exiftool', ['-j', '-n', path]).toString()) as object[];
      expect(tags).toMatchObject({
        Make: base.exif.make,
        Model: base.exif.model,
        LensModel: base.exif.lens,
        FocalLength: 100,
        FNumber: 5.6,
        ISO: 100,
        ExposureTime: 0.008,
        DateTimeOriginal: '2026:03:14 09:30:00',
        ProfileDescription: picture.channels === 1 ? 'Grey with the sRGB curve' : 'sRGB',
      });
      expect(run('exiftool', ['-validate', '-s3', '-warning', path]).toString()).not.toMatch(
        /error/i,
      );
    });
  },
);

describe('writePicture', () => {
  test('gives the same bytes each time', async () => {
    for (const [name, picture] of [...lossless.slice(0, 2), lossless[5]]) {
      const [a, b] = [join(folder, `a-${name}`), join(folder, `b-${name}`)];
      await writePicture(a, { ...base, ...picture });
      await writePicture(b, { ...base, ...picture });
      expect(readFileSync(a).equals(readFileSync(b))).toBe(true);
    }
  });

  test('writes a grey profile that LittleCMS takes for the sRGB curve', async () => {
    const path = join(folder, 'grey8.png');
    const data = Uint8Array.from({ length: 256 }, (_, i) => i);
    const grey = { width: 256, height: 1, channels: 1, depth: 8, profile: 'srgb' } as const;
    await writePicture(path, { ...grey, data, format: 'png' });
    // sharp converts through the embedded profile unless told otherwise.
    const shown = await sharp(path).toColourspace('srgb').raw().toBuffer();
    const step = shown.length / 256;
    for (let i = 0; i < 256; i += 1) expect(Math.abs(shown[i * step] - i)).toBeLessThanOrEqual(1);
  });

  test.each([
    [{ data: new Uint16Array(5) }, 'has 16200 samples; got 5.'],
    [{ data: rgb8 }, 'Samples of 16 bits need a Uint16Array.'],
    [{ format: 'jpeg' as const }, 'A JPEG has 8 bits per sample; write 16 bits as TIFF or PNG.'],
  ])('refuses what does not fit: %j', async (wrong, message) => {
    const picture = { ...base, channels: 3, depth: 16, data: rgb16, format: 'tiff' } as const;
    const path = join(folder, 'refused.tif');
    await expect(writePicture(path, { ...picture, ...wrong })).rejects.toThrow(message);
    expect(existsSync(path)).toBe(false);
  });
});
