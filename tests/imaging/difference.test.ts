import { expect, test } from 'vitest';
import { differenceCode } from '../../src/imaging/difference.ts';

test('no change is middle grey, whatever the tone', () => {
  for (const code of [0, 12, 128, 255])
    expect(differenceCode([code, code, code], [code, code, code], 5)).toBeCloseTo(127.5, 9);
});

test('a step of the tone scale is drawn stretched, up and down', () => {
  // (110 - 100) / 255 * 5 * 255 = 50 counts.
  expect(differenceCode([100, 100, 100], [110, 110, 110], 5)).toBeCloseTo(177.5, 6);
  expect(differenceCode([110, 110, 110], [100, 100, 100], 5)).toBeCloseTo(77.5, 6);
  expect(differenceCode([0, 0, 0], [255, 255, 255], 5)).toBe(255);
});

test('a change of colour alone, of one luminance, is not drawn', () => {
  // Linear 0.2126 r = 0.7152 g: red 1 against green 0.29726, sRGB code 148.9 (by hand): between
  // the codes 148 and 149 the difference changes its sign.
  const below = differenceCode([255, 0, 0], [0, 148, 0], 1);
  const above = differenceCode([255, 0, 0], [0, 149, 0], 1);
  expect(below).toBeLessThan(127.5);
  expect(above).toBeGreaterThan(127.4);
});
