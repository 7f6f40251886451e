import { describe, expect, test } from 'vitest';
import { barLength, printedArea, printedSize } from '../../../src/components/print/printed-size.ts';

describe('printedSize', () => {
  test('prints 1680 × 1400 px at 20 px/mm as 84 × 70 mm', () => {
    const size = printedSize({ width: 1680, height: 1400, pixelsPerMillimetre: 20 });
    expect(size).toEqual({ width: 84, height: 70, ratio: [1, 1] });
  });

  test('takes the largest plain ratio that fits the page, in both directions', () => {
    // 216 × 165 mm: 216 × 3/4 = 162 fits 178; 165 × 300 mm: 300 × 3/4 = 225 fits 226.
    expect(printedSize({ width: 216, height: 165, pixelsPerMillimetre: 1 }).ratio).toEqual([3, 4]);
    expect(printedSize({ width: 165, height: 300, pixelsPerMillimetre: 1 }).ratio).toEqual([3, 4]);
    expect(printedSize({ width: 165, height: 302, pixelsPerMillimetre: 1 }).ratio).toEqual([2, 3]);
    expect(printedSize({ width: 1000, height: 10, pixelsPerMillimetre: 1 }).ratio).toEqual([1, 6]);
  });

  test.each([1, 30, 178, 179, 240, 500, 3000])('never leaves the page: %d mm square', (side) => {
    const { width, height } = printedSize({ width: side, height: side, pixelsPerMillimetre: 1 });
    expect(width).toBeLessThanOrEqual(printedArea.width);
    expect(height).toBeLessThanOrEqual(printedArea.height);
  });

  test('claims no size where the scale is not known', () => {
    const size = printedSize({ width: 400, height: 300, pixelsPerMillimetre: null });
    expect(size.ratio).toBeNull();
    expect(size.width / size.height).toBeCloseTo(4 / 3, 10);
    expect(barLength(size)).toBeNull();
  });
});

test('the scale bar is a round length that lies within the picture', () => {
  expect(barLength({ width: 84, height: 70, ratio: [1, 1] })).toBe(50);
  expect(barLength({ width: 70, height: 84, ratio: [1, 1] })).toBe(20);
  // 160 mm on paper at one half are 320 mm on the plate.
  expect(barLength({ width: 160, height: 120, ratio: [1, 2] })).toBe(100);
});
