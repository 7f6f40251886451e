import { describe, expect, test } from 'vitest';
import {
  darkMask,
  mirrorHalfAngle,
  reflectedTurn,
  reflectedWidth,
} from '../../src/optics/mirror-view.ts';

describe('what the mirror shows to the lens', () => {
  test('a plate 100 mm wide at 600 mm shows ±4.764 degrees', () => {
    // Check values, 7.2.
    expect(mirrorHalfAngle(100, 600)).toBeCloseTo(4.764, 3);
  });

  test('a mirror turned by 5 degrees turns the ray by 10', () => {
    expect(reflectedTurn(5)).toBe(10);
  });

  const view = { plateWidth: 100, cameraDistance: 600, openingDiameter: 0, warp: 0 };

  test('the width is the plate times (D + P)/D, and the opening beside', () => {
    expect(reflectedWidth(view, 400)).toBeCloseTo((100 * 1000) / 600, 9);
    expect(reflectedWidth(view, 600)).toBeCloseTo(200, 9);
    expect(reflectedWidth({ ...view, openingDiameter: 30 }, 600)).toBeCloseTo(230, 9);
  });

  test('agrees with rays traced by hand from both rims of the lens', () => {
    const [d, p, a, w] = [800, 450, 40, 1.2];
    const turn = Math.tan(Math.atan((100 / 2 + a / 2) / d) + (2 * w * Math.PI) / 180);
    // From the far rim of the lens to the plate's edge, reflected by a surface that leans out.
    const edge = 50 + p * turn;
    const traced = reflectedWidth(
      { plateWidth: 100, cameraDistance: d, openingDiameter: a, warp: w },
      p,
    );
    expect(traced / 2).toBeCloseTo(edge, 9);
  });

  test('the mask at the lens is twice the plate and more, its hole seen at half its size', () => {
    const mask = darkMask([82, 108], { cameraDistance: 600, openingDiameter: 48, warp: 0 });
    expect(mask).toEqual({ width: 212, height: 264, hole: 48, holeOnPlate: 24 });
  });

  test('a surface that bends half back shows everything', () => {
    expect(reflectedWidth({ ...view, warp: 45 }, 600)).toBe(Infinity);
  });
});
