import { describe, expect, test } from 'vitest';
import {
  pixelsPerInch,
  scaleFromLength,
  scaleFromPlate,
  toMillimetres,
} from '../../../src/imaging/inspect/scale.ts';

describe('scales', () => {
  test('600 pixels per inch are 23.622 per mm', () => {
    // 1 inch = 25.4 mm exactly.
    expect(pixelsPerInch({ pixelsPerMillimetre: 23.62204724, uncertainty: 0 })).toBeCloseTo(600, 5);
  });

  test('uncertainties combine as the root of the sum of squares', () => {
    // GUM 5.1.6: relative 0.3 % and 0.4 % give 0.5 %.
    const scale = scaleFromLength(
      { value: 1000, uncertainty: 3 },
      { value: 100, uncertainty: 0.4 },
    );
    expect(scale.pixelsPerMillimetre).toBe(10);
    expect(scale.uncertainty).toBeCloseTo(0.05, 10);
    const back = toMillimetres({ value: 1000, uncertainty: 0 }, scale);
    expect(back.value).toBe(100);
    expect(back.uncertainty).toBeCloseTo(0.5, 10);
  });

  test('sides that ask for different scales widen the uncertainty', () => {
    const agreed = scaleFromPlate([1000, 800], 1, [100, 80], 0.5);
    const apart = scaleFromPlate([1000, 800], 1, [100, 90], 0.5);
    expect(agreed.pixelsPerMillimetre).toBeCloseTo(10, 10);
    expect(agreed.uncertainty).toBeLessThan(0.05);
    expect(apart.uncertainty).toBeGreaterThan(0.5);
  });
});
