/**
 * Functions on the upper half of the sphere, orthonormal there: the textbook way to follow how
 * a matte surface answers to the place of a lamp.
 *
 * Each function with an azimuth is 0 at the pole *and* at the horizon, so a grazing lamp has no
 * bearing in this basis. Signs are those without the Condon-Shortley phase.
 *
 * References
 * - Gautron, P., Krivanek, J., Pattanaik, S. and Bouatouch, K. (2004). A novel hemispherical
 *   basis for accurate and efficient rendering. Eurographics Symposium on Rendering, 321-330
 *   (formulas and pages from memory; orthonormality is tested).
 */
import type { Direction } from './light-place.ts';

/** Bands 0 to 3: sixteen functions. */
export const hemisphericalTerms = 16;

/**
 * Values of the first `bands` squared functions for a direction with z from 0 to 1, in the order
 * (l, m) = (0, 0), (1, -1), (1, 0), (1, 1), (2, -2) ...
 */
export function hemisphericalBasis([x, y, z]: Direction, bands = 4): Float64Array {
  const legendre = shiftedLegendre(z, bands);
  const bearing = Math.atan2(y, x);
  const values = new Float64Array(bands * bands);
  for (let l = 0; l < bands; l += 1) {
    for (let m = -l; m <= l; m += 1) {
      const order = Math.abs(m);
      const scale =
        Math.sqrt(((2 * l + 1) * factorial(l - order)) / (2 * Math.PI * factorial(l + order))) *
        (m === 0 ? 1 : Math.SQRT2);
      const round = m < 0 ? Math.sin(order * bearing) : Math.cos(order * bearing);
      values[l * l + l + m] = scale * legendre[l * bands + order] * round;
    }
  }
  return values;
}

/** Associated Legendre functions of 2z - 1, without the Condon-Shortley phase, at `l * bands + m`. */
function shiftedLegendre(z: number, bands: number): Float64Array {
  const t = 2 * z - 1;
  // 1 - t^2 = 4 (z - z^2), without the cancellation near the pole.
  const s = 2 * Math.sqrt(Math.max(0, z * (1 - z)));
  const p = new Float64Array(bands * bands);
  p[0] = 1;
  for (let m = 0; m < bands; m += 1) {
    if (m > 0) p[m * bands + m] = (2 * m - 1) * s * p[(m - 1) * bands + m - 1];
    if (m + 1 < bands) p[(m + 1) * bands + m] = t * (2 * m + 1) * p[m * bands + m];
    for (let l = m + 2; l < bands; l += 1) {
      const last = p[(l - 1) * bands + m];
      p[l * bands + m] = (t * (2 * l - 1) * last - (l + m - 1) * p[(l - 2) * bands + m]) / (l - m);
    }
  }
  return p;
}

function factorial(n: number): number {
  return n < 2 ? 1 : n * factorial(n - 1);
}
