import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  angleBetween,
  ballPrecision,
  lightRings,
  placesOf,
} from '../../src/optics/light-positions.ts';

describe('places for a lamp', () => {
  test('are as many as asked, between the limits, never two in one place (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 6, max: 200 }), (count) => {
        const places = placesOf(lightRings(count));
        expect(places).toHaveLength(count);
        for (const { height } of places) {
          expect(height).toBeGreaterThanOrEqual(15);
          expect(height).toBeLessThanOrEqual(65);
        }
        // Even spread: the band's solid angle shared out gives this distance between places.
        const band = 2 * Math.PI * (Math.sin(65 * rad) - Math.sin(15 * rad));
        const spacing = Math.sqrt(band / count) / rad;
        const nearest = places.map((a) =>
          Math.min(...places.filter((b) => b !== a).map((b) => angleBetween(a, b))),
        );
        expect(Math.min(...nearest)).toBeGreaterThan(0.5 * spacing);
        expect(Math.max(...nearest)).toBeLessThan(1.75 * spacing);
      }),
    );
  });

  test('48 make four rings, the lowest the fullest', () => {
    const counts = lightRings(48).map(({ bearings }) => bearings.length);
    expect(counts).toHaveLength(4);
    expect(counts[0]).toBe(Math.max(...counts));
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
  });

  test('the angle between east and north on the horizon is 90 degrees', () => {
    const at = (bearing: number, height: number) => ({ bearing, height });
    expect(angleBetween(at(0, 0), at(90, 0))).toBeCloseTo(90, 9);
    expect(angleBetween(at(10, 60), at(190, 60))).toBeCloseTo(60, 9);
  });

  test('a pixel on a ball of radius 100 is 1.15 degrees of lamp', () => {
    // Check values, section 10.
    expect(ballPrecision(100)).toBeCloseTo(1.15, 2);
  });

  test('five are refused', () => {
    expect(() => lightRings(5)).toThrow('5 places are too few');
  });
});

const rad = Math.PI / 180;
