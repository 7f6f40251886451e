import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { sharp } from '../../src/raster/libvips.ts';
import { writeFloatTiff } from '../../src/raster/write-float-tiff.ts';
import { scratchFolder } from './scratch-folder.ts';

const folder = scratchFolder();

test('libvips reads the numbers back bit for bit, below 0 and far above 1 too', async () => {
  const data = Float32Array.from({ length: 13 * 7 * 3 }, (_, i) => (i - 40) * 3.1);
  const file = join(folder, 'numbers.tif');
  await writeFloatTiff(file, { width: 13, height: 7, channels: 3, data });
  const read = await sharp(file)
    .toColourspace('scrgb')
    .raw({ depth: 'float' })
    .toBuffer({ resolveWithObject: true });
  expect(read.info).toMatchObject({ width: 13, height: 7, channels: 3 });
  const got = new Float32Array(read.data.buffer, read.data.byteOffset, read.data.length / 4);
  expect(got).toEqual(data);
  expect(await readdir(folder)).toEqual(['numbers.tif']);
});

test('says how many numbers were expected', async () => {
  const few = { width: 2, height: 2, channels: 1, data: new Float32Array(3) } as const;
  await expect(writeFloatTiff(join(folder, 'few.tif'), few)).rejects.toThrow(
    'Numbers of 2 x 2 pixels and 1 channels are 4; got 3.',
  );
});
