import { describe, expect, test } from 'vitest';
import { baseDetail, baseDetailRow } from '../../../src/imaging/merge/base-detail-tone.ts';
import { boxMean, guidedSmooth } from '../../../src/imaging/merge/guided-filter.ts';
import { luminanceRange } from '../../../src/imaging/merge/luminance-range.ts';
import {
  photographicLuminance,
  photographicTone,
} from '../../../src/imaging/merge/photographic-tone.ts';
import { numbersFrom } from '../../../src/imaging/render/seeded.ts';

describe('the photographic rendering', () => {
  const tone = photographicTone(2, 400);

  test('gives the closed form of the paper: grey near 0.18 / 1.18, white at the brightest', () => {
    // Equation 4 with L = 0.18, white = 36: 0.18 (1 + 0.18 / 1296) / 1.18 = 0.152563559
    expect(photographicLuminance(tone, 2)).toBeCloseTo(0.152563559, 8);
    expect(photographicLuminance(tone, 400)).toBeCloseTo(1, 12);
    expect(photographicLuminance(tone, 0)).toBe(0);
  });
});

describe('the range of luminances', () => {
  test('has the geometric mean and quantiles of NumPy', () => {
    // python3 -c "import numpy as np; v=2.0**np.arange(-5,6); print(np.exp(np.log(v).mean()), np.median(v))"
    // NumPy 1.24.2 -> 1.0 1.0
    const range = luminanceRange();
    const values = Float32Array.from({ length: 11 }, (_, i) => 2 ** (i - 5));
    range.add(values, values.length);
    range.add([NaN, Infinity, 0, -1], 4);
    expect(range.logAverage()).toBeCloseTo(1, 12);
    expect(Math.abs(Math.log2(range.quantile(0.5)))).toBeLessThan(1 / 16);
    expect(Math.log2(range.quantile(1))).toBeCloseTo(5 + 1 / 16, 6);
  });
});

describe('the guided filter', () => {
  const next = numbersFrom(5);
  const [width, height] = [24, 17];
  const data = Float32Array.from({ length: width * height }, () => next());

  test('takes means over windows that are cut at the borders', () => {
    const out = boxMean(data, width, height, 2);
    for (const [x, y] of [
      [0, 0],
      [12, 8],
      [23, 16],
      [1, 15],
    ]) {
      let [sum, count] = [0, 0];
      for (let j = Math.max(0, y - 2); j <= Math.min(height - 1, y + 2); j += 1) {
        for (let i = Math.max(0, x - 2); i <= Math.min(width - 1, x + 2); i += 1) {
          sum += data[j * width + i];
          count += 1;
        }
      }
      expect(out[y * width + x]).toBeCloseTo(sum / count, 5);
    }
  });

  test('keeps a step and smooths a texture, which a box of the same size does not', () => {
    const wave = Float32Array.from(data, (v, i) => (i % width < 12 ? 0 : 4) + 0.2 * (v - 0.5));
    const plane = { width, height, data: wave };
    const smooth = guidedSmooth(plane, 3, 0.25);
    const box = boxMean(wave, width, height, 3);
    const row = 8 * width;
    // Closed form at an edge: slope = variance / (variance + epsilon), here 4 / 4.25.
    expect(smooth.data[row + 12] - smooth.data[row + 11]).toBeGreaterThan(0.8 * 4 * (4 / 4.25));
    expect(box[row + 12] - box[row + 11]).toBeLessThan(1);
    const spread = (d: Float32Array, from: number) =>
      Math.max(...d.slice(row + from, row + from + 4)) -
      Math.min(...d.slice(row + from, row + from + 4));
    expect(spread(smooth.data, 2)).toBeLessThan(0.4 * spread(wave, 2));
  });
});

describe('the local rendering', () => {
  test('compresses what is wide and keeps what is fine', () => {
    // Eight stops across, with a ripple of a quarter of a stop.
    const [width, height] = [480, 40];
    const logs = Float32Array.from(
      { length: width },
      (_, x) => (8 * x) / width + 0.125 * (x % 2 === 0 ? 1 : -1),
    );
    const small = { width: 120, height: 10, data: new Float32Array(1200) };
    for (let i = 0; i < 1200; i += 1) small.data[i] = (8 * (i % 120)) / 120;
    const tone = baseDetail(small, { stops: 4, window: 0.05 });
    const factors = new Float32Array(width);
    baseDetailRow(tone, logs, 20, height, factors);
    const shown = logs.map((l, x) => l + Math.log2(factors[x]));
    expect(shown[400] - shown[80]).toBeGreaterThan(0.4 * (logs[400] - logs[80]));
    expect(shown[400] - shown[80]).toBeLessThan(0.6 * (logs[400] - logs[80]));
    // A plain curve of the same compression would halve the ripple.
    for (const x of [100, 240, 380]) {
      const ripple = Math.abs(shown[x] - (shown[x - 1] + shown[x + 1]) / 2);
      expect(ripple).toBeGreaterThan(0.85 * 0.25);
    }
  });
});
