import { describe, expect, test } from 'vitest';
import { gradientField } from '../../../src/imaging/registration/gradient-field.ts';
import {
  createCorrelator,
  highestPeak,
  localPeaks,
} from '../../../src/imaging/registration/phase-correlation.ts';
import { inventedPicture } from './pairs.ts';

const side = 128;
const picture = inventedPicture(side + 16, side + 16, 3);

/** A window of the picture with its top-left sample at (x, y), through a tone curve. */
function masked(x0: number, y0: number, tone: (v: number) => number) {
  const data = new Float32Array(side * side);
  for (let y = 0; y < side; y += 1) {
    for (let x = 0; x < side; x += 1) {
      data[y * side + x] = tone(picture.data[(y + y0) * picture.width + x + x0]);
    }
  }
  return { width: side, height: side, data, usable: new Uint8Array(side * side).fill(1) };
}

describe('double-angle gradient field', () => {
  test('is the same for a picture and its negative', () => {
    const positive = gradientField(
      masked(0, 0, (v) => v),
      1,
      0.7,
    );
    const negative = gradientField(
      masked(0, 0, (v) => 5 - v),
      1,
      0.7,
    );
    for (let i = 0; i < positive.re.length; i += 11) {
      expect(negative.re[i]).toBeCloseTo(positive.re[i], 3);
      expect(negative.im[i]).toBeCloseTo(positive.im[i], 3);
    }
  });

  test('has the angle 0 for an upright edge, 180 for a level one, and length near 1', () => {
    const plane = { width: 32, height: 32, usable: new Uint8Array(1024).fill(1) };
    const upright = Float32Array.from({ length: 1024 }, (_, i) => (i % 32 < 16 ? 0 : 1));
    const level = Float32Array.from({ length: 1024 }, (_, i) => (i < 512 ? 0 : 1));
    const a = gradientField({ ...plane, data: upright }, 1, 0);
    const b = gradientField({ ...plane, data: level }, 1, 0);
    expect(a.re[16 * 32 + 16]).toBeGreaterThan(0.99);
    expect(b.re[16 * 32 + 16]).toBeLessThan(-0.99);
    expect(Math.abs(a.im[16 * 32 + 16]) + Math.abs(b.im[16 * 32 + 16])).toBeLessThan(1e-6);
  });

  test('is nothing where a sample is masked', () => {
    const plane = masked(0, 0, (v) => v);
    plane.usable[64 * side + 64] = 0;
    const field = gradientField(plane, 1, 0);
    expect(field.usable[64 * side + 64]).toBe(0);
    expect(field.re[64 * side + 64]).toBe(0);
    expect(field.usable[64 * side + 72]).toBe(1);
  });
});

describe('phase correlation', () => {
  const correlator = createCorrelator(side, 0.16);
  const spectrum = (x: number, y: number, tone: (v: number) => number) => [
    correlator.spectrum(gradientField(masked(x, y, tone), 1, 0.7), 0, 0, side, side),
  ];

  test('finds where a negative lies on its positive', () => {
    const first = spectrum(8, 8, (v) => v);
    // The second window starts 3 samples left of and 5 below the first: its content lies
    // 3 to the right and 5 up.
    const second = spectrum(5, 13, (v) => Math.exp(-2 * v));
    const correlation = correlator.correlate(first, second).slice();
    const peak = highestPeak(correlation, side, 12);
    expect([peak.dx, peak.dy]).toEqual([3, -5]);
    expect(peak.z).toBeGreaterThan(8);
    const [fine] = localPeaks(correlation, side, 12, 4);
    expect(Math.hypot(fine.dx - 3, fine.dy + 5)).toBeLessThan(0.05);
  });

  test('gives a high peak for no two different pictures', () => {
    const other = inventedPicture(side, side, 4);
    const plane = { ...other, usable: new Uint8Array(side * side).fill(1) };
    const second = [correlator.spectrum(gradientField(plane, 1, 0.7), 0, 0, side, side)];
    const correlation = correlator.correlate(
      spectrum(8, 8, (v) => v),
      second,
    );
    expect(highestPeak(correlation, side, 60).z).toBeLessThan(6);
  });
});
