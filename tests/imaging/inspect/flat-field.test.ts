import { describe, expect, test } from 'vitest';
import { findHotSpots, measureEvenness } from '../../../src/imaging/inspect/evenness.ts';
import {
  fitFlatField,
  flatFieldAt,
  flatFieldGains,
  type FlatField,
} from '../../../src/imaging/inspect/flat-field.ts';
import { fieldError, litField } from '../../fixtures/inspect/lit-field.ts';

function fitted(plane: Parameters<typeof fitFlatField>[0]): FlatField {
  const fit = fitFlatField(plane, { clip: 64000 });
  if (!fit.ok) throw new Error(fit.reason);
  return fit.value;
}

describe('fitFlatField', () => {
  test('recovers lamps by the inverse square law within 0.5 % RMS, dust and hot spots or not', () => {
    for (const seed of [6, 14]) {
      for (const hotSpots of [0, 2]) {
        const field = litField(seed, hotSpots);
        const fit = fitted(field);
        expect(fieldError(field, (u, v) => flatFieldAt(fit, u, v))).toBeLessThan(0.5);
      }
    }
  });

  test('gains even out a picture under the same light at another size', () => {
    const field = litField(6);
    const fit = fitted(field);
    const { width, height, truth } = field;
    // Half the size: sample the true light there and multiply.
    const values: number[] = [];
    for (let row = 10; row < height / 2; row += 40) {
      const gains = flatFieldGains(fit, row, width / 2, height / 2);
      for (let x = 10; x < width / 2; x += 40) {
        values.push(gains[x] * truth[2 * row * width + 2 * x]);
      }
    }
    expect(Math.min(...values) / Math.max(...values)).toBeGreaterThan(0.995);
  });

  test('has a reason where there is nothing to fit', () => {
    const black = { width: 200, height: 160, data: new Uint16Array(32000) };
    expect(fitFlatField(black)).toEqual({
      ok: false,
      reason: 'too little of the picture is neither black nor clipped',
    });
  });
});

describe('measureEvenness', () => {
  test('gives the spread and the ends of a straight ramp', () => {
    // 1 to 0.7 across: (p95 - p5) / median = 0.9 * 0.3 / 0.85, deviation / mean = 0.3 / sqrt(12) / 0.85.
    const data = Uint16Array.from(
      { length: 120000 },
      (_, i) => 50000 * (1 - (0.3 * (i % 400)) / 399),
    );
    const found = measureEvenness(fitted({ width: 400, height: 300, data }));
    expect(found.spreadPercent).toBeCloseTo((100 * 0.27) / 0.85, 0);
    expect(found.deviationPercent).toBeCloseTo((100 * 0.3) / Math.sqrt(12) / 0.85, 0);
    expect(found.darkestOverBrightest).toBeCloseTo(0.7, 1);
    expect(found.brightest.across).toBeLessThan(0.05);
    expect(found.darkest.across).toBeGreaterThan(0.95);
  });
});

describe('findHotSpots', () => {
  test('places each hot spot within 5 px and finds none where there are none', () => {
    for (const seed of [2, 8]) {
      expect(findHotSpots(fitted(litField(seed)))).toEqual([]);
      const field = litField(seed, 2);
      const spots = findHotSpots(fitted(field));
      for (const { x, y } of field.hotSpots) {
        expect(Math.min(...spots.map((s) => Math.hypot(s.x - x, s.y - y)))).toBeLessThan(5);
      }
      expect(spots).toHaveLength(2);
    }
  });
});
