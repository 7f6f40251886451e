import { describe, expect, test } from 'vitest';
import {
  ball,
  blend,
  box,
  carve,
  cylinder,
  ellipsoid,
  ring,
  rod,
  turned,
} from '../../../src/imaging/scenes/distance.ts';

/** Closed-form distances: school geometry at points where the nearest feature is plain. */
describe('signed distances agree with plain geometry', () => {
  test('box: face, edge and corner', () => {
    expect(box(3, 0, 0, 1, 1, 1)).toBe(2);
    expect(box(4, 5, 0, 1, 1, 1)).toBe(5);
    expect(box(2, 3, 3, 1, 1, 1)).toBe(3);
    expect(box(0, 0, 0, 1, 2, 3)).toBe(-1);
  });
  test('ball, cylinder, ring and rod', () => {
    expect(ball(2, 3, 6, 5)).toBe(2);
    expect(cylinder(3, 0, 4, 2, 1)).toBe(3);
    expect(cylinder(0, 3, 0, 2, 1)).toBe(2);
    expect(ring(3, 4, 0, 3, 1)).toBe(3);
    expect(rod(0, 5, 0, [-1, 0, 0], [1, 0, 0], 2)).toBe(3);
    expect(rod(5, 3, 0, [-1, 0, 0], [1, 0, 0], 1)).toBe(4);
  });
  test('an ellipsoid with equal axes is a ball', () => {
    expect(ellipsoid(2, 3, 6, 5, 5, 5)).toBeCloseTo(2, 12);
  });
  test('a turned straight profile is a cylinder within a hundredth of its radius', () => {
    const bar = turned([
      [1, -1],
      [1, 1],
    ]);
    for (const [x, y, z] of [
      [1.05, 0.1, 0],
      [0.6, 0.2, 0.6],
      [0, 1.08, 0.2],
      [0.97, -0.3, 0],
    ]) {
      expect(Math.abs(bar(x, y, z) - cylinder(x, y, z, 1, 1))).toBeLessThan(0.01);
    }
  });
  test('outside its table a turned body never claims more than the distance', () => {
    const bar = turned([
      [1, -1],
      [1, 1],
    ]);
    for (const [x, y, z] of [
      [5, 0, 0],
      [3, 4, 1],
      [0, -7, 0],
    ]) {
      const claimed = bar(x, y, z);
      expect(claimed).toBeGreaterThan(0.2);
      expect(claimed).toBeLessThanOrEqual(cylinder(x, y, z, 1, 1) + 1e-6);
    }
  });
  test('a blend is never outside either part and is the union far from the seam', () => {
    expect(blend(1, 1, 0.4)).toBeCloseTo(0.9, 12);
    expect(blend(1, 3, 0.4)).toBe(1);
    expect(carve(-1, 2, 0.4)).toBe(-1);
  });
});
