import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { curvedLight, srgbLight, type Light } from '../../src/imaging/colour/light.ts';
import { decodeSrgb, encodeSrgb } from '../../src/imaging/colour/srgb-curve.ts';
import { openRows } from '../../src/raster/capture-rows.ts';
import { levelShapes, pyramidAddresses } from '../../src/raster/pyramid-geometry.ts';
import { paintPyramid, writePyramid } from '../../src/raster/pyramid.ts';
import { hasShared, sharedPath } from '../shared.ts';
import { memorySink, type Painted } from './memory-sink.ts';
import { scratchFolder } from './scratch-folder.ts';
import { linePicture, platePicture, rowsFrom, seeded } from './test-pictures.ts';

const folder = scratchFolder();
sharp.cache(false);

/** All files below a folder with a digest of each. */
function filesIn(root: string): Map<string, string> {
  const found = readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((e) => e.isFile())
    .map((e) => join(e.parentPath, e.name).slice(root.length + 1));
  return new Map(
    found.sort().map((f) => [
      f,
      createHash('sha256')
        .update(readFileSync(join(root, f)))
        .digest('hex'),
    ]),
  );
}

describe('the files of a pyramid', () => {
  const sizes = [
    [1, 1],
    [200, 150],
    [256, 256],
    [257, 256],
    [1000, 700],
    [1023, 513],
    [77, 901],
    [901, 77],
  ] as const;

  test.each(sizes)(
    'at %i x %i are all there, of the size in their names',
    async (width, height) => {
      const out = join(folder, `${width}x${height}`);
      const data = new Uint8Array(width * height).fill(128);
      const result = await writePyramid(rowsFrom(width, height, 1, data), {
        folder: out,
        id: 'http://host/plate',
        tile: 256,
        maxPixels: 200_000,
      });
      const wanted = pyramidAddresses({ width, height }, 256, 200_000);
      expect(new Set(filesIn(out).keys())).toEqual(new Set([...wanted, 'info.json']));
      expect(result).toMatchObject({ width, height, tiles: wanted.length });
      for (const address of wanted) {
        const size = /\/(\d+),(\d+)\/0\//.exec(address);
        const { width: w, height: h, space, format } = await sharp(join(out, address)).metadata();
        expect(format).toBe('jpeg');
        expect(space).toBe('b-w');
        if (size) expect([w, h]).toEqual([Number(size[1]), Number(size[2])]);
        else expect({ width: w, height: h }).toEqual(result.sizes.at(-1));
      }
    },
  );

  test('are the same bytes from the same rows', async () => {
    const data = platePicture(600, 400);
    for (const name of ['once', 'again']) {
      await writePyramid(rowsFrom(600, 400, 3, data), { folder: join(folder, name), id: 'x' });
    }
    expect(filesIn(join(folder, 'again'))).toEqual(filesIn(join(folder, 'once')));
  });

  test('have no info.json when the rows break off', async () => {
    const whole = rowsFrom(600, 400, 3, platePicture(600, 400));
    const broken = {
      ...whole,
      // eslint-disable-next-line require-yield, @typescript-eslint/require-await -- it fails at once
      async *batches() {
        throw new Error('The disk is gone.');
      },
    };
    const out = join(folder, 'broken');
    await expect(writePyramid(broken, { folder: out, id: 'x' })).rejects.toThrow(
      'The disk is gone.',
    );
    expect(existsSync(join(out, 'info.json'))).toBe(false);
  });

  test('are JPEGs of quality 85 with halved colour, as sharp makes them, at full resolution', async () => {
    const data = new Uint8Array(512 * 512 * 3).map((_, i) => (i * 31) % 251);
    const out = join(folder, 'full-level');
    await writePyramid(rowsFrom(512, 512, 3, data), { folder: out, id: 'x' });
    const reference = await sharp(data, { raw: { width: 512, height: 512, channels: 3 } })
      .jpeg({ quality: 85, chromaSubsampling: '4:2:0' })
      .toBuffer();
    expect(readFileSync(join(out, 'full/512,512/0/default.jpg')).equals(reference)).toBe(true);
  });
});

/** Exact mean of linear values over the source pixels that a level's pixel covers. */
function areaMean(
  linear: Float64Array,
  [width, height, channels]: readonly [number, number, number],
  factor: number,
  [x, y, c]: readonly [number, number, number],
): number {
  let sum = 0;
  let count = 0;
  for (let j = y * factor; j < Math.min(height, (y + 1) * factor); j += 1) {
    for (let i = x * factor; i < Math.min(width, (x + 1) * factor); i += 1) {
      sum += linear[(j * width + i) * channels + c];
      count += 1;
    }
  }
  return sum / count;
}

describe('before encoding, every level', () => {
  const cases: readonly {
    name: string;
    size: readonly [number, number];
    channels: 1 | 3;
    light: Light;
    curve: (v: number) => number;
  }[] = [
    { name: 'odd', size: [1023, 517], channels: 3, light: srgbLight(16), curve: decodeSrgb },
    { name: 'grey, odd', size: [641, 389], channels: 1, light: srgbLight(16), curve: decodeSrgb },
    { name: 'one over', size: [257, 129], channels: 3, light: srgbLight(16), curve: decodeSrgb },
    { name: 'tall', size: [65, 1031], channels: 3, light: srgbLight(16), curve: decodeSrgb },
    {
      name: 'a plain power',
      size: [300, 211],
      channels: 3,
      light: curvedLight(16, (v) => v ** 1.8, null),
      curve: (v) => v ** 1.8,
    },
  ];

  test.each(cases)('is the exact area mean within 0.51 of a code: $name', async (c) => {
    const { size, channels, light, curve } = c;
    const [width, height] = size;
    const random = seeded(7);
    const data = new Uint16Array(width * height * channels).map(() => random() * 65536);
    const linear = Float64Array.from(data, (v) => curve(v / 65535));
    const sink = memorySink();
    await paintPyramid(
      rowsFrom(width, height, channels, data, light),
      { tile: 128, maxPixels: 1e9 },
      sink,
    );
    let worst = 0;
    for (const level of levelShapes(width, height, 128)) {
      const picture = sink.pictures.get(`full/${level.width},${level.height}/0`) as Painted;
      for (let y = 0; y < level.height; y += 1) {
        for (let x = 0; x < level.width; x += 1) {
          for (let k = 0; k < channels; k += 1) {
            const mean = areaMean(linear, [width, height, channels], level.factor, [x, y, k]);
            const code = picture.data[(y * level.width + x) * channels + k];
            worst = Math.max(worst, Math.abs(code - encodeSrgb(mean) * 255));
          }
        }
      }
    }
    // 0.5 is perfect rounding; the rest is the steps of the look-up table to bytes.
    expect(worst).toBeLessThanOrEqual(0.51);
    expect(worst).toBeGreaterThan(0.4);
  });

  test('has tiles that are cut from the same picture', async () => {
    const data = platePicture(300, 200);
    const sink = memorySink();
    await paintPyramid(rowsFrom(300, 200, 3, data), { tile: 128, maxPixels: 1e9 }, sink);
    const whole = sink.pictures.get('full/300,200/0') as Painted;
    const tile = sink.pictures.get('256,128,44,72/44,72/0') as Painted;
    for (let y = 0; y < 72; y += 1) {
      const from = ((128 + y) * 300 + 256) * 3;
      expect(tile.data.subarray(y * 132, (y + 1) * 132)).toEqual(
        whole.data.subarray(from, from + 132),
      );
    }
  });
});

const linear8 = Float64Array.from({ length: 256 }, (_, i) => decodeSrgb(i / 255));
const linear16 = Float64Array.from({ length: 65536 }, (_, i) => decodeSrgb(i / 65535));

/** Mean linear luminance of sRGB codes, three channels; weights of IEC 61966-2-1. */
function meanLuminance(codes: Uint8Array | Uint16Array, linear: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < codes.length; i += 3) {
    sum +=
      0.2126 * linear[codes[i]] + 0.7152 * linear[codes[i + 1]] + 0.0722 * linear[codes[i + 2]];
  }
  return sum / (codes.length / 3);
}

describe('light through the levels, in the finished JPEGs', () => {
  const [width, height] = [2048, 1536];
  const pictures = {
    plate: platePicture(width, height),
    lines: linePicture(width, height),
  };

  async function errors(kind: keyof typeof pictures): Promise<{ ours: number[]; plain: number[] }> {
    const data = pictures[kind];
    const raw = { width, height, channels: 3, depth: 'ushort' } as const;
    const source = sharp(data, { raw }).toColourspace('rgb16');
    const truth = meanLuminance(data, linear16);
    const out = join(folder, `light-${kind}`);
    await writePyramid(rowsFrom(width, height, 3, data), { folder: out, id: 'x', tile: 256 });
    // sharp's own pyramid of the same picture, by name in the same layout; its levels are put
    // together from their tiles.
    const theirs = join(folder, `light-${kind}-plain`);
    await source
      .jpeg({ quality: 85, chromaSubsampling: '4:2:0' })
      .tile({ size: 256, layout: 'iiif3' })
      .toFile(theirs);
    const found = { ours: [] as number[], plain: [] as number[] };
    for (const { width: w, height: h, factor } of levelShapes(width, height, 256)) {
      found.ours.push((await levelMean(out, w, h, factor)) / truth - 1);
      found.plain.push((await levelMean(theirs, w, h, factor)) / truth - 1);
    }
    return found;
  }

  /** Mean over the tiles of a level. */
  async function levelMean(root: string, w: number, h: number, factor: number): Promise<number> {
    let sum = 0;
    const span = 256 * factor;
    for (let y = 0; y < height; y += span) {
      for (let x = 0; x < width; x += span) {
        const [rw, rh] = [Math.min(span, width - x), Math.min(span, height - y)];
        const [tw, th] = [Math.ceil(rw / factor), Math.ceil(rh / factor)];
        const region = tw === w && th === h ? 'full' : [x, y, rw, rh].join(',');
        const tile = sharp(join(root, region, `${tw},${th}`, '0/default.jpg'));
        sum += meanLuminance(await tile.raw().toBuffer(), linear8) * tw * th;
      }
    }
    return sum / (w * h);
  }

  test('keeps the mean of a plate within 0.3 %, where an encoded-space pyramid does not', async () => {
    const { ours, plain } = await errors('plate');
    expect(Math.max(...ours.map(Math.abs))).toBeLessThanOrEqual(0.003);
    expect(Math.max(...plain.slice(1).map(Math.abs))).toBeGreaterThan(0.003);
  });

  test('keeps the mean of one-pixel lines within 3 %, where an encoded-space pyramid does not', async () => {
    const { ours, plain } = await errors('lines');
    expect(Math.max(...ours.map(Math.abs))).toBeLessThanOrEqual(0.03);
    expect(Math.max(...plain.slice(1).map(Math.abs))).toBeGreaterThan(0.03);
  });

  test.skipIf(!hasShared('data', 'plates'))(
    'keeps the mean of a real plate within 0.3 % (skipped without the photographs beside the project)',
    async () => {
      const path = sharedPath('data', 'plates', 'portrait-daguerreotype-1856.jpg');
      const grey = await sharp(path, { ignoreIcc: true }).toColourspace('b-w').raw().toBuffer();
      const mean = (codes: Uint8Array): number =>
        codes.reduce((sum, v) => sum + linear8[v], 0) / codes.length;
      const out = join(folder, 'light-real');
      const source = await openRows(path, { scratch: folder });
      const { sizes } = await writePyramid(source, { folder: out, id: 'x' });
      await source.close();
      for (const { width: w, height: h } of sizes) {
        const level = await sharp(join(out, `full/${w},${h}/0/default.jpg`))
          .raw()
          .toBuffer();
        const codes = level.filter((_, i) => i % (level.length / (w * h)) === 0);
        expect(Math.abs(mean(codes) / mean(grey) - 1)).toBeLessThanOrEqual(0.003);
      }
    },
  );
});
