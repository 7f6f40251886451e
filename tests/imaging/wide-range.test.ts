import { describe, expect, test } from 'vitest';
import { lightHistogram } from '../../src/imaging/light-histogram.ts';
import { mergedLight, rangeCode } from '../../src/imaging/wide-range.ts';

// Code 0 is -4 stops, code 255 is +2.
const numbers = { offset: -4, step: 6 / 255, offsetBase: 1 / 64, offsetMerged: 1 / 64 };
const rendering = { stops: null, white: 1, clip: null };

describe('merged light', () => {
  test('is (B + 1/64) 2^G - 1/64: four times white for white and two stops', () => {
    // (1 + 1/64) * 4 - 1/64 = 4.046875 by hand.
    expect(mergedLight(255, 255, numbers)).toBeCloseTo(4.046875, 9);
  });

  test('of code 170, no gain, is the light of the rendering', () => {
    // sRGB code 188 is 0.502886 in linear light: colour-science's table, and
    // ((188/255 + 0.055) / 1.055)^2.4 by hand.
    expect(mergedLight(188, 170, numbers)).toBeCloseTo(0.502886, 5);
  });
});

describe('Range', () => {
  test('shows the rendering untouched until the merged light is asked for', () => {
    for (const code of [0, 3, 77, 188, 255])
      expect(rangeCode(code, 12, numbers, rendering)).toBeCloseTo(code, 9);
  });

  test('a stop more doubles the light', () => {
    // python3 -c "e=lambda l:255*(1.055*l**(1/2.4)-.055); d=lambda c:((c/255+.055)/1.055)**2.4;
    //   print(e(2*d(127)))"  Python 3 -> 174.2208
    const one = rangeCode(127, 170, numbers, { stops: 1, white: 1, clip: null });
    expect(one).toBeCloseTo(174.2208, 3);
    const same = rangeCode(127, 170, numbers, { stops: 1, white: 2, clip: null });
    expect(same).toBeCloseTo(127, 6);
  });

  test('one exposure stops at its clip, and black stays black', () => {
    const frame = { stops: 4, white: 1, clip: 0.98 };
    // 0.98 through the sRGB curve: 1.055 * 0.98^(1/2.4) - 0.055 = 0.99116; times 255 = 252.7.
    expect(rangeCode(255, 255, numbers, frame)).toBeCloseTo(252.7, 1);
    expect(rangeCode(0, 0, numbers, frame)).toBe(0);
  });
});

test('the histogram counts each covered pixel once, in its stop', () => {
  // White, no gain: light 1, stop 0; white, two stops: 4.05, stop 2.02; uncovered: not counted.
  const base = Uint8Array.from([255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 0]);
  const gain = Uint8Array.from([170, 0, 0, 255, 255, 0, 0, 255, 170, 0, 0, 255]);
  const { counts, total } = lightHistogram(base, gain, numbers, -4.5, 4.5, 9);
  expect(total).toBe(2);
  expect([...counts]).toEqual([0, 0, 0, 0, 1, 0, 1, 0, 0]);
});
