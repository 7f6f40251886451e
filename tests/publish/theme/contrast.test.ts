import { describe, expect, test } from 'vitest';
import { contrast, legible, mixed } from '../../../src/publish/theme/contrast.ts';

describe('contrast', () => {
  // 21 is the largest ratio by WCAG 2.2; the others were computed from its definition by another
  // program. #767676 is the lightest grey that passes 4.5 on white, #777777 the darkest that fails.
  test.each([
    ['#000000', '#ffffff', 21],
    ['#767676', '#ffffff', 4.5422],
    ['#777777', '#ffffff', 4.4781],
    ['#949494', '#ffffff', 3.0335],
    ['#959595', '#ffffff', 2.9953],
    ['#595959', '#ffffff', 7.0047],
  ])('of %s and %s is %f', (a, b, expected) => {
    expect(contrast(a, b)).toBeCloseTo(expected, 4);
    expect(contrast(b, a)).toBeCloseTo(expected, 4);
  });
});

describe('a colour', () => {
  test('that is legible stays as it was written', () => {
    expect(legible('#5a3d00', '#faf8f3', 4.5)).toBe('#5a3d00');
  });

  test.each(['#ffff00', '#a9823c', '#ff8080', '#000000', '#ffffff', '#0000ff'])(
    '%s becomes legible on a light and on a dark ground',
    (colour) => {
      for (const ground of ['#faf8f3', '#1b1917']) {
        expect(contrast(legible(colour, ground, 4.5), ground)).toBeGreaterThanOrEqual(4.5);
      }
    },
  );

  test('halfway to another has the mean of their codes', () => {
    expect(mixed('#000000', '#ffffff', 0.5)).toBe('#808080');
    expect(mixed('#102030', '#304050', 0.25)).toBe('#182838');
  });
});
