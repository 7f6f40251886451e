import { describe, expect, test } from 'vitest';
import { decodeSrgb, encodeSrgb } from '../../../src/imaging/colour/srgb-curve.ts';

describe('the sRGB curve', () => {
  test('agrees with values computed from IEC 61966-2-1 elsewhere', () => {
    // colour-science 0.4.7, colour.models.eotf_inverse_sRGB(0.18) = 0.461356129500442 (its own
    // test value); the others by the closed form in Python 3.11.
    expect(encodeSrgb(0.18)).toBeCloseTo(0.4613561295, 9);
    expect(encodeSrgb(0.5)).toBeCloseTo(0.735356983, 9);
    const linear: readonly [number, number][] = [
      [1, 3.03526984e-4],
      [10, 0.00303526984],
      [11, 0.003346536],
      [128, 0.2158605],
      [188, 0.502886458],
    ];
    for (const [code, value] of linear) expect(decodeSrgb(code / 255)).toBeCloseTo(value, 8);
  });

  test('comes back to every byte', () => {
    for (let code = 0; code < 256; code += 1) {
      expect(encodeSrgb(decodeSrgb(code / 255)) * 255).toBeCloseTo(code, 4);
    }
  });

  test('is not a plain power of 2.2', () => {
    expect(Math.abs(decodeSrgb(10 / 255) - (10 / 255) ** 2.2)).toBeGreaterThan(0.001);
  });
});
