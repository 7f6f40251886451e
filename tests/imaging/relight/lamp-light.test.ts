import { expect, test } from 'vitest';
import { lightDirection } from '../../../src/imaging/conventions.ts';
import { lampHull, withinHull } from '../../../src/imaging/relight/lamp-hull.ts';
import { lampLight, litPixel } from '../../../src/imaging/relight/lamp-light.ts';
import {
  degreesBetween,
  type Direction,
  directionAt,
  placeOf,
} from '../../../src/imaging/relight/light-place.ts';

const ring: Direction[] = [0, 90, 180, 270].map((bearing) => lightDirection(bearing, 30));
const lamps = [...ring, lightDirection(0, 90)].map((direction) => ({ direction }));

test('a lamp 30 degrees high stands at tan 30 degrees of the plane, and comes back from there', () => {
  // Stereographic: r = tan((90 - height) / 2).
  const [u, v] = placeOf(lightDirection(90, 30));
  expect(u).toBeCloseTo(Math.tan(Math.PI / 6), 12);
  expect(v).toBeCloseTo(0, 12);
  const there = lightDirection(217, 41);
  expect(degreesBetween(directionAt(placeOf(there)), there)).toBeLessThan(1e-6);
});

test('base and factors are the response times the terms, with codes unfolded', () => {
  // Only the drift's columns are filled: base 10 + 20 u, factor 3 + v; code 7 stands for -1 + 0.5 * 7.
  const columns = lamps.length + 3;
  const row = (one: number, u: number, v: number) => [
    ...new Array<number>(columns - 3).fill(0),
    one,
    u,
    v,
  ];
  const response = [10, 11, 12].flatMap((one) => [...row(one, 20, 0), ...row(3, 0, 1)]);
  const layer = {
    planes: 1,
    offset: [-1],
    step: [0.5],
    domain: 'encoded',
    terms: 'thin-plate',
    lamps,
    response,
  } as const;
  const direction = directionAt([0.1, 0.2]);
  const found = litPixel(lampLight(layer, direction), [7]);
  const expected = [10, 11, 12].map((one) => one + 20 * 0.1 + (3 + 0.2) * (-1 + 3.5));
  found.forEach((value, c) => {
    expect(value).toBeCloseTo(expected[c], 10);
  });
  const dark = litPixel(lampLight({ ...layer, domain: 'log' }, directionAt([-0.5, 0])), [2]);
  // The sum is 10 + 20 * -0.5 + 3 * 0 = 0 for red: exp(0) - 4 is below black.
  expect(dark[0]).toBe(0);
  // Green: exp(1) - 4 as well; blue: exp(2) - 4 = 3.389.
  expect(dark[2]).toBeCloseTo(Math.exp(2) - 4, 10);
  const lit = litPixel(lampLight({ ...layer, domain: 'power' }, directionAt([0, 0])), [42]);
  // Red: 10 + 3 * (-1 + 21) = 70. python3 -c "print(271*(70/255)**(1/1.45)-16)" -> 95.11375250495281
  expect(lit[0]).toBeCloseTo(95.11375250495281, 6);
});

test('the hull of a ring and the pole is the ring, and a lamp outside goes to its edge', () => {
  const directions = lamps.map((lamp) => lamp.direction);
  const hull = lampHull(directions);
  expect([...hull].sort()).toEqual([0, 1, 2, 3]);
  const inside = lightDirection(30, 60);
  expect(withinHull(directions, hull, inside)).toBe(inside);
  // The edge between bearings 0 and 90 is nearest at bearing 45, at r = tan(30) / sqrt(2).
  const moved = placeOf(withinHull(directions, hull, lightDirection(45, 5)));
  expect(Math.hypot(...moved)).toBeCloseTo(Math.tan(Math.PI / 6) / Math.SQRT2, 10);
  expect(moved[0]).toBeCloseTo(moved[1], 10);
  // Beyond a corner the corner itself.
  expect(degreesBetween(withinHull(directions, hull, lightDirection(90, 2)), ring[1])).toBeLessThan(
    1e-6,
  );
});
