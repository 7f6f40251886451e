import { describe, expect, test } from 'vitest';
import { srgbLight } from '../../src/imaging/colour/light.ts';
import { rowLoops } from '../../src/imaging/row-loops.ts';
import { paintCodes } from '../../src/raster/paint-row.ts';
import { seeded } from '../raster/test-pictures.ts';

const width = 37;

function filled(channels: 1 | 3, depth: 8 | 16) {
  const random = seeded(depth + channels);
  const light = srgbLight(depth);
  const loops = rowLoops({ width, channels, depth, light }, { samples: 400, rows: 4 });
  for (let i = 0; i < loops.codes.length; i += 1) loops.codes[i] = random() * 2 ** depth;
  return { loops, light, random };
}

/** IEC 61966-2-1, in doubles. */
const decoded = (v: number) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);

describe.each([
  [1, 8],
  [3, 8],
  [1, 16],
  [3, 16],
] as const)('loops over rows of %i channels of %i bits', (channels, depth) => {
  test('paint every code by the sRGB curve, which is its nearest byte', () => {
    const { loops } = filled(channels, depth);
    loops.paintCodes();
    const top = 2 ** depth - 1;
    expect([...loops.bytes]).toEqual([...loops.codes].map((v) => Math.round((v / top) * 255)));
  });

  test('give the means of neighbours in linear light, and join two rows', () => {
    const { loops, random } = filled(channels, depth);
    const top = 2 ** depth - 1;
    const pairs = Math.floor(width / 2);
    const mean = (i: number) => {
      const left = Math.floor(i / channels) * 2 * channels + (i % channels);
      const [a, b] = [loops.codes[left], loops.codes[left + channels]];
      return ((decoded(a / top) + decoded(b / top)) / 2) * 65535;
    };
    const means = loops.floats(pairs * channels);
    loops.codeMeans(means, pairs);
    const first = Array.from(means, (_, i) => mean(i));
    // 32-bit floats have 24 binary digits: half a unit in the last place is 0.004 at 65535.
    means.forEach((v, i) => {
      expect(Math.abs(v - first[i])).toBeLessThan(0.008);
    });
    for (let i = 0; i < loops.codes.length; i += 1) loops.codes[i] = random() * 2 ** depth;
    loops.joinCodeMeans(means, pairs);
    means.forEach((v, i) => {
      expect(Math.abs(v - (first[i] + mean(i)) / 2)).toBeLessThan(0.012);
    });
    const next = loops.floats(Math.floor(pairs / 2) * channels);
    loops.lightMeans(means, next, Math.floor(pairs / 2));
    loops.joinLightMeans(means, next, Math.floor(pairs / 2));
    next.forEach((v, i) => {
      const left = Math.floor(i / channels) * 2 * channels + (i % channels);
      expect(v).toBe(Math.fround(means[left] + means[left + channels]) / 2);
    });
  });
});

test('leave codes of 8 bits as they are, painted in place or not', () => {
  const shape = { width: 4, channels: 3, depth: 8 } as const;
  // Display P3 has the sRGB curve: its codes are bytes as well, but other ones than are shown.
  const matrix = [1.2249, -0.2247, 0, -0.042, 1.0419, 0, -0.0196, -0.0786, 1.0979] as const;
  for (const light of [srgbLight(8), { ...srgbLight(8), matrix }]) {
    const loops = rowLoops({ ...shape, light }, { samples: 0, rows: 0 });
    const codes = Array.from({ length: 12 }, (_, i) => 20 * i);
    loops.codes.set(codes);
    paintCodes(loops, light)();
    expect([...loops.codes]).toEqual(codes);
    expect([...loops.bytes].join() === codes.join()).toBe(light.matrix === null);
  }
});

test('paints every 16-bit code to its nearest byte, and linear light to the byte that shows it', () => {
  const light = srgbLight(16);
  const shape = { width: 65536, channels: 1, depth: 16, light } as const;
  const loops = rowLoops(shape, { samples: 65536, rows: 1 });
  loops.codes.set(Uint16Array.from({ length: 65536 }, (_, i) => i));
  loops.paintCodes();
  expect(loops.bytes.every((byte, code) => byte === Math.round((code / 65535) * 255))).toBe(true);
  const row = loops.floats(65536);
  row.set(light.toLinear);
  loops.paintLight(row);
  expect(loops.bytes.every((byte, code) => Math.abs(byte - (code / 65535) * 255) < 0.52)).toBe(
    true,
  );
});
