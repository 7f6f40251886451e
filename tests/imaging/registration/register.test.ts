import { describe, expect, test } from 'vitest';
import { project } from '../../../src/imaging/conventions.ts';
import type { Plane16 } from '../../../src/imaging/plane.ts';
import type { RegistrationEstimate } from '../../../src/imaging/registration/estimate.ts';
import {
  compose,
  cornerDistance,
  enlargement,
  invert,
  normalise,
} from '../../../src/imaging/registration/homography.ts';
import { judgeRegistration } from '../../../src/imaging/registration/judge.ts';
import { lays } from '../../../src/imaging/registration/lay.ts';
import { register, type RegisterOptions } from '../../../src/imaging/registration/register.ts';
import { shrinkPlane } from '../../../src/imaging/registration/shrink.ts';
import { inventedPicture, spoiledPair, type Pair, type PairOptions } from './pairs.ts';

const size = { width: 640, height: 480 };
const picture = (seed: number, { width, height } = size) =>
  inventedPicture(Math.round(width * 1.2), Math.round(height * 1.2), seed);
const pair = (options: Partial<PairOptions> & { seed: number }): Pair =>
  spoiledPair(picture(options.seed), { ...size, ...options });

function estimate(base: Plane16, moving: Plane16, options?: RegisterOptions): RegistrationEstimate {
  const outcome = register(base, moving, options);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
}

function errorOf(found: RegistrationEstimate, { truth, base }: Pair): number {
  return cornerDistance(found.homography, truth, base.width, base.height);
}

describe('registration of two captures', () => {
  test.each(lays)('lays a negative that is %s on its positive within 0.1 px', (lay) => {
    const given = pair({ seed: 20 + lays.indexOf(lay), lay });
    const found = estimate(given.base, given.moving);
    expect(errorOf(found, given)).toBeLessThan(0.1);
    expect(found.lay).toBe(lay);
    expect(found.polarity).toBe('opposite');
    expect(found.tilesAgreed).toBeGreaterThan(0.8 * found.tilesTried);
    expect(found.residual.pixels).toHaveLength(found.residual.columns * found.residual.rows);
  });

  test('calls two positives the same, so that a mislabelled one is found', () => {
    const given = pair({ seed: 31, opposite: false });
    const outcome = register(given.base, given.moving);
    const found = judgeRegistration(outcome, { base: 'positive', moving: 'negative' });
    expect(found.map((f) => f.code)).toEqual(['readings-not-opposite']);
  });

  test('lays a weak pair, soft and noisy with contrast that changes sides, within 0.5 px', () => {
    const given = pair({ seed: 42, weak: true });
    const found = estimate(given.base, given.moving);
    // A third of the gate's own limit for what may be published at the corners in the worst case.
    expect(errorOf(found, given)).toBeLessThan(0.5);
    expect(errorOf(found, given)).toBeLessThan(found.boundPixels);
  });

  test('refuses a capture of another plate, with its numbers', () => {
    const outcome = register(pair({ seed: 51 }).base, pair({ seed: 52 }).moving);
    expect(outcome.ok).toBe(false);
    expect(outcome.ok ? '' : outcome.reason).toMatch(
      /^\d+ of \d+ tiles agree, \d in the weakest quadrant, with .*; an alignment needs \d+ tiles, 3 in each quadrant and at most 0\.30 px\.$/,
    );
    const codes = judgeRegistration(outcome, { base: 'positive', moving: 'negative' });
    expect(codes.map((c) => c.code)).toEqual(['another-plate']);
  });

  test('lays a file at two thirds of the size, as a resampled copy is', () => {
    const given = pair({ seed: 61 });
    const small = shrinkPlane(given.moving, 1.5);
    const found = estimate(given.base, small);
    const truth = normalise(compose(given.truth, enlargement(1.5)));
    expect(cornerDistance(found.homography, truth, small.width, small.height)).toBeLessThan(0.2);
  });

  test('lays a capture of 2.4 megapixels by its full detail within 0.05 px', () => {
    const large = { width: 1800, height: 1350 };
    const given = spoiledPair(picture(71, large), { ...large, seed: 71, lay: 'mirrored' });
    const found = estimate(given.base, given.moving, { pixelsPerMillimetre: 20 });
    expect(errorOf(found, given)).toBeLessThan(0.05);
    expect(found.boundMicrometres).toBeCloseTo(found.boundPixels * 50, 9);
  });

  test('starts from control points where the search does not reach: a turn of 20 degrees', () => {
    const given = pair({ seed: 81, motion: { turn: 40, size: 0.02, shift: 0.02 } });
    const [a, b] = [given.truth[0], given.truth[3]];
    expect(Math.abs(Math.atan2(b, a)) * (180 / Math.PI)).toBeGreaterThan(10);
    expect(register(given.base, given.moving).ok).toBe(false);
    const toMoving = invert(given.truth);
    const controlPoints = [
      [130, 120],
      [520, 100],
      [510, 380],
      [140, 370],
    ].map(([x, y], k) => {
      const [hx, hy] = project(toMoving, x, y);
      // Set by hand: up to 4 px off.
      return {
        base: [x, y] as const,
        here: [hx + (k % 2 ? 3 : -2), hy + (k < 2 ? 2 : -3)] as const,
      };
    });
    const found = estimate(given.base, given.moving, { controlPoints });
    expect(found.method).toBe('control points');
    expect(errorOf(found, given)).toBeLessThan(0.2);
  });

  test('does not believe control points that point elsewhere', () => {
    const given = pair({ seed: 82 });
    const controlPoints = [
      [100, 100],
      [450, 100],
      [450, 330],
      [100, 330],
    ].map(([x, y]) => ({ base: [x, y] as const, here: [x + 150, y + 90] as const }));
    expect(register(given.base, given.moving, { controlPoints }).ok).toBe(false);
  });

  test('says what is too small, and what is on a line', () => {
    const tiny = { width: 200, height: 150, data: new Uint16Array(200 * 150) };
    const given = pair({ seed: 83 });
    expect(register(given.base, tiny)).toMatchObject({
      ok: false,
      reason: 'The capture is 200 x 150 pixels; alignment needs at least 320 on the shorter side.',
    });
    const line = [0, 100, 200, 300].map((x) => ({ base: [x, x] as const, here: [x, x] as const }));
    expect(register(given.base, given.moving, { controlPoints: line })).toMatchObject({
      ok: false,
      reason:
        'The control points do not fix a map: at least four are needed, no three of them on a line.',
    });
  });

  test('refuses blank captures instead of inventing a map', () => {
    const blank = { ...size, data: new Uint16Array(size.width * size.height).fill(30000) };
    expect(register(blank, blank).ok).toBe(false);
    const clipped = { ...size, data: new Uint16Array(size.width * size.height).fill(65535) };
    expect(register(pair({ seed: 84 }).base, clipped).ok).toBe(false);
  });
});
