import { existsSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CaptureFault } from '../../src/raster/capture-fault.ts';
import { tilePicture } from '../../src/raster/tile-picture.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import { scratchFolder } from './scratch-folder.ts';
import { platePicture } from './test-pictures.ts';

const folder = scratchFolder();
const scratch = join(folder, 'scratch');
const [width, height] = [900, 700];
const data = platePicture(width, height);
const picture = { width, height, channels: 3, depth: 16, data, profile: 'srgb' } as const;
await writePicture(join(folder, 'plain.tif'), { ...picture, format: 'tiff' });
await writePicture(join(folder, 'packed.tif'), {
  ...picture,
  format: 'tiff',
  compression: 'deflate',
});

function job(file: string, out: string) {
  return { path: join(folder, file), folder: join(folder, out), scratch, id: 'http://host/plate' };
}

function bytesBelow(root: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(root, { recursive: true, withFileTypes: true })
      .filter((e) => e.isFile())
      .map((e) => join(e.parentPath, e.name))
      .sort()
      .map((f) => [f.slice(root.length), readFileSync(f).toString('base64')]),
  );
}

describe('tilePicture', () => {
  test('gives the same bytes from a plain file and from a packed one', async () => {
    const plain = await tilePicture(job('plain.tif', 'plain'));
    const packed = await tilePicture(job('packed.tif', 'packed'));
    expect(plain).toEqual(packed);
    expect(plain.sizes.at(-1)).toEqual({ width, height });
    expect(bytesBelow(join(folder, 'packed'))).toEqual(bytesBelow(join(folder, 'plain')));
    expect(readdirSync(scratch)).toEqual([]);
  });

  test('gives the same bytes whether the picture is decoded through a pipe or into a file', async () => {
    // Twice in turn: a descriptor that is closed twice is another's by then.
    for (const [out, pipeFrom] of [
      ['piped', 0],
      ['filed', Infinity],
      ['piped-again', 0],
      ['filed-again', Infinity],
    ] as const) {
      await tilePicture({ ...job('packed.tif', out), pipeFrom });
      expect(readdirSync(scratch)).toEqual([]);
    }
    expect(bytesBelow(join(folder, 'piped'))).toEqual(bytesBelow(join(folder, 'filed')));
  });

  test('lays a capture into a frame of another size', async () => {
    const homography = [1, 0, 20, 0, 1, 10, 0, 0, 1] as const;
    const frame = { homography, width: 1000, height: 600 };
    const result = await tilePicture({ ...job('plain.tif', 'framed'), frame });
    expect(result).toMatchObject({ width: 1000, height: 600 });
    const info = JSON.parse(readFileSync(join(folder, 'framed/info.json'), 'utf8')) as object;
    expect(info).toMatchObject({ width: 1000, height: 600, profile: 'level0' });
  });

  test('hands a fault of the capture back with its sentence, and leaves no info.json', async () => {
    writeFileSync(join(folder, 'cut.tif'), readFileSync(join(folder, 'plain.tif')));
    truncateSync(join(folder, 'cut.tif'), 2_000_000);
    const failed = tilePicture(job('cut.tif', 'cut'));
    await expect(failed).rejects.toBeInstanceOf(CaptureFault);
    await expect(failed).rejects.toMatchObject({ code: 'file-damaged' });
    await expect(failed).rejects.toThrow('cut.tif ends too early');
    expect(existsSync(join(folder, 'cut/info.json'))).toBe(false);
  });

  test('says what went wrong when the pictures cannot be written', async () => {
    writeFileSync(join(folder, 'in-the-way'), '');
    await expect(tilePicture(job('plain.tif', 'in-the-way'))).rejects.toThrow(/EEXIST|ENOTDIR/);
  });
});
