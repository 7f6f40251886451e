import fc from 'fast-check';
import { expect, test } from 'vitest';
import { block, strut, type Ray } from '../../../src/imaging/scenes/solid.ts';
import { plain } from '../../../src/imaging/scenes/surfaces.ts';
import { makeTracer } from '../../../src/imaging/scenes/tracer.ts';

const chalk = plain(0.5);
const along = (o: number[], d: number[]): Ray => {
  const l = Math.hypot(...d);
  return { ox: o[0], oy: o[1], oz: o[2], dx: d[0] / l, dy: d[1] / l, dz: d[2] / l };
};

test('a bar is met where a circle says: radius 0.5 about (0, 0, 4), ray along z, 3.5', () => {
  const tracer = makeTracer([strut([-2, 0, 4], [2, 0, 4], 0.5, chalk)]);
  expect(tracer.first(along([0, 0, 0], [0, 0, 1]), 0, 100)).toBe(0);
  expect(tracer.distance()).toBeCloseTo(3.5, 12);
  // At height 0.3 the circle is 0.4 deep.
  tracer.first(along([0, 0.3, 0], [0, 0, 1]), 0, 100);
  expect(tracer.distance()).toBeCloseTo(3.6, 12);
  expect(tracer.first(along([0, 0.51, 0], [0, 0, 1]), 0, 100)).toBe(-1);
});

test('the tree of boxes finds the same first body as asking every body', () => {
  const point = fc.tuple(
    fc.double({ min: -5, max: 5, noNaN: true }),
    fc.double({ min: -5, max: 5, noNaN: true }),
    fc.double({ min: -5, max: 5, noNaN: true }),
  );
  const bodies = fc.array(
    point.map((p) => block(p, [p[0] + 0.7, p[1] + 0.5, p[2] + 0.9], chalk)),
    { minLength: 1, maxLength: 24 },
  );
  fc.assert(
    fc.property(bodies, point, (solids, aim) => {
      fc.pre(Math.hypot(...aim) > 0.1);
      const tracer = makeTracer(solids);
      const ray = along([-12, 0.03, 0.01], [aim[0] + 12, aim[1], aim[2]]);
      const all = solids.map((_, k) => k);
      const plainly = tracer.first(ray, 1e-4, 100, all);
      const far = tracer.distance();
      const body = tracer.first(ray, 1e-4, 100);
      expect(tracer.distance()).toBe(far);
      expect(body >= 0).toBe(plainly >= 0);
      expect(tracer.blocked(ray, 1e-4, 100)).toBe(plainly >= 0);
    }),
    { seed: 4, numRuns: 200 },
  );
});
