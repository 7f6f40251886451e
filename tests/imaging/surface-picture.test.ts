import { describe, expect, test } from 'vitest';
import { lightDirection } from '../../src/imaging/conventions.ts';
import { glossCode, reliefCode, slopeCode } from '../../src/imaging/surface-picture.ts';

const flat = { slopeX: 0, slopeY: 0, gloss: 0.5 };
const steepest = 0.3;
const lamp = lightDirection(90, 30); // from the right, 30 degrees high

describe('relief', () => {
  test('a flat place is the same grey under any lamp', () => {
    // 0.2 of white through the sRGB curve of IEC 61966-2-1 by hand:
    // 1.055 * 0.2^(1/2.4) - 0.055 = 0.4845; times 255 = 123.55.
    for (const light of [lamp, lightDirection(200, 60), lightDirection(0, 85)])
      expect(reliefCode(flat, light, steepest)).toBeCloseTo(123.55, 1);
  });

  test('follows the cosine law for a facet turned to the lamp', () => {
    // Falling to the right by the steepest slope: drawn as 0.6, normal (0.6, 0, 1) / 1.16619.
    // Cosine with (cos 30, 0, sin 30): (0.51962 + 0.5) / 1.16619 = 0.87432; over sin 30 = 1.74864;
    // times 0.2 = 0.34973; sRGB 1.055 * 0.34973^(1/2.4) - 0.055 = 0.62627; times 255 = 159.70.
    expect(reliefCode({ ...flat, slopeX: -0.3 }, lamp, steepest)).toBeCloseTo(159.7, 0);
  });

  test('a facet turned away is darker, one across the beam is not lighter', () => {
    expect(reliefCode({ ...flat, slopeX: 0.3 }, lamp, steepest)).toBeLessThan(90);
    expect(reliefCode({ ...flat, slopeY: 0.3 }, lamp, steepest)).toBeLessThan(124);
  });
});

describe('slope', () => {
  test('level is the middle, the ends are the steepest fall and rise towards the lamp', () => {
    expect(slopeCode(flat, lamp, steepest)).toBeCloseTo(127.5, 9);
    // A surface that falls to the right faces a lamp at the right: white.
    expect(slopeCode({ ...flat, slopeX: -0.3 }, lamp, steepest)).toBeCloseTo(255, 9);
    expect(slopeCode({ ...flat, slopeX: 0.3 }, lamp, steepest)).toBeCloseTo(0, 9);
    expect(slopeCode({ ...flat, slopeX: -0.15 }, lamp, steepest)).toBeCloseTo(191.25, 9);
  });

  test('bearings count clockwise from the top: a lamp above sees what rises downwards', () => {
    const above = lightDirection(0, 30);
    expect(slopeCode({ ...flat, slopeY: -0.3 }, above, steepest)).toBeCloseTo(255, 6);
    expect(slopeCode({ ...flat, slopeX: -0.3 }, above, steepest)).toBeCloseTo(127.5, 6);
  });
});

describe('gloss', () => {
  test('a flat place shows its gloss as it is, under any lamp', () => {
    expect(glossCode(flat, lamp, steepest)).toBeCloseTo(127.5, 6);
    expect(glossCode({ ...flat, gloss: 0 }, lamp, steepest)).toBeCloseTo(0, 6);
  });

  test('a facet halfway to the lamp is brighter, one turned away is dark', () => {
    expect(glossCode({ ...flat, slopeX: -0.3 }, lamp, steepest)).toBeGreaterThan(200);
    expect(glossCode({ ...flat, slopeX: 0.3 }, lamp, steepest)).toBeLessThan(30);
  });
});
