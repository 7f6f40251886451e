import { describe, expect, test } from 'vitest';
import { reflectedLuminance, roomLight } from '../../src/imaging/tilt.ts';
import { tiltSteps } from '../../src/imaging/tilt-steps.ts';

describe('the stations of Tilt', () => {
  test.each([1.564, 2.461, null])('of a plate that turns at %s rise and go all the way', (at) => {
    const steps = tiltSteps(at);
    expect(steps[0]).toEqual({ tilt: 0, b: 0.03 });
    expect(steps.at(-1)).toEqual({ tilt: 20, b: 6 });
    for (let n = 1; n < steps.length; n++) {
      expect(steps[n].tilt).toBeGreaterThan(steps[n - 1].tilt);
      expect(steps[n].b).toBeGreaterThan(steps[n - 1].b);
    }
  });

  // By hand from the room's numbers: b = 0.03 + 5.97 (2 t - 11) / 14 between 5.5° and 12.5°.
  test('hold the turning point itself, at the tilt where the mirror is as bright', () => {
    const turning = tiltSteps(2).find(({ b }) => b === 2);
    expect(turning?.tilt).toBeCloseTo((11 + (14 * (2 - 0.03)) / 5.97) / 2, 10);
    for (const { tilt, b } of tiltSteps(2))
      expect(reflectedLuminance(tilt, roomLight.window)).toBeCloseTo(b, 10);
  });

  test('leave out what the room’s light does not reach', () => {
    expect(tiltSteps(0.02).map(({ b }) => b)).toEqual([0.03, 0.04, 6]);
    expect(tiltSteps(5).map(({ b }) => b)).toEqual([0.03, 2.5, 5, 6]);
  });
});
