import { describe, expect, test } from 'vitest';
import { labToXyz, xyzToLab } from '../../../src/imaging/colour/lab.ts';
import { iccWhite } from '../../../src/imaging/colour/rgb-primaries.ts';

const white = [0.9642, 1, 0.8249] as const;

describe('CIELAB', () => {
  test('gives the lightness of greys by the closed form of ISO/CIE 11664-4', () => {
    // L* = 116 Y^(1/3) - 16 above Y = 216/24389, (24389/27) Y below: computed with Python 3.11.
    const lightness = (Y: number): number => xyzToLab([0.9642 * Y, Y, 0.8249 * Y], white)[0];
    expect(lightness(0.18)).toBeCloseTo(49.496108, 6);
    expect(lightness(0.5)).toBeCloseTo(76.069261, 6);
    expect(lightness(0.01)).toBeCloseTo(8.991442, 6);
    expect(lightness(216 / 24389)).toBeCloseTo(8, 9);
    expect(lightness(0.001)).toBeCloseTo(0.9032963, 6);
  });

  test('leaves a grey without colour and white at 100', () => {
    const [L, a, b] = xyzToLab(iccWhite, iccWhite);
    expect(L).toBeCloseTo(100, 12);
    expect(a).toBeCloseTo(0, 12);
    expect(b).toBeCloseTo(0, 12);
  });

  test('comes back from Lab to the same XYZ, dark values included', () => {
    for (const lab of [
      [5, 3, -4],
      [50.76, -0.1, 0.2],
      [81.29, -0.57, 0.44],
      [20, 60, -70],
    ] as const) {
      const again = xyzToLab(labToXyz(lab, white), white);
      for (const i of [0, 1, 2]) expect(again[i]).toBeCloseTo(lab[i], 9);
    }
  });
});
