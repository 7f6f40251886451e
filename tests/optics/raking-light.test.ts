import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  distanceForFallOff,
  fallOffOfTwo,
  fallOffStops,
  heightForGlint,
  heightForRelief,
  lampFall,
  shadowLength,
  wallContrast,
} from '../../src/optics/raking-light.ts';

describe('a low lamp', () => {
  test('a 45 degree wall under a lamp at 45 degrees is √2 brighter (Lambert’s law)', () => {
    expect(wallContrast(45, 45)).toBeCloseTo(Math.SQRT2, 12);
  });

  test('at 10 degrees a slope of 2 degrees is a fifth brighter than the flat', () => {
    // sin 12 / sin 10 = 0.207912 / 0.173648 (four-figure tables).
    expect(wallContrast(10, 2)).toBeCloseTo(0.207912 / 0.173648, 5);
  });

  test('the recommended height gives the wanted contrast (property)', () => {
    const slope = fc.double({ min: 0.2, max: 40, noNaN: true });
    fc.assert(
      fc.property(slope, fc.double({ min: 0.05, max: 1, noNaN: true }), (s, c) => {
        expect(wallContrast(heightForRelief(s, c), s)).toBeCloseTo(1 + c, 6);
      }),
    );
  });

  test('a wall of 40 degrees glints when the lamp stands at 10', () => {
    expect(heightForGlint(40)).toBe(10);
    expect(heightForGlint(50)).toBeNull();
  });

  test('shadows are as long as a stick’s at the same sun: cot 10 = 5.671', () => {
    expect(shadowLength(1, 10)).toBeCloseTo(5.6713, 4);
  });

  test('falls with the square of the distance and with the cosine', () => {
    // A lamp straight over the middle, 100 mm up, seen from 100 mm aside: (1/√2)^3.
    expect(lampFall({ bearing: 0, height: 90, distance: 100 }, 100, 0)).toBeCloseTo(0.353553, 6);
  });

  test('is one stop uneven over a sixth plate at 10 degrees and 300 mm', () => {
    // By hand: z = 52.09, out = 295.44; edges at ±34.95: d = 265.65 and 334.47; 3 log2(334.47/265.65) = 0.997.
    const lamp = { bearing: 90, height: 10, distance: 300 };
    const edges = 3 * Math.log2(Math.hypot(330.39, 52.09) / Math.hypot(260.49, 52.09));
    expect(fallOffStops(lamp, [69.9, 0.001])).toBeCloseTo(edges, 3);
    expect(edges).toBeCloseTo(0.997, 3);
  });

  test('the recommended distance is as level as asked, and no further than needed', () => {
    const distance = distanceForFallOff({ bearing: 300, height: 15 }, [82.6, 69.9], 0.33);
    expect(fallOffStops({ bearing: 300, height: 15, distance }, [82.6, 69.9])).toBeCloseTo(0.33, 3);
  });

  test('a second lamp opposite levels the first', () => {
    const lamp = { bearing: 90, height: 15, distance: 400 };
    expect(fallOffOfTwo(lamp, [80, 80])).toBeLessThan(fallOffStops(lamp, [80, 80]) / 3);
  });
});
