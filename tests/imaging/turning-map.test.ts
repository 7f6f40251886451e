import { expect, test } from 'vitest';
import { plateTurning } from '../../src/imaging/turning-map.ts';
import type { Plane } from '../../src/imaging/plane.ts';
import { numbersFrom } from '../../src/imaging/render/seeded.ts';

const [width, height] = [240, 180];

/** Coverage c of particles, anywhere from 0 to 1: P = 0.6 c, N = s (1 - c) in closed form. */
function pair(strength: (x: number) => number, depth: (x: number) => number = () => 1) {
  const next = numbersFrom(11);
  const planes: [Plane, Plane] = [
    { width, height, data: new Float32Array(width * height) },
    { width, height, data: new Float32Array(width * height) },
  ];
  for (let i = 0; i < width * height; i += 1) {
    const c = 0.5 + depth(i % width) * (next() - 0.5);
    planes[0].data[i] = 0.6 * c;
    planes[1].data[i] = strength(i % width) * (1 - c);
  }
  return planes;
}

test('finds the closed form 0.6 / s in every field of an even plate', () => {
  const turning = plateTurning(...pair(() => 0.3));
  // P_h - P_s = 0.6 d and N_s - N_h = 0.3 d for any difference d of coverage: b / a = 2.
  expect(turning.value).toBeCloseTo(2, 5);
  expect(turning.lower).toBeCloseTo(2, 5);
  expect(turning.upper).toBeCloseTo(2, 5);
  expect(turning.reversing).toBe(1);
  const told = turning.map.values.filter((v) => v !== null);
  for (const value of told) expect(value).toBeCloseTo(2, 5);
  // Middle 80 % of 12 x 9 fields.
  expect(told.length).toBe(10 * 7);
});

test('tells fields apart where the mirror is dull on one side', () => {
  const { map } = plateTurning(...pair((x) => (x < width / 2 ? 0.3 : 0.15)));
  expect(map.values[4 * 12 + 2]).toBeCloseTo(2, 5);
  expect(map.values[4 * 12 + 9]).toBeCloseTo(4, 5);
});

test('leaves out fields without tones, and fields that do not turn', () => {
  const flat = plateTurning(
    ...pair(
      () => 0.3,
      (x) => (x < width / 2 ? 1 : 0.02),
    ),
  );
  expect(flat.map.values[4 * 12 + 2]).toBeCloseTo(2, 5);
  expect(flat.map.values[4 * 12 + 9]).toBeNull();
  expect(flat.reversing).toBe(1);
  const upright = plateTurning(...pair((x) => (x < width / 2 ? 0.3 : -0.3)));
  expect(upright.map.values[4 * 12 + 9]).toBeNull();
  expect(upright.reversing).toBeCloseTo(0.5, 1);
});

test('gives a reason where the second picture does not reverse the first', () => {
  const turning = plateTurning(...pair(() => -0.3));
  expect(turning.value).toBeNull();
  expect(turning.reason).toBe('the negative does not reverse the tones here');
  expect(turning.reversing).toBe(0);
  expect(turning.lower).toBeNull();
});
