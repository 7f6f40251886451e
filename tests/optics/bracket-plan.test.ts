import { describe, expect, test } from 'vitest';
import { electronsForRatio, planBracket, usableStops } from '../../src/optics/bracket-plan.ts';

const sensor = { fullWell: 45_000, readNoise: 4 };

describe('a bracket for a range', () => {
  test('noise of photons alone: a ratio of 10 needs 100 electrons', () => {
    expect(electronsForRatio(10, 0)).toBe(100);
    // With read noise: e / sqrt(e + 16) = 10, so e^2 - 100 e - 1600 = 0, e = 50 + sqrt(4100).
    const e = electronsForRatio(10, 4);
    expect(e / Math.sqrt(e + 16)).toBeCloseTo(10, 9);
    expect(usableStops(sensor, 10)).toBeCloseTo(Math.log2(45000 / (50 + Math.sqrt(4100))), 3);
  });

  const wish = { clipSeconds: 1, sensor, ratio: 10, mostStep: 2 };

  test('a range within one frame takes one frame', () => {
    const { seconds, stepStops } = planBracket({ ...wish, range: 100 });
    expect(seconds).toHaveLength(1);
    expect(stepStops).toBe(0);
  });

  test('16 stops at most two apart take five frames that hold them all', () => {
    // 16.33 wanted, 8.62 in a frame: 7.7 missing, in steps of at most 2: four steps.
    const plan = planBracket({ ...wish, range: 2 ** 16 });
    expect(plan.seconds).toHaveLength(5);
    expect(plan.heldStops).toBeCloseTo(16.33, 2);
    expect(plan.stepStops).toBeLessThanOrEqual(2);
    expect(plan.seconds[0]).toBeLessThan(1);
  });
});
