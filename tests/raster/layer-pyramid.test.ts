import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { writeLayer, type PlaneRows } from '../../src/raster/layer-pyramid.ts';
import { layerShape } from '../../src/records/layer.ts';
import { scratchFolder } from './scratch-folder.ts';

const folder = scratchFolder();
sharp.cache(false);

const [width, height, planes, tile] = [301, 203, 3, 64] as const;
const code = (plane: number, x: number, y: number): number =>
  (x * 7 + y * 13 + plane * 101 + ((x * y) % 17) * 5) % 256;

const source: PlaneRows = {
  ...{ width, height, planes },
  *rows() {
    for (let y = 0; y < height; y += 1) {
      yield Uint8Array.from({ length: planes * width }, (_, i) =>
        code(Math.floor(i / width), i % width, y),
      );
    }
  },
};

/** Samples of one tile, decoded by libvips. */
async function decoded(
  out: string,
  level: number,
  column: number,
  row: number,
  format: 'webp' | 'png',
): Promise<{ data: Buffer; width: number; height: number }> {
  const { data, info } = await sharp(join(out, `${level}/${column}-${row}.${format}`))
    .toColourspace('b-w')
    .extractChannel(0)
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height };
}

describe.each(['png', 'webp'] as const)('a layer in %s without loss', (format) => {
  const out = join(folder, format);

  test('holds the exact area mean of every plane at every level', async () => {
    const own = { kind: 'test', offset: [0, 0, 0], step: [1, 1, 1] };
    const { levels } = await writeLayer(source, { folder: out, tile, format, own });
    expect(levels).toBe(4);
    for (let level = 0; level < levels; level += 1) {
      const size = 2 ** level;
      const [w, h] = [Math.ceil(width / size), Math.ceil(height / size)];
      for (let row = 0; row * tile < h; row += 1) {
        for (let column = 0; column * tile < w; column += 1) {
          const picture = await decoded(out, level, column, row, format);
          const tall = Math.min(tile, h - row * tile);
          expect([picture.width, picture.height]).toEqual([
            Math.min(tile, w - column * tile),
            tall * planes,
          ]);
          for (let plane = 0; plane < planes; plane += 1) {
            for (const [dx, dy] of [
              [0, 0],
              [picture.width - 1, tall - 1],
            ]) {
              const wanted = areaMean(plane, column * tile + dx, row * tile + dy, size);
              const found = picture.data[(plane * tall + dy) * picture.width + dx];
              // Half a code of rounding, and the rounding of 32-bit means.
              expect(Math.abs(found - wanted)).toBeLessThan(0.5001);
            }
          }
        }
      }
    }
    // Nothing but the pictures of these levels, and the description.
    const files = readdirSync(out, { recursive: true, withFileTypes: true }).filter((e) =>
      e.isFile(),
    );
    expect(files).toHaveLength(20 + 6 + 2 + 1 + 1);
  });

  test('is described by a layer.json that fits the schema', () => {
    const schema = z.strictObject({ ...layerShape, kind: z.literal('test') });
    const layer = schema.parse(JSON.parse(readFileSync(join(out, 'layer.json'), 'utf8')));
    expect(layer).toMatchObject({ width, height, planes, tile, format, levels: 4 });
  });
});

/** Closed form: the mean over the source pixels that a level's pixel covers. */
function areaMean(plane: number, x: number, y: number, size: number): number {
  let [sum, count] = [0, 0];
  for (let j = y * size; j < Math.min(height, (y + 1) * size); j += 1) {
    for (let i = x * size; i < Math.min(width, (x + 1) * size); i += 1) {
      sum += code(plane, i, j);
      count += 1;
    }
  }
  return sum / count;
}

describe('a layer that cannot be written', () => {
  test('says so where the stack of planes is too tall', async () => {
    const tall = { ...source, planes: 40 };
    await expect(
      writeLayer(tall, { folder: join(folder, 'tall'), tile: 512, format: 'webp', own: {} }),
    ).rejects.toThrow('40 planes of 512 px make tiles 20480 px tall, more than 16383.');
  });

  test('has no layer.json where rows are missing', async () => {
    const out = join(folder, 'short');
    const short: PlaneRows = {
      ...source,
      *rows() {
        yield new Uint8Array(planes * width);
      },
    };
    await expect(writeLayer(short, { folder: out, format: 'png', own: {} })).rejects.toThrow(
      'Only 1 of 203 rows came.',
    );
    expect(existsSync(join(out, 'layer.json'))).toBe(false);
  });
});
