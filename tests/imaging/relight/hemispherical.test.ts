import { expect, test } from 'vitest';
import { hemisphericalBasis } from '../../../src/imaging/relight/hemispherical.ts';
import table from '../../reference/hemispherical-basis.json' with { type: 'json' };

/** Abscissae and weights of Gauss and Legendre on 0 to 1, by Newton's method. */
function gaussLegendre(n: number): { z: number; weight: number }[] {
  return Array.from({ length: n }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let round = 0; round < 50; round += 1) {
      let [p0, p1] = [1, x];
      for (let k = 2; k <= n; k += 1) [p0, p1] = [p1, ((2 * k - 1) * x * p1 - (k - 1) * p0) / k];
      slope = (n * (x * p1 - p0)) / (x * x - 1);
      x -= p1 / slope;
    }
    return { z: (x + 1) / 2, weight: 1 / ((1 - x * x) * slope * slope) };
  });
}

test('the sixteen functions are orthonormal on the hemisphere to 1e-12', () => {
  // The rule is exact: polynomials of degree up to 6 in z, harmonics up to the 6th in bearing.
  const sums = new Float64Array(256);
  const rounds = 16;
  for (const { z, weight } of gaussLegendre(12)) {
    for (let k = 0; k < rounds; k += 1) {
      const bearing = (2 * Math.PI * k) / rounds;
      const r = Math.sqrt(1 - z * z);
      const h = hemisphericalBasis([r * Math.cos(bearing), r * Math.sin(bearing), z]);
      for (let i = 0; i < 16; i += 1) {
        for (let j = 0; j < 16; j += 1) {
          sums[i * 16 + j] += ((weight * 2 * Math.PI) / rounds) * h[i] * h[j];
        }
      }
    }
  }
  const worst = sums.reduce(
    (most, v, at) => Math.max(most, Math.abs(v - (at % 17 === 0 ? 1 : 0))),
    0,
  );
  expect(worst).toBeLessThan(1e-12);
});

test('the first nine equal the table of closed forms', () => {
  // Table rounded to 8 decimals; its origin is in the file. At the horizon the cosine of 90 degrees
  // is 6e-17 in floating point; three times the square root of that is 2.4e-8.
  const names = ['H00', 'H1-1', 'H10', 'H11', 'H2-2', 'H2-1', 'H20', 'H21', 'H22'] as const;
  for (const row of table.values) {
    const theta = (row.theta_deg * Math.PI) / 180;
    const phi = (row.phi_deg * Math.PI) / 180;
    const [s, c] = [Math.sin(theta), Math.cos(theta)];
    const found = hemisphericalBasis([s * Math.cos(phi), s * Math.sin(phi), c], 3);
    names.forEach((name, i) => {
      expect(Math.abs(found[i] - row[name])).toBeLessThan(3e-8);
    });
  }
});
