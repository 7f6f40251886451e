/**
 * From the chromaticities of a display's primaries to the matrix that takes its linear
 * light to CIE XYZ, and from one white point to another.
 *
 * References
 * - SMPTE RP 177-1993, "Derivation of Basic Television Color Equations": the method.
 * - IEC 61966-2-1:1999, clause 4.1: primaries and white of sRGB.
 * - Lam, K. M. (1985). Metamerism and colour constancy. PhD thesis, University of Bradford:
 *   the adaptation matrix, as carried by the ICC in ICC.1:2010, annex E.
 * - ICC.1:2010, clause 7.2.16: the white of the profile connection space.
 */
import { apply3, invert3, multiply3, type Matrix3, type Vector3 } from './matrix3.ts';

/** x and y in the CIE 1931 chromaticity diagram. */
export type Chromaticity = readonly [x: number, y: number];

export interface Primaries {
  readonly red: Chromaticity;
  readonly green: Chromaticity;
  readonly blue: Chromaticity;
  readonly white: Chromaticity;
}

const whiteD65: Chromaticity = [0.3127, 0.329];

export const srgbPrimaries: Primaries = {
  red: [0.64, 0.33],
  green: [0.3, 0.6],
  blue: [0.15, 0.06],
  white: whiteD65,
};

export const displayP3Primaries: Primaries = {
  red: [0.68, 0.32],
  green: [0.265, 0.69],
  blue: [0.15, 0.06],
  white: whiteD65,
};

/** XYZ of the ICC profile connection space white, as profiles hold it (s15Fixed16 numbers). */
export const iccWhite: Vector3 = [0xf6d6 / 65536, 1, 0xd32d / 65536];

const bradford: Matrix3 = [
  0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296,
];

/** XYZ of a chromaticity at luminance 1. */
export function xyzOfChromaticity([x, y]: Chromaticity): Vector3 {
  return [x / y, 1, (1 - x - y) / y];
}

/** Matrix from linear RGB (0 to 1) to XYZ, with Y = 1 for the white of the primaries. */
export function rgbToXyz(primaries: Primaries): Matrix3 {
  const [xr, yr, zr] = xyzOfChromaticity(primaries.red);
  const [xg, yg, zg] = xyzOfChromaticity(primaries.green);
  const [xb, yb, zb] = xyzOfChromaticity(primaries.blue);
  const columns: Matrix3 = [xr, xg, xb, yr, yg, yb, zr, zg, zb];
  const [r, g, b] = apply3(invert3(columns), xyzOfChromaticity(primaries.white));
  return multiply3(columns, [r, 0, 0, 0, g, 0, 0, 0, b]);
}

/** Bradford adaptation: takes XYZ seen under white `from` to XYZ seen under white `to`. */
export function adaptWhite(from: Vector3, to: Vector3): Matrix3 {
  const a = apply3(bradford, from);
  const b = apply3(bradford, to);
  const scale: Matrix3 = [b[0] / a[0], 0, 0, 0, b[1] / a[1], 0, 0, 0, b[2] / a[2]];
  return multiply3(invert3(bradford), multiply3(scale, bradford));
}

/** XYZ of the ICC connection space (D50) to linear sRGB. */
export const connectionToSrgb: Matrix3 = invert3(
  multiply3(adaptWhite(xyzOfChromaticity(whiteD65), iccWhite), rgbToXyz(srgbPrimaries)),
);

/** Share of each linear sRGB channel in luminance: the middle row of {@link rgbToXyz}. */
export const srgbLuminance: Vector3 = [
  rgbToXyz(srgbPrimaries)[3],
  rgbToXyz(srgbPrimaries)[4],
  rgbToXyz(srgbPrimaries)[5],
];
