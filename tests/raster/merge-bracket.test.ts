import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { decodeSrgb } from '../../src/imaging/colour/srgb-curve.ts';
import { median, quantile } from '../../src/imaging/inspect/quantile.ts';
import { applyGain } from '../../src/imaging/merge/gain-map.ts';
import { renderBracket } from '../../src/imaging/render/test-bracket.ts';
import { makeBracket } from '../../src/pipeline/combine/bracket-folder.ts';
import { mergeSchema } from '../../src/pipeline/combine/bracket-record.ts';
import { openRows } from '../../src/raster/capture-rows.ts';
import { openFloatRows } from '../../src/raster/float-rows.ts';
import { gainOffset, writeGainLayer } from '../../src/raster/gain-layer.ts';
import { shiftRows } from '../../src/raster/shifted-rows.ts';
import { writePyramid } from '../../src/raster/pyramid.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import { gainLayerSchema } from '../../src/records/layer.ts';
import { scratchFolder } from './scratch-folder.ts';
import { rowsFrom } from './test-pictures.ts';

const folder = scratchFolder();
const [width, height] = [400, 300] as const;
const seconds = [1 / 64, 1 / 16, 1 / 4, 1, 4];
const standing = 2;
const python = '/usr/bin/python3';

async function floats(path: string): Promise<Float32Array> {
  const rows = await openFloatRows(path);
  const all = new Float32Array(rows.width * rows.height * rows.channels);
  for await (const { data, y } of rows.batches(32)) all.set(data, y * rows.width * rows.channels);
  await rows.close();
  return all;
}

async function writeFrames(
  name: string,
  frames: readonly (Uint8Array | Uint16Array)[],
): Promise<string[]> {
  mkdirSync(join(folder, name), { recursive: true });
  const paths = frames.map((_, k) => join(folder, name, `frame-${k + 1}.tif`));
  for (const [k, data] of frames.entries()) {
    const depth = data instanceof Uint16Array ? 16 : 8;
    await writePicture(paths[k], {
      ...{ width, height, channels: 3, depth, data, profile: 'srgb', format: 'tiff' },
    });
  }
  return paths;
}

describe.each([1, 2, 3])('a rendered bracket of unknown noise, scene %i', (seed) => {
  test('is merged within 3 % in the median and 10 % at the 95th percentile', async () => {
    const { frames, truth } = renderBracket(seed, { width, height, seconds });
    const paths = await writeFrames(`scene-${seed}`, frames);
    const out = join(folder, `scene-${seed}`);
    const marked = [1 / 60, 1 / 15, 1 / 4, 1, 4];
    await makeBracket(out, { paths, marked, standing, unknownCurve: false, scratch: folder });
    const merge = mergeSchema.parse(JSON.parse(readFileSync(join(out, 'merge.json'), 'utf8')));
    // What the marks had wrong was found: 1/60 and 1/15 stand for 1/64 and 1/16.
    for (const { measured } of merge.steps) expect(measured).toBeCloseTo(4, 1);
    const scale = merge.frames[standing].seconds;
    const errors = errorsOf(await floats(join(out, 'radiance.tif')), truth, scale, merge.floor);
    expect(median(errors)).toBeLessThan(0.03);
    expect(quantile(errors, 0.95)).toBeLessThan(0.1);
  });
});

/** Relative errors over the captured range; the marks leave one factor for all of it free. */
function errorsOf(
  merged: Float32Array,
  truth: Float32Array,
  scale: number,
  floor: number,
): number[] {
  const ratios: number[] = [];
  for (let i = 0; i < truth.length; i += 5) {
    if (truth[i] * scale > floor && merged[i] < Infinity)
      ratios.push(merged[i] / (truth[i] * scale));
  }
  const held = ratios.filter((r) => r === r);
  const factor = median(held);
  return held.map((r) => Math.abs(r / factor - 1));
}

describe('the files of a merge', () => {
  const out = join(folder, 'files');
  let merge: ReturnType<typeof mergeSchema.parse>;

  beforeAll(async () => {
    const { frames } = renderBracket(4, { width, height, seconds });
    const paths = await writeFrames('files', frames);
    await makeBracket(out, {
      ...{ paths, marked: seconds, standing, unknownCurve: false, scratch: folder },
    });
    merge = mergeSchema.parse(JSON.parse(readFileSync(join(out, 'merge.json'), 'utf8')));
  }, 60_000);

  test.skipIf(!existsSync(python))('are read alike by OpenCV and scikit-image', async () => {
    const ours = await floats(join(out, 'radiance.tif'));
    const script = [
      'import cv2, json, sys, numpy as np',
      'from skimage import io',
      'a = cv2.imread(sys.argv[1], cv2.IMREAD_UNCHANGED)[..., ::-1]',
      'b = io.imread(sys.argv[1])',
      'c = cv2.imread(sys.argv[2], cv2.IMREAD_UNCHANGED)',
      'print(json.dumps([str(a.dtype), list(a.shape), a[200, 100].tolist(), b[200, 100].tolist(), a[:40].tolist() == b[:40].tolist(), str(c.dtype), list(c.shape)]))',
    ].join('\n');
    const answer = execFileSync(python, [
      ...['-c', script, join(out, 'radiance.tif'), join(out, 'rendering.tif')],
    ]);
    const [type, shape, cv, ski, same, codes, codeShape] = JSON.parse(String(answer)) as unknown[];
    const at = (200 * width + 100) * 3;
    expect([type, shape, codes, codeShape]).toEqual([
      ...['float32', [height, width, 3], 'uint16', [height, width, 3]],
    ]);
    expect(cv).toEqual([...ours.subarray(at, at + 3)]);
    expect(ski).toEqual(cv);
    expect(same).toBe(true);
  });

  test('give back the merged light from tiles and gain, within 2 % in even greys', async () => {
    const layer = join(out, 'layer');
    const views = seconds.map((_, k) => `frame-${k + 1}`);
    await writeGainLayer({
      ...{ folder: layer, radiance: join(out, 'radiance.tif'), tone: merge.tone },
      rendering: join(out, 'rendering.tif'),
      ...{ floor: merge.floor, ceiling: merge.ceiling, brightest: merge.brightest },
      frame: { homography: null, radial: null, width, height },
      frames: merge.frames.map((f, k) => ({
        ...{ view: views[k], seconds: f.marked, stops: f.stops, clip: f.clip, floor: f.floor },
      })),
    });
    const description = gainLayerSchema.parse(
      JSON.parse(readFileSync(join(layer, 'layer.json'), 'utf8')),
    );
    // The base as a reader gets it: the JPEG tile of the published pyramid.
    const source = await openRows(join(out, 'rendering.tif'));
    await writePyramid(source, { folder: join(out, 'tiles'), id: 'x' });
    await source.close();
    const base = await sharp(join(out, 'tiles/full/max/0/default.jpg')).raw().toBuffer();
    const codes = await sharp(join(layer, '0/0-0.webp'))
      .toColourspace('b-w')
      .extractChannel(0)
      .raw()
      .toBuffer();
    const light = await floats(join(out, 'radiance.tif'));
    const { min, max } = description.gain;
    const map = { min, max, gamma: 1, offsetBase: gainOffset, offsetMerged: gainOffset };
    const errors: number[] = [];
    // Means over 8 x 8 pixels that are even: a patch of grey, as the criterion asks.
    for (let y = 0; y + 8 <= height; y += 8) {
      for (let x = 0; x + 8 <= width; x += 8) {
        let [decoded, merged, low, high] = [0, 0, Infinity, 0];
        for (let i = 0; i < 64; i += 1) {
          const p = (y + (i >> 3)) * width + x + (i & 7);
          const shown = weigh((c) => decodeSrgb(base[p * 3 + c] / 255));
          decoded += applyGain(map, shown, codes[p] / 255);
          const own = weigh((c) => light[p * 3 + c]);
          merged += own;
          [low, high] = [Math.min(low, own), Math.max(high, own)];
        }
        if (merged > 64 * 0.02 && high < 1.5 * low) errors.push(Math.abs(decoded / merged - 1));
      }
    }
    expect(errors.length).toBeGreaterThan(300);
    expect(median(errors)).toBeLessThan(0.01);
    expect(quantile(errors, 0.95)).toBeLessThan(0.02);
  });
});

function weigh(of: (channel: number) => number): number {
  return 0.2126 * of(0) + 0.7152 * of(1) + 0.0722 * of(2);
}

describe('a frame that moved', () => {
  test('is found, shifted back and merged as if it had not', async () => {
    const { frames, truth } = renderBracket(5, {
      ...{ width, height, seconds: seconds.slice(1, 4), signal: 0.12 },
    });
    const moved = rowsFrom(width, height, 3, frames[2]);
    const away = shiftRows(moved, 1.4, -0.6, 2);
    const linear = new Uint16Array(frames[2].length);
    let y = 0;
    for await (const { data } of away.batches()) linear.set(data, y++ * width * 3);
    // Back to codes of the sRGB curve, as the other frames have.
    const back = linear.map((v) => {
      const l = v / 65535;
      return Math.round(65535 * (l <= 0.0031308 ? 12.92 * l : 1.055 * l ** (1 / 2.4) - 0.055));
    });
    const paths = await writeFrames('moved', [frames[0], frames[1], back]);
    const out = join(folder, 'moved');
    const marked = seconds.slice(1, 4);
    await makeBracket(out, { paths, marked, standing: 1, unknownCurve: false, scratch: folder });
    const merge = mergeSchema.parse(JSON.parse(readFileSync(join(out, 'merge.json'), 'utf8')));
    const [still, , third] = merge.frames;
    expect(still.resampled).toBe(false);
    expect(third.resampled).toBe(true);
    expect(third.shift?.dx).toBeCloseTo(-1.4, 1);
    expect(third.shift?.dy).toBeCloseTo(0.6, 1);
    const light = await floats(join(out, 'radiance.tif'));
    const errors = errorsOf(light, truth, merge.frames[1].seconds, merge.floor);
    expect(median(errors)).toBeLessThan(0.03);
    expect(quantile(errors, 0.95)).toBeLessThan(0.1);
  });
});
