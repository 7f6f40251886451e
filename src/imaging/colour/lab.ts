/**
 * CIE 1976 L*a*b* from XYZ and back.
 *
 * References
 * - CIE 15:2004, clause 8.2.1; ISO/CIE 11664-4:2019: the constants as exact fractions,
 *   epsilon = 216/24389 and kappa = 24389/27.
 */
import type { Vector3 } from './matrix3.ts';

/** L* 0 to 100 (white), a* and b* about -128 to 127. */
export type Lab = readonly [L: number, a: number, b: number];

const epsilon = 216 / 24389;
const kappa = 24389 / 27;

/** XYZ to Lab for a white point whose Y is that of a perfect diffuser. */
export function xyzToLab(xyz: Vector3, white: Vector3): Lab {
  const f = (i: number): number => {
    const t = xyz[i] / white[i];
    return t > epsilon ? Math.cbrt(t) : (kappa * t + 16) / 116;
  };
  const [x, y, z] = [f(0), f(1), f(2)];
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** Lab to XYZ for the same white point. */
export function labToXyz([L, a, b]: Lab, white: Vector3): Vector3 {
  const y = (L + 16) / 116;
  const back = (f: number): number => (f ** 3 > epsilon ? f ** 3 : (116 * f - 16) / kappa);
  return [back(y + a / 500) * white[0], back(y) * white[1], back(y - b / 200) * white[2]];
}
