import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { excludedFrom, mirrorClearance, standsInView } from '../../src/optics/lamp-zone.ts';

const stand = { plate: [100, 100], cameraDistance: 600 } as const;

describe('where a lamp must not stand', () => {
  test('for a point far away the edge of the zone is the mirror’s own half-angle', () => {
    // At infinity the edge of the plate shows what lies atan(e/D) beyond the axis: 4.764 degrees
    // for 100 mm at 600 mm (check values, 7.2), so heights from 85.236 degrees are excluded.
    const lamp = { bearing: 90, distance: 1e8, size: 0 };
    expect(excludedFrom(lamp, stand, 0)).toBeCloseTo(90 - 4.7636, 3);
  });

  test('at the lens’s own distance the plate shows twice its size', () => {
    // Similar triangles: a point beside the lens is seen in the plate up to 2e = 100 mm out.
    const out = (atSide: number) => {
      const distance = Math.hypot(atSide, 600);
      const height = (Math.atan2(600, atSide) * 180) / Math.PI;
      return mirrorClearance({ bearing: 90, height, distance, size: 0 }, stand);
    };
    expect(out(99.9)).toBeLessThan(1e-3);
    expect(out(101)).toBeGreaterThan(0.03);
  });

  test('a warp of one degree widens the zone of a far lamp by two', () => {
    const lamp = { bearing: 0, distance: 1e8, size: 0 };
    expect(excludedFrom(lamp, stand, 0) - excludedFrom(lamp, stand, 1)).toBeCloseTo(2, 2);
  });

  test('a lit face widens it by its own radius', () => {
    const far = { bearing: 0, distance: 1e6, size: 2 * 1e6 * Math.tan(Math.PI / 180) };
    const point = { ...far, size: 0 };
    expect(excludedFrom(point, stand, 0) - excludedFrom(far, stand, 0)).toBeCloseTo(1, 2);
  });

  test('the clearance grows as the lamp goes down, from any side (property)', () => {
    const bearing = fc.double({ min: 0, max: 360, noNaN: true });
    fc.assert(
      fc.property(bearing, fc.double({ min: 5, max: 80, noNaN: true }), (b, h) => {
        const at = (height: number) =>
          mirrorClearance({ bearing: b, height, distance: 700, size: 60 }, stand);
        expect(at(h)).toBeGreaterThan(at(h + 5));
      }),
      { numRuns: 50 },
    );
  });

  test('a lamp at 45 degrees is safe by 15.6, at the corner next to it', () => {
    // By hand: from the corner (-50, 50) the lamp stands atan(424.26/494.97) = 40.60 degrees off
    // the normal, the lens atan(70.71/600) = 6.72 on the other side; half the difference, less
    // half of the face's radius, atan(30/651.9) = 2.63.
    const clearance = mirrorClearance({ bearing: 315, height: 45, distance: 700, size: 60 }, stand);
    expect(clearance).toBeCloseTo((40.6 - 6.72) / 2 - 2.63 / 2, 1);
  });

  test('a lamp between lens and plate is seen directly, one beside the cone is not', () => {
    expect(standsInView({ bearing: 0, height: 89, distance: 300, size: 40 }, stand)).toBe(true);
    expect(standsInView({ bearing: 0, height: 45, distance: 300, size: 40 }, stand)).toBe(false);
    expect(standsInView({ bearing: 0, height: 89, distance: 700, size: 40 }, stand)).toBe(false);
  });
});
