import { describe, expect, test } from 'vitest';
import { ciede2000 } from '../../../src/imaging/colour/ciede2000.ts';
import { quadOf } from '../../../src/imaging/inspect/quad.ts';
import {
  bestCornerOrder,
  labOfLinear,
  measureTarget,
} from '../../../src/imaging/inspect/target-colour.ts';
import { target24 } from '../../../src/imaging/inspect/target24.ts';
import { chartPlanes, targetChart } from '../../fixtures/inspect/target-chart.ts';

const editions = ['from-2014-11', 'before-2014-11'] as const;

describe('target24', () => {
  test('the two editions differ as the check values computed elsewhere say', () => {
    // Computed with colour-science's tables and CIEDE2000: mean 0.8477, largest 1.9513 at white.
    const differences = target24['from-2014-11'].map((lab, k) =>
      ciede2000(lab, target24['before-2014-11'][k]),
    );
    expect(differences.reduce((a, b) => a + b) / 24).toBeCloseTo(0.8477, 3);
    expect(Math.max(...differences)).toBeCloseTo(1.9513, 3);
    expect(differences.indexOf(Math.max(...differences))).toBe(18);
  });
});

describe('measureTarget', () => {
  test.each(editions)('reads a faithful chart of the edition %s as faithful', (edition) => {
    const chart = targetChart({ patches: target24[edition] });
    const found = measureTarget(chartPlanes(chart), quadOf(chart.corners), edition);
    // Drawn in float and without clipping, so that only reading can go wrong.
    expect(found.max).toBeLessThan(0.01);
    expect(found.tone).toBeLessThan(0.01);
    expect(found.noise).toBeLessThan(0.01);
  });

  test('the wrong edition alone costs a mean of 0.85', () => {
    const chart = targetChart({ patches: target24['before-2014-11'] });
    const found = measureTarget(chartPlanes(chart), quadOf(chart.corners), 'from-2014-11');
    expect(found.mean).toBeCloseTo(0.848, 2);
    expect(found.worstPatch).toBe(19);
  });

  test('a white balance that is off shows in a*b*, not in the tone', () => {
    const chart = targetChart({ patches: target24['from-2014-11'], balance: [1.15, 1, 0.85] });
    const found = measureTarget(chartPlanes(chart), quadOf(chart.corners), 'from-2014-11');
    expect(found.whiteBalance).toBeGreaterThan(8);
    expect(found.tone).toBeLessThan(2);
  });

  test('noise of a known size comes back as the deviation of L*', () => {
    const chart = targetChart({ patches: target24['from-2014-11'], noise: 0.004 });
    const found = measureTarget(chartPlanes(chart), quadOf(chart.corners), 'from-2014-11');
    // The darkest patch counts most: Y = 0.0316, dL* / dY = 116 / 3 Y^(-2/3) = 387; times 0.004.
    expect(found.noise).toBeCloseTo(1.55, 0);
  });

  test('grey of 18 % is L* 49.496 with no colour', () => {
    // CIE 15: L* of Y = 0.18 is 49.496108.
    const [l, a, b] = labOfLinear([0.18, 0.18, 0.18]);
    expect(l).toBeCloseTo(49.4961, 3);
    expect(Math.hypot(a, b)).toBeLessThan(0.02);
  });
});

describe('bestCornerOrder', () => {
  test('tells a mirrored file and corners given from the wrong end', () => {
    const patches = target24['from-2014-11'];
    const mirrored = targetChart({ patches, mirrored: true });
    expect(
      bestCornerOrder(chartPlanes(mirrored), quadOf(mirrored.corners), 'from-2014-11').order,
    ).toBe('mirrored');
    const chart = targetChart({ patches });
    const [a, b, c, d] = chart.corners;
    expect(bestCornerOrder(chartPlanes(chart), quadOf([c, d, a, b]), 'from-2014-11').order).toBe(
      'turned by half',
    );
    expect(bestCornerOrder(chartPlanes(chart), quadOf(chart.corners), 'from-2014-11').order).toBe(
      'as given',
    );
  });
});
