/** The truth that `npm run demo -- --truth` writes, read back by libvips and checked against the captures. */
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Homography, project } from '../../src/imaging/conventions.ts';
import { invert } from '../../src/imaging/registration/homography.ts';
import { ensureDemonstration, renderedMark } from '../../src/pipeline/demonstration.ts';
import { type DemonstrationObject } from '../../src/pipeline/demonstration/object.ts';
import { type CaptureTruth } from '../../src/pipeline/demonstration/truth.ts';
import { findPlaces } from '../../src/pipeline/places.ts';
import { createReporter } from '../../src/pipeline/reporter.ts';
import { sharp } from '../../src/raster/libvips.ts';

const object: DemonstrationObject = {
  slug: 'small-plate',
  seed: 6,
  scene: 'still-life',
  sceneSide: 110,
  width: 20,
  height: 15,
  laterallyReversed: true,
  margin: 3,
  density: 0.75,
  polish: 0.05,
  undulation: 0.1,
  tarnish: { openings: [], rim: 0, reach: 1, haze: 4, edge: 10 },
  wear: { scratches: 0, specks: 10, fibres: 0 },
  dents: [{ x: 4, y: 2, radius: 1, depth: 0.1 }],
  exposures: { bracket: 2.4 },
};
const scale = 12;

const sitting = `
date: 2024-05-06
camera: { make: Tarnwick Optical, model: TW-4, focalLength: 100, distance: 600 }
scale: { pixelsPerMillimetre: ${scale} }
base: normal
setups:
  side-lamp: { kind: normal, surround: dark, lamps: [{ bearing: 315, height: 45, distance: 600, size: 60 }] }
captures:
  - { id: normal, file: normal.tif, setup: side-lamp, reading: positive, exposure: { seconds: 0.25 } }
  - { id: bracket, kind: bracket, setup: side-lamp, reading: positive, frames: [{ file: b1.tif, seconds: 0.1 }, { file: b2.tif, seconds: 0.4 }] }
`;

interface Numbers {
  readonly width: number;
  readonly height: number;
  readonly channels: number;
  readonly data: Float32Array;
}

let root = '';
let truth = '';
let captures = '';
const told: Record<string, CaptureTruth> = {};

async function numbers(file: string): Promise<Numbers> {
  const { data, info } = await sharp(file)
    .toColourspace('scrgb')
    .raw({ depth: 'float' })
    .toBuffer({ resolveWithObject: true });
  const { width, height, channels } = info;
  return {
    width,
    height,
    channels,
    data: new Float32Array(data.buffer, data.byteOffset, data.length / 4),
  };
}

/** Codes of a 16-bit capture, 0 to 65535, as they are. */
async function codes(name: string): Promise<Uint16Array> {
  const data = await sharp(join(captures, name), { ignoreIcc: true })
    .toColourspace('rgb16')
    .raw({ depth: 'ushort' })
    .toBuffer();
  return new Uint16Array(data.buffer, data.byteOffset, data.length / 2);
}

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'truth-'));
  const plate = join(root, 'content', 'plates', object.slug);
  await mkdir(plate, { recursive: true });
  await writeFile(join(plate, 'sitting.yaml'), sitting);
  await writeFile(join(plate, '.gitignore'), `${renderedMark}\n`);
  const places = findPlaces({
    content: join(root, 'content'),
    cache: join(root, 'cache'),
  });
  const quiet = createReporter(process.stderr, { quiet: true });
  await ensureDemonstration(places, quiet, {
    objects: [object],
    truth: join(root, 'truth'),
  });
  truth = join(root, 'truth', object.slug);
  captures = join(plate, 'captures');
  for (const name of ['normal.tif', 'b1.tif', 'b2.tif']) {
    told[name] = JSON.parse(await readFile(join(truth, `${name}.json`), 'utf8')) as CaptureTruth;
  }
}, 60_000);
afterAll(() => rm(root, { recursive: true, force: true }));

test('frames under one light share its radiance, and each has its own mask', async () => {
  expect((await readdir(truth)).sort()).toEqual([
    'b1.tif.clipped.png',
    'b1.tif.json',
    'b1.tif.radiance.tif',
    'b2.tif.clipped.png',
    'b2.tif.json',
    'normal.tif.clipped.png',
    'normal.tif.json',
    'normal.tif.radiance.tif',
    'normals.tif',
  ]);
  expect(told['b2.tif'].radiance).toBe('b1.tif.radiance.tif');
  expect(told['b2.tif'].gain / told['b1.tif'].gain).toBeCloseTo(4, 9);
});

test('radiance times gain is what the capture holds, but for its noise', async () => {
  const { gain, radiance } = told['normal.tif'];
  const wanted = await numbers(join(truth, radiance));
  const got = await codes('normal.tif');
  let bias = 0;
  let count = 0;
  wanted.data.forEach((value, i) => {
    const signal = value * gain;
    if (signal < 0.05 || signal > 0.9) return;
    // IEC 61966-2-1, the curve read backwards.
    const encoded = got[i] / 65535;
    bias += ((encoded + 0.055) / 1.055) ** 2.4 / signal - 1;
    count += 1;
  });
  expect(count).toBeGreaterThan(20_000);
  // Shot noise is at most 1 / sqrt(0.05 x 45000) = 2.1 % a sample: 0.015 % for the mean of 20 000.
  expect(Math.abs(bias / count)).toBeLessThan(0.0006);
});

test('the mask marks the light above the clip level, and the capture is full there', async () => {
  const { gain, radiance, clipped } = told['b2.tif'];
  const light = (await numbers(join(truth, radiance))).data;
  const mask = await sharp(join(truth, clipped)).toColourspace('b-w').raw().toBuffer();
  const got = await codes('b2.tif');
  let [marked, missing, wrong] = [0, 0, 0];
  for (let i = 0; i < mask.length; i += 1) {
    const most = gain * Math.max(light[3 * i], light[3 * i + 1], light[3 * i + 2]);
    const top = Math.max(got[3 * i], got[3 * i + 1], got[3 * i + 2]) === 65535;
    expect(mask[i]).toBe(most >= 1 ? 255 : 0);
    if (mask[i] === 255) marked += 1;
    // Noise at the clip level is 1 / sqrt(45000) = 0.47 %: six of them.
    if (most > 1.03 && !top) missing += 1;
    if (top && most < 0.97) wrong += 1;
  }
  expect(marked).toBeGreaterThan(0.05 * mask.length);
  expect(marked).toBeLessThan(0.8 * mask.length);
  expect(missing).toBe(0);
  expect(wrong).toBe(0);
});

test('the normals are unit vectors, and lean on a dent as its closed form says', async () => {
  const { width, height, data } = await numbers(join(truth, told['normal.tif'].normals));
  for (let i = 0; i < data.length; i += 3) {
    expect(Math.abs(Math.hypot(data[i], data[i + 1], data[i + 2]) - 1)).toBeLessThan(1e-6);
  }
  const slopes = (x: number, y: number): [number, number] => {
    const at =
      Math.round((height - 1) / 2 + y * scale) * width + Math.round((width - 1) / 2 + x * scale);
    return [data[3 * at] / data[3 * at + 2], data[3 * at + 1] / data[3 * at + 2]];
  };
  // A normal profile, h = d exp(-r^2 / 2 s^2), is steepest at r = s: d / s exp(-1/2) = 0.06065.
  // What remains is the sheet's own undulation, 0.1 degrees: 0.0017, and half a pixel's way.
  const steepest = 0.1 * Math.exp(-0.5);
  expect(Math.abs(slopes(5, 2)[0] - steepest)).toBeLessThan(0.006);
  expect(Math.abs(slopes(3, 2)[0] + steepest)).toBeLessThan(0.006);
  // Below the dent the surface leans downwards: y is up.
  expect(Math.abs(slopes(4, 3)[1] + steepest)).toBeLessThan(0.006);
});

test('lamps stand where the sitting says', () => {
  const [lamp] = told['b1.tif'].lamps;
  expect(lamp[0]).toBeCloseTo(-0.5, 9);
  expect(lamp[1]).toBeCloseTo(0.5, 9);
  expect(lamp[2]).toBeCloseTo(Math.SQRT1_2, 9);
  expect(told['b1.tif'].lampDistances).toEqual([600]);
});

/** Bilinear sample of the green channel. */
function green({ width, data }: Numbers, x: number, y: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const at = (dx: number, dy: number) => data[3 * ((iy + dy) * width + ix + dx) + 1];
  const top = at(0, 0) + (at(1, 0) - at(0, 0)) * (x - ix);
  const bottom = at(0, 1) + (at(1, 1) - at(0, 1)) * (x - ix);
  return top + (bottom - top) * (y - iy);
}

/** Shift left over between the base and a capture brought onto it, pixels, by least squares on gradients. */
function leftOver(base: Numbers, moved: Numbers, toBase: Homography): number {
  const toMoved = invert(toBase);
  let [xx, xy, yy, xd, yd] = [0, 0, 0, 0, 0];
  for (let y = 60; y < base.height - 60; y += 1) {
    for (let x = 60; x < base.width - 60; x += 1) {
      const gx = (green(base, x + 1, y) - green(base, x - 1, y)) / 2;
      const gy = (green(base, x, y + 1) - green(base, x, y - 1)) / 2;
      const d = green(moved, ...project(toMoved, x, y)) - green(base, x, y);
      xx += gx * gx;
      xy += gx * gy;
      yy += gy * gy;
      xd += gx * d;
      yd += gy * d;
    }
  }
  const determinant = xx * yy - xy * xy;
  return Math.hypot((yy * xd - xy * yd) / determinant, (xx * yd - xy * xd) / determinant);
}

test('the written homography brings the noiseless capture onto the base within 0.02 px', async () => {
  const base = await numbers(join(truth, told['normal.tif'].radiance));
  const moved = await numbers(join(truth, told['b1.tif'].radiance));
  const { homography } = told['b1.tif'];
  expect(Math.hypot(homography[2], homography[5])).toBeGreaterThan(0.5);
  expect(leftOver(base, moved, homography)).toBeLessThan(0.02);
  // A homography that is wrong by 0.1 px is found out.
  const wrong = [...homography] as unknown as [...Homography];
  wrong[2] += 0.1;
  expect(leftOver(base, moved, wrong)).toBeGreaterThan(0.06);
});
