/** Fits of a lamp's place against NumPy: scripts/reference/relight.py wrote the values. */
import { expect, test } from 'vitest';
import { lightDirection } from '../../../src/imaging/conventions.ts';
import { hemisphericalBasis } from '../../../src/imaging/relight/hemispherical.ts';
import { lampWeights, weightsFor } from '../../../src/imaging/relight/lamp-weights.ts';
import { directionAt } from '../../../src/imaging/relight/light-place.ts';
import { patchLamps } from '../../../src/imaging/relight/near-lamps.ts';
import { shapeSolver } from '../../../src/imaging/relight/surface-shape.ts';
import { symmetricEigen } from '../../../src/imaging/relight/symmetric-eigen.ts';
import {
  biquadratic,
  biquadraticPeak,
  fitMatrix,
  fitPixel,
} from '../../../src/imaging/relight/textbook-fit.ts';
import reference from '../../reference/relight.json' with { type: 'json' };

const count = 20;
const directions = Array.from({ length: count }, (_, i) =>
  lightDirection((i * 137.5) % 360, 15 + 3.1 * i),
);
const values = Array.from({ length: count }, (_, i) => 120 + 60 * Math.cos(1.7 * i) + i);

/** Largest difference, relative to the largest reference value. */
function difference(found: ArrayLike<number>, expected: readonly number[]): number {
  const scale = Math.max(...expected.map(Math.abs));
  return Math.max(...expected.map((v, i) => Math.abs(found[i] - v))) / scale;
}

test('the biquadratic fit equals NumPy lstsq to 1e-5', () => {
  const matrix = fitMatrix(biquadratic, directions);
  if (!matrix) throw new Error('the lamps determine six coefficients');
  expect(difference(fitPixel(matrix, values), reference.biquadratic)).toBeLessThan(1e-5);
});

test('the hemispherical fit equals NumPy lstsq on the closed forms to 1e-5', () => {
  const matrix = fitMatrix((d) => hemisphericalBasis(d, 2), directions);
  if (!matrix) throw new Error('the lamps determine four coefficients');
  expect(difference(fitPixel(matrix, values), reference.hemispherical)).toBeLessThan(1e-5);
});

test('the peak of a biquadratic is where its closed form says, and only where it has one', () => {
  // a = (-1, -1, 0, .4, -.2, 1): -u^2 + .4 u is largest at .2, -v^2 - .2 v at -.1.
  const [u, v] = biquadraticPeak([-1, -1, 0, 0.4, -0.2, 1]) ?? [NaN, NaN];
  expect(u).toBeCloseTo(0.2, 12);
  expect(v).toBeCloseTo(-0.1, 12);
  expect(biquadraticPeak([-1, 1, 0, 0.4, -0.2, 1])).toBeNull();
});

test('eigenvalues and the first vector of a symmetric matrix equal NumPy eigh to 1e-10', () => {
  const n = 12;
  const matrix = Float64Array.from({ length: n * n }, (_, at) => {
    const [i, j] = [Math.floor(at / n), at % n];
    return Math.cos(0.3 * i * j) + Math.cos(0.7 * (i + j)) + (i === j ? 0.1 * i : 0);
  });
  const { values: found, vectors } = symmetricEigen(matrix, n);
  expect(difference(found, reference.eigenvalues)).toBeLessThan(1e-10);
  expect(difference(vectors[0], reference.firstVector)).toBeLessThan(1e-10);
});

test('thin-plate weights give the spline that NumPy solves, and reproduce captured lamps', () => {
  const weights = lampWeights('thin-plate', directions);
  if (!weights.ok) throw new Error(weights.reason);
  const at = (direction: readonly [number, number, number]) =>
    weightsFor(weights.value, directions, direction).reduce((s, w, l) => s + w * values[l], 0);
  expect(Math.abs(at(directionAt([0.1, -0.2])) - reference.thinPlate)).toBeLessThan(1e-6);
  expect(Math.abs(at(directions[7]) - values[7])).toBeLessThan(1e-6);
});

test('the closed form of leave-one-out equals refitting without each lamp', () => {
  const weights = lampWeights('thin-plate', directions);
  if (!weights.ok) throw new Error(weights.reason);
  const { residual } = weights.value;
  const foretold = values.map((value, i) => {
    const miss = values.reduce((s, v, j) => s + residual[i * count + j] * v, 0);
    return value - miss / residual[i * count + i];
  });
  expect(difference(foretold, reference.leftOut)).toBeLessThan(1e-7);
});

test('two lamps in one place are a reason, not a number', () => {
  const twice = lampWeights('thin-plate', [...directions, directions[3]]);
  expect(twice.ok).toBe(false);
});

test('a surface that only scatters gets the slope of NumPy lstsq', () => {
  const normal = [-0.2, 0.1, 1].map((v) => v / Math.hypot(0.2, 0.1, 1));
  const brightness = Float64Array.from(directions, (d, i) => {
    return 0.4 * (d[0] * normal[0] + d[1] * normal[1] + d[2] * normal[2]) + 0.002 * Math.sin(5 * i);
  });
  const far = { directions, distance: null, camera: null, pixelsPerMillimetre: null };
  const { slopeX, slopeY } = shapeSolver(count)(brightness, patchLamps(far, 0, 0));
  // The disturbance is below the noise floor, so the plain fit is kept.
  expect(Math.abs(slopeX - reference.slope[0])).toBeLessThan(1e-9);
  expect(Math.abs(slopeY - reference.slope[1])).toBeLessThan(1e-9);
});
