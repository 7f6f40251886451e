import { describe, expect, test } from 'vitest';
import {
  exactShutterTime,
  isSameExposure,
  measuredStops,
  stopsBetween,
} from '../../../src/imaging/inspect/bracket-steps.ts';

describe('isSameExposure', () => {
  test('takes a marked time for itself and for the exact member of its series', () => {
    // Marked 1/60 is 1/64, 1/15 is 1/16, 30 is 32: common practice, no source.
    expect(exactShutterTime(1 / 60)).toBe(1 / 64);
    expect(exactShutterTime(1 / 15)).toBe(1 / 16);
    expect(exactShutterTime(30)).toBe(32);
    expect(isSameExposure(1 / 60, 1 / 64, 0.05)).toBe(true);
    expect(isSameExposure(1 / 60, 1 / 50, 0.1)).toBe(false);
    expect(isSameExposure(0.25, 0.26, 0.1)).toBe(true);
  });
});

describe('measuredStops', () => {
  const scene = Float64Array.from({ length: 1000 }, (_, i) => 200 + 30 * i);

  test('finds two stops between pictures, clipped and dark pixels left out', () => {
    const longer = scene.map((v) => Math.min(65535, 4 * v));
    expect(measuredStops(scene, longer)).toBeCloseTo(2, 10);
    expect(stopsBetween(0.25, 1)).toBe(2);
  });

  test('has no figure where no pixel is held by both', () => {
    expect(
      measuredStops(
        scene,
        scene.map(() => 65535),
      ),
    ).toBeNaN();
  });
});
