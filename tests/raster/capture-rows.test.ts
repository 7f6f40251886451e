import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { openRows } from '../../src/raster/capture-rows.ts';
import { type RowSource } from '../../src/raster/row-source.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import { hasShared, sharedPath } from '../shared.ts';
import { hasProgram, run } from './other-programs.ts';
import { scratchFolder } from './scratch-folder.ts';
import { seeded } from './test-pictures.ts';

const folder = scratchFolder();

/** All samples of a source as bytes, in the order that it gives them. */
async function samples(source: RowSource, order?: 'down' | 'up'): Promise<Buffer> {
  const all: Buffer[] = [];
  for await (const { data, rows } of source.batches(order)) {
    expect(data.length).toBe(rows * source.width * source.channels);
    all.push(Buffer.from(bytesOf(data)));
  }
  return Buffer.concat(all);
}

function bytesOf(data: Uint8Array | Uint16Array): Buffer {
  return Buffer.from(data.buffer, data.byteOffset, data.byteLength);
}

/** Compared whole: a list of a million unequal numbers helps nobody. */
async function expectSamples(
  source: RowSource,
  wanted: Buffer,
  order?: 'down' | 'up',
): Promise<void> {
  const found = await samples(source, order);
  expect(found.length).toBe(wanted.length);
  expect(found.equals(wanted)).toBe(true);
}

const [width, height] = [67, 41];
const random = seeded(3);
const codes = new Uint16Array(width * height * 3).map(() => random() * 65536);
await writePicture(join(folder, 'strips.tif'), {
  width,
  height,
  channels: 3,
  depth: 16,
  data: codes,
  profile: 'srgb',
  format: 'tiff',
});

/** The same picture as libtiff writes it (Debian imagemagick), in other layouts. */
const layouts: readonly { name: string; args: readonly string[]; prefix?: string }[] = [
  { name: 'tiled.tif', args: ['-define', 'tiff:tile-geometry=16x16'] },
  { name: 'big-endian.tif', args: ['-define', 'tiff:endian=msb'] },
  { name: 'short-strips.tif', args: ['-define', 'tiff:rows-per-strip=5'] },
  { name: 'lzw.tif', args: ['-compress', 'LZW'] },
  { name: 'deflate.tif', args: ['-compress', 'Zip'] },
  { name: 'planes.tif', args: ['-interlace', 'plane'] },
  { name: 'big.tif', args: [], prefix: 'TIFF64:' },
];

describe.skipIf(!hasProgram('convert'))(
  'rows of a 16-bit TIFF that libtiff wrote (skipped without ImageMagick)',
  () => {
    test.each(layouts)('hold every code of $name, from either end', async (layout) => {
      const path = join(folder, layout.name);
      const compress = layout.args.includes('-compress') ? [] : ['-compress', 'None'];
      const target = `${layout.prefix ?? ''}${path}`;
      run('convert', [join(folder, 'strips.tif'), ...compress, ...layout.args, target]);
      const source = await openRows(path, { scratch: folder });
      await expectSamples(source, bytesOf(codes));
      const turned = Array.from({ length: height }, (_, y) => height - 1 - y).map((y) =>
        bytesOf(codes.subarray(y * width * 3, (y + 1) * width * 3)),
      );
      await expectSamples(source, Buffer.concat(turned), 'up');
      await source.close();
    });
  },
);

describe('rows of other pictures', () => {
  test.each(['png', 'webp', 'jpeg'] as const)(
    'hold what sharp decodes from a %s',
    async (format) => {
      const path = join(folder, `eight.${format === 'jpeg' ? 'jpg' : format}`);
      const bytes = Uint8Array.from(codes, (v) => v >> 8);
      await sharp(bytes, { raw: { width, height, channels: 3 } })
        .toFormat(format)
        .toFile(path);
      const source = await openRows(path, { scratch: folder });
      await expectSamples(source, await sharp(path).raw().toBuffer());
      await source.close();
    },
  );

  test('can be passed over twice', async () => {
    const source = await openRows(join(folder, 'strips.tif'), { scratch: folder });
    await expectSamples(source, await samples(source));
    await source.close();
  });
});

describe.skipIf(!hasShared('data', 'decoders') || spawnSync('convert').error !== undefined)(
  'odd TIFF files of a decoder suite (skipped where they do not lie beside the project, or without ImageMagick)',
  () => {
    test.each([
      'bigtiff/BigTIFF.tif',
      'bigtiff/BigTIFFLong8Tiles.tif',
      'bigtiff/BigTIFFMotorola.tif',
      'bigtiff/BigTIFFMotorolaLongStrips.tif',
      'tiff/depth/flower-rgb-contig-08.tif',
      'tiff/depth/flower-rgb-contig-16.tif',
      'tiff/depth/flower-rgb-planar-16.tif',
      'tiff/depth/flower-minisblack-16.tif',
      'tiff/sm_colors_tile.tif',
      'tiff/sm_colors_pb_tile.tif',
      'tiff/planar-striped-lzw.tif',
      'tiff/cramps-tile.tif',
    ])('%s gives the codes that ImageMagick reads', async (name) => {
      const path = sharedPath('data', 'decoders', 'jpeg-tiff-suite', 'tiff', ...name.split('/'));
      const source = await openRows(path, { scratch: folder });
      const kind = source.channels === 1 ? 'gray:-' : 'rgb:-';
      const plain = ['-depth', String(source.depth), '-endian', 'LSB', kind];
      const bytes = run('convert', [`${path}[0]`, ...plain]);
      // Sixteen-bit numbers are asked for low byte first, as this machine holds them.
      await expectSamples(source, bytes);
      await source.close();
    });
  },
);
