import { describe, expect, test } from 'vitest';
import {
  coatedDoublePass,
  doublePassByPolarisation,
  doublePassPolarised,
  glassFigures,
  glassLossStops,
  thicknessFromGhost,
} from '../../src/optics/axial-glass.ts';
import { doublePass } from '../../src/optics/glass-sheet.ts';

const float = { index: 1.52, thickness: 1, angle: 45 };

describe('the glass as a choice', () => {
  test('plain glass of index 1.5 costs 3.67 stops, 1.67 more than a half-silvered sheet', () => {
    // Check table: 0.078315 against 0.25, "1.7 stops apart".
    expect(glassLossStops({ ...float, index: 1.5 })).toBeCloseTo(-Math.log2(0.078315), 4);
    expect(coatedDoublePass(0.5)).toBe(0.25);
    expect(Math.log2(coatedDoublePass(0.5) / doublePass(1.5, 45))).toBeCloseTo(1.67, 2);
  });

  test('nine tenths of what comes back are polarised across the plane of reflection', () => {
    // From the check table, index 1.52: .176402 x .823598 against .018541 x .981459.
    const share = (0.176402 * 0.823598) / (0.176402 * 0.823598 + 0.018541 * 0.981459);
    expect(glassFigures(float, null).polarisedShare).toBeCloseTo(share, 5);
    expect(share).toBeGreaterThan(0.88);
  });

  test('one millimetre of float glass parts the ghost by 17.6 px at 600 pixels per inch', () => {
    // Check values, 7.1: 0.743 mm = 17.6 px.
    const { ghostMillimetres, ghostPixels } = glassFigures(float, 600 / 25.4);
    expect(ghostMillimetres).toBeCloseTo(0.743212, 6);
    expect(ghostPixels).toBeCloseTo(17.6, 1);
  });

  test('two polarisers at right angles share out all the light', () => {
    const across = doublePassPolarised(float, 0);
    const along = doublePassPolarised(float, 90);
    expect(across + along).toBeCloseTo(doublePass(1.52, 45), 12);
    expect(across).toBeCloseTo(doublePassByPolarisation(float).s / 2, 12);
    expect(Math.log2(across / along)).toBeCloseTo(Math.log2(0.145284 / 0.018197), 3);
  });

  test('the ghost tells the thickness that made it', () => {
    expect(thicknessFromGhost(0.743212, 1.52, 45)).toBeCloseTo(1, 5);
    expect(thicknessFromGhost(3 * 0.743212, 1.52, 45)).toBeCloseTo(3, 5);
  });
});
