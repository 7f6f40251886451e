import { expect, test } from 'vitest';
import { eveningGains, gridRow, rakingExcess } from '../../../src/imaging/relight/raking-excess.ts';

test('three bearings give the largest less the smallest; six leave one out at either end', () => {
  // By hand: order statistics.
  expect(rakingExcess([0.2, 0.9, 0.25])).toBeCloseTo(0.7, 12);
  expect(rakingExcess([0.2, 0.9, 0.25, 0.3])).toBeCloseTo(0.65, 12);
  expect(rakingExcess([0.2, 0.9, 0.25, 0.3, 0.4, 0.5])).toBeCloseTo(0.25, 12);
});

test('two frames lit from either side are equally bright after the gains, and stay so in between', () => {
  const left = { columns: 2, rows: 2, means: Float64Array.of(0.4, 0.2, 0.4, 0.2) };
  const right = { columns: 2, rows: 2, means: Float64Array.of(0.2, 0.4, 0.2, 0.4) };
  const [a, b] = eveningGains([left, right]);
  // The mean is 0.3 everywhere: gains 0.75 and 1.5, and half-way across their mean.
  [0.75, 1.5, 0.75, 1.5].forEach((gain, cell) => {
    expect(a.means[cell]).toBeCloseTo(gain, 12);
  });
  const row = new Float32Array(4);
  gridRow(a, 0.5, row);
  // Middles of the cells are at a quarter and three quarters; pixels at 1/8, 3/8, 5/8 and 7/8.
  [0.75, 0.75 + 0.75 / 4, 0.75 + (0.75 * 3) / 4, 1.5].forEach((gain, x) => {
    expect(row[x]).toBeCloseTo(gain, 6);
  });
  gridRow(b, 0.9, row);
  expect(row[0]).toBeCloseTo(1.5, 6);
});
