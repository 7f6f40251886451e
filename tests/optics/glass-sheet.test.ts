import { describe, expect, test } from 'vitest';
import {
  doublePass,
  lateralDisplacement,
  sheetGhost,
  sheetReflectance,
} from '../../src/optics/glass-sheet.ts';
import { unpolarised } from '../../src/optics/fresnel.ts';

describe('a sheet of glass', () => {
  test('shifts a ray by 1.6175 cm: University Physics 14e, problem 33.54', () => {
    expect(lateralDisplacement(1.8, 66, 2.4)).toBeCloseTo(1.6175, 4);
  });

  test('one millimetre of window glass shifts by 0.3355 mm and parts the ghost by 0.7432 mm', () => {
    expect(lateralDisplacement(1.52, 45, 1)).toBeCloseTo(0.3355, 4);
    expect(sheetGhost(1.52, 45, 1).displacement).toBeCloseTo(0.7432, 4);
  });

  // Check table, slab of two incoherent faces: s, p, mean, mean of products.
  test.each([
    [1.47, 0.156564, 0.014323, 0.085444, 0.073085],
    [1.5, 0.168521, 0.016791, 0.092656, 0.078315],
    [1.52, 0.176402, 0.018541, 0.097472, 0.081741],
  ])('index %f gives the sheet and the double pass of the table', (n, s, p, mean, double) => {
    const sheet = sheetReflectance(n, 45);
    expect(sheet.s).toBeCloseTo(s, 6);
    expect(sheet.p).toBeCloseTo(p, 6);
    expect(unpolarised(sheet)).toBeCloseTo(mean, 6);
    expect(doublePass(n, 45)).toBeCloseTo(double, 6);
  });

  test('the ghost is below one hundredth and above a five-hundredth of the picture', () => {
    // Relative strength r^2: s .0094, p .00009 at n 1.52; the field is mostly s-polarised.
    const { strength } = sheetGhost(1.52, 45, 1);
    expect(strength).toBeLessThan(0.0094);
    expect(strength).toBeGreaterThan(0.005);
  });
});
