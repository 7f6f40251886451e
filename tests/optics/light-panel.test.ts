import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cornerFactor,
  panelEvenness,
  panelFactor,
  panelToFill,
  seenUnevenness,
} from '../../src/optics/light-panel.ts';

describe('an even panel', () => {
  // scripts/reference/panel-form-factor.py, NumPy 2.4.6: 200-point Gauss-Legendre sums.
  test.each([
    [2, 2, 1, 0, 0, 0.55412642],
    [300, 300, 450, 0, 0, 0.12331759],
    [300, 300, 450, 54, 70, 0.11633645],
    [200, 400, 120, 60, 0, 0.51182174],
  ])('%f x %f at %f lights the place (%f, %f) as the sum says', (w, h, d, x, y, wanted) => {
    expect(panelFactor({ width: w, height: h, distance: d }, x, y)).toBeCloseTo(wanted, 7);
  });

  test('over one corner of a cube’s face gives the catalogue’s 0.1385', () => {
    // Closed form by hand: (1/2pi) 2 (1/sqrt 2) atan(1/sqrt 2) = 0.13853.
    expect(cornerFactor(1, 1, 1)).toBeCloseTo(0.13853, 5);
  });

  test('without end is a whole sky', () => {
    expect(panelFactor({ width: 1e6, height: 1e6, distance: 1 }, 0, 0)).toBeCloseTo(1, 4);
  });

  test('two halves give what the whole gives (property)', () => {
    const side = fc.double({ min: 10, max: 500, noNaN: true });
    fc.assert(
      fc.property(side, side, side, (a, b, c) => {
        const half = cornerFactor(a / 2, b, c);
        const rest = cornerFactor(a, b, c) - half;
        expect(rest).toBeGreaterThan(0);
        expect(half).toBeGreaterThan(rest);
        expect(cornerFactor(a, b, c)).toBeCloseTo(cornerFactor(b, a, c), 12);
      }),
    );
  });

  test('lights a half plate to within 15 % from 450 mm, from the same sums', () => {
    const evenness = panelEvenness({ width: 300, height: 300, distance: 450 }, [108, 140]);
    expect(evenness).toBeCloseTo(0.11633645 / 0.12331759, 6);
  });

  test('is recommended a tenth larger than the mirror sees', () => {
    const view = { cameraDistance: 600, openingDiameter: 0, warp: 0 };
    const panel = panelToFill([100, 60], view, 400);
    expect(panel.width).toBeCloseTo((1.1 * 100 * 1000) / 600, 9);
    expect(panel.height).toBeCloseTo((1.1 * 60 * 1000) / 600, 9);
  });

  test('shows the mirror that part of its own unevenness that the plate spans', () => {
    const view = { plateWidth: 100, cameraDistance: 600, openingDiameter: 20, warp: 1 };
    expect(seenUnevenness(500, 0.12, view, 600)).toBeCloseTo((0.12 * 200) / 500, 12);
  });
});
