import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  airyDiameter,
  balancedFNumber,
  bellowsStops,
  bestAperture,
  blurAt,
  cutOff,
  depthOfField,
  distanceFor,
  exposureValue,
  hyperfocal,
  magnification,
  pixelsPerMillimetre,
} from '../../src/optics/close-up.ts';

// Check values, 7.3: worked with the named formulas, apart from this code.
describe('a lens close to the plate', () => {
  test('stands at f (1 + 1/m)', () => {
    expect(distanceFor(100, 1)).toBe(200);
    expect(distanceFor(100, 0.5)).toBeCloseTo(300, 9);
    expect(magnification(100, 300)).toBeCloseTo(0.5, 12);
    expect(() => magnification(100, 90)).toThrow('A lens of 100 mm cannot focus');
  });

  test('loses two stops at life size, 1.170 at half, 0.644 at a quarter', () => {
    expect(bellowsStops(1)).toBeCloseTo(2, 9);
    expect(bellowsStops(0.5)).toBeCloseTo(1.17, 3);
    expect(bellowsStops(0.25)).toBeCloseTo(0.644, 3);
  });

  test.each([
    [8, 0.00376, 0.5, 0.361],
    [8, 0.00376, 1, 0.12],
    [11, 0.0045, 0.35, 1.091],
  ])('at f/%f, circle %f, magnification %f is %f mm deep', (n, c, m, depth) => {
    expect(depthOfField(n, c, m)).toBeCloseTo(depth, 3);
  });

  test('a 50 mm lens at f/8 is sharp from 10 466.7 mm', () => {
    expect(hyperfocal(50, 8, 0.03)).toBeCloseTo(10466.7, 1);
  });

  test('spreads a point over 10.736, 14.762, 21.472 µm at f/8, f/11, f/16', () => {
    const sizes = [8, 11, 16].map((n) => 1000 * airyDiameter(n));
    [10.736, 14.762, 21.472].forEach((size, i) => expect(sizes[i]).toBeCloseTo(size, 3));
  });

  test('carries 227.3 line pairs per mm of sensor at f/8 from afar', () => {
    // On the plate per unit of magnification, in the limit of a small one.
    expect(cutOff(8, 1e-9) / 1e-9).toBeCloseTo(227.3, 1);
  });

  test('exposure values are those of the tables', () => {
    expect(exposureValue(1, 1)).toBe(0);
    expect(exposureValue(16, 1 / 125)).toBeCloseTo(14.9658, 4);
    expect(exposureValue(8, 1 / 125)).toBeCloseTo(12.9658, 4);
  });

  test('a tenth of life size on 4 µm pixels gives 25 pixels per mm', () => {
    expect(pixelsPerMillimetre(0.1, 0.004)).toBeCloseTo(25, 9);
  });
});

describe('the best aperture', () => {
  test('balances defocus and diffraction', () => {
    const n = balancedFNumber(0.1, 1);
    const { defocus, diffraction } = blurAt(n, 0.1, 0.004, 1);
    expect(defocus).toBeCloseTo(diffraction, 9);
  });

  test('no other usual aperture is sharper, whatever the depth (property)', () => {
    const size = fc.double({ min: 0.05, max: 1, noNaN: true });
    fc.assert(
      fc.property(size, fc.double({ min: 0.05, max: 3, noNaN: true }), (m, depth) => {
        const best = bestAperture(m, 0.004, depth);
        const exact = balancedFNumber(m, depth);
        // Within a third of a stop and rounding of the exact balance, or at an end of the series.
        const within = Math.abs(2 * Math.log2(best.fNumber / exact)) < 0.4;
        expect(within || best.fNumber === 2.8 || best.fNumber === 45).toBe(true);
      }),
    );
  });
});
