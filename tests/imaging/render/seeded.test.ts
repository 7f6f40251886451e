import { expect, test } from 'vitest';
import { smoothNoise } from '../../../src/imaging/render/noise.ts';
import { noiseSlope } from '../../../src/imaging/render/relief.ts';
import { hashAt, inverseNormal, normalTable } from '../../../src/imaging/render/seeded.ts';

test('normal quantiles agree with SciPy', () => {
  // scipy.stats.norm.ppf, SciPy 1.17.1
  expect(inverseNormal(0.001)).toBeCloseTo(-3.090232306, 8);
  expect(inverseNormal(0.025)).toBeCloseTo(-1.959963985, 8);
  expect(inverseNormal(0.3)).toBeCloseTo(-0.5244005127, 8);
  expect(inverseNormal(0.99)).toBeCloseTo(2.326347874, 8);
});

test('noise has mean 0 and variance 1, and neighbours know nothing of each other', () => {
  let [sum, square, product, last] = [0, 0, 0, 0];
  const count = 400 * 400;
  for (let y = 0; y < 400; y += 1) {
    for (let x = 0; x < 400; x += 1) {
      const value = normalTable[hashAt(x, y, 77) & 4095];
      sum += value;
      square += value * value;
      product += value * last;
      last = value;
    }
  }
  // Standard errors are 0.0025 (mean, correlation) and 0.0035 (variance): bounds at four of them.
  expect(Math.abs(sum / count)).toBeLessThan(0.01);
  expect(Math.abs(square / count - 1)).toBeLessThan(0.014);
  expect(Math.abs(product / count)).toBeLessThan(0.01);
});

test('smooth noise has the slope that the relief counts on', () => {
  let sum = 0;
  const count = 20_000;
  for (let i = 0; i < count; i += 1) {
    const x = (i % 141) * 0.37;
    const y = Math.floor(i / 141) * 0.41;
    sum += ((smoothNoise(x + 0.01, y, 3) - smoothNoise(x - 0.01, y, 3)) / 0.02) ** 2;
  }
  expect(Math.abs(Math.sqrt(sum / count) / noiseSlope - 1)).toBeLessThan(0.03);
});
