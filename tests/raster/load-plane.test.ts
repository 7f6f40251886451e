import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { decodeSrgb } from '../../src/imaging/colour/srgb-curve.ts';
import { loadLuminance, loadRgb16, luminancePlane } from '../../src/raster/load-plane.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import { scratchFolder } from './scratch-folder.ts';
import { platePicture, rowsFrom, seeded } from './test-pictures.ts';

const folder = scratchFolder();
const [width, height] = [301, 203];
const data = platePicture(width, height);
const path = join(folder, 'plate.tif');
await writePicture(path, {
  width,
  height,
  channels: 3,
  depth: 16,
  data,
  profile: 'srgb',
  format: 'tiff',
});

/** Luminance with the weights of IEC 61966-2-1, 0 to 65535. */
function luminance(i: number): number {
  const linear = (c: number): number => decodeSrgb(data[i * 3 + c] / 65535) * 65535;
  return 0.2126 * linear(0) + 0.7152 * linear(1) + 0.0722 * linear(2);
}

describe('loadLuminance', () => {
  test('gives linear luminance at full resolution within the four decimals of the weights', async () => {
    const plane = await loadLuminance(path, { scratch: folder });
    expect([plane.width, plane.height]).toEqual([width, height]);
    let worst = 0;
    for (let i = 0; i < plane.data.length; i += 1) {
      worst = Math.max(worst, Math.abs(plane.data[i] - luminance(i)));
    }
    expect(worst).toBeLessThanOrEqual(3);
  });

  test('shrinks by area means: a sum over the whole is kept whatever the size', async () => {
    const whole = await loadLuminance(path, { scratch: folder });
    const mean = (d: Uint16Array): number => d.reduce((a, b) => a + b, 0) / d.length;
    for (const maxSide of [300, 151, 100, 64, 7, 1]) {
      const small = await loadLuminance(path, { scratch: folder, maxSide });
      expect(Math.max(small.width, small.height)).toBe(maxSide);
      // Each sample is rounded to a whole unit, so means agree to well under one.
      expect(Math.abs(mean(small.data) - mean(whole.data))).toBeLessThan(0.5);
    }
  });

  test('puts a source pixel where the stated centres say', async () => {
    // One bright pixel, shrunk by 2.5: it lies in output pixel 2 (x) by half, in 1 by half.
    const dot = new Uint16Array(10 * 10);
    dot[5 * 10 + 2] = 65535;
    const small = await luminancePlane(rowsFrom(10, 10, 1, dot), 4);
    // Column 2 spans 2 to 3: half in output column 0 (0 to 2.5), half in 1. Row 5 starts row 2.
    const share = 65535 * (0.5 / 2.5) * (1 / 2.5);
    expect(small.data[2 * 4 + 0]).toBeCloseTo(share, -0.5);
    expect(small.data[2 * 4 + 1]).toBeCloseTo(share, -0.5);
    expect(small.data.reduce((a, b) => a + b, 0)).toBeCloseTo(65535 / 6.25, -1);
  });

  test('never enlarges', async () => {
    const plane = await loadLuminance(path, { scratch: folder, maxSide: 9999 });
    expect([plane.width, plane.height]).toEqual([width, height]);
  });
});

describe('loadRgb16', () => {
  test('gives each channel in linear sRGB', async () => {
    const planes = await loadRgb16(path, { scratch: folder });
    for (const [c, plane] of planes.entries()) {
      for (let i = 0; i < plane.data.length; i += 97) {
        // A value on the border of two units may go either way in single precision.
        const exact = decodeSrgb(data[i * 3 + c] / 65535) * 65535;
        expect(Math.abs(plane.data[i] - exact)).toBeLessThanOrEqual(0.51);
      }
    }
  });

  test('repeats grey in all three', async () => {
    const random = seeded(5);
    const grey = new Uint8Array(20 * 10).map(() => random() * 256);
    const file = join(folder, 'grey.png');
    const small = { width: 20, height: 10, channels: 1, depth: 8, profile: 'srgb' } as const;
    await writePicture(file, { ...small, data: grey, format: 'png' });
    const [r, g, b] = await loadRgb16(file, { scratch: folder });
    expect([...r.data]).toEqual([...grey].map((v) => Math.round(decodeSrgb(v / 255) * 65535)));
    expect(g.data).toEqual(r.data);
    expect(b.data).toEqual(r.data);
  });
});
