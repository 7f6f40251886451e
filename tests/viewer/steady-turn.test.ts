import { describe, expect, test } from 'vitest';
import { reflectedLuminance, roomLight } from '../../src/imaging/tilt.ts';
import { SteadyTurn } from '../../src/viewer/steady-turn.ts';

/** Relative luminance of a plate whose positive is black here and whose negative is white. */
function luminance(tilt: number): number {
  const b = reflectedLuminance(Math.min(20, Math.max(0, tilt)), roomLight.window);
  return b / (1 + b);
}

/**
 * The largest number of flashes in any one second: pairs of opposing changes of a tenth of white
 * or more where the darker side is below 0.8 (WCAG 2.2, "general flash and red flash thresholds").
 */
function flashes(values: readonly number[], perSecond: number): number {
  const ends: { readonly at: number; readonly value: number }[] = [{ at: 0, value: values[0] }];
  values.forEach((value, at) => {
    const last = ends[ends.length - 1];
    const before = ends[ends.length - 2];
    const onward =
      before !== undefined &&
      Math.sign(last.value - before.value) === Math.sign(value - last.value);
    if (onward) ends[ends.length - 1] = { at, value };
    else if (Math.abs(value - last.value) >= 0.1 && Math.min(value, last.value) < 0.8)
      ends.push({ at, value });
  });
  const changes = ends.slice(1).map(({ at }) => at);
  const within = (from: number) => changes.filter((at) => at >= from && at < from + perSecond);
  return Math.max(0, ...changes.map((from) => Math.floor(within(from).length / 2)));
}

/** Ten seconds of a hand that shakes about a place, 60 readings a second. */
function shaken(hertz: number, degrees: number, middle: number, steady: boolean): number[] {
  const turn = new SteadyTurn(middle);
  return Array.from({ length: 600 }, (_, i) => {
    const wanted = middle + degrees * Math.sin((2 * Math.PI * hertz * i) / 60);
    return luminance(steady ? turn.next(wanted, (1000 * i) / 60) : wanted);
  });
}

describe('a hand that shakes', () => {
  const hands = [0.5, 1, 2, 3, 4, 5, 7, 10, 15].flatMap((hertz) =>
    [5, 15, 40].flatMap((degrees) => [6, 8, 12].map((middle) => [hertz, degrees, middle] as const)),
  );

  test('would flash more than three times a second by itself', () => {
    expect(flashes(shaken(5, 15, 8, false), 60)).toBeGreaterThan(3);
  });

  test('makes the plate flash no more than three times in any second', () => {
    const worst = Math.max(...hands.map((hand) => flashes(shaken(...hand, true), 60)));
    expect(worst).toBeLessThanOrEqual(3);
    expect(worst).toBeGreaterThan(0);
  });
});

test('a hand that comes to rest is followed to its place', () => {
  const turn = new SteadyTurn(2);
  for (let i = 0; i < 120; i++) turn.next(11, (1000 * i) / 60);
  expect(turn.value).toBeCloseTo(11, 0);
});
