import { expect, test } from 'vitest';
import { flashFNumber, flickerError, guideNumber } from '../../src/optics/flash.ts';

test('guide number 40 gives f/8 at five metres, f/16 at ISO 400 (any flash’s own table)', () => {
  expect(flashFNumber(40, 5000, 100)).toBeCloseTo(8, 9);
  expect(flashFNumber(40, 5000, 400)).toBeCloseTo(16, 9);
});

test('a lens drawn out to life size asks for twice the guide number', () => {
  expect(guideNumber(8, 0, 650, 100)).toBeCloseTo(5.2, 9);
  expect(guideNumber(8, 1, 650, 100)).toBeCloseTo(10.4, 9);
  expect(flashFNumber(guideNumber(8, 0, 650, 100), 650, 100)).toBeCloseTo(8, 9);
});

test('whole swings of the lamp leave no flicker, half a swing most of it', () => {
  // Mean of 1 + cos over n swings: closed form |sin(pi n)|/(pi n); 2/pi for half a swing.
  expect(flickerError(1 / 100, 50)).toBeCloseTo(0, 12);
  expect(flickerError(1 / 200, 50)).toBeCloseTo(2 / Math.PI, 12);
  expect(flickerError(1 / 4, 50)).toBeLessThan(1e-12);
  expect(flickerError(1 / 60, 50)).toBeCloseTo(
    Math.sin((5 / 3) * Math.PI) / -((5 / 3) * Math.PI),
    12,
  );
});
