import { describe, expect, test } from 'vitest';
import { invert3, multiply3, type Matrix3 } from '../../../src/imaging/colour/matrix3.ts';
import {
  adaptWhite,
  connectionToSrgb,
  displayP3Primaries,
  rgbToXyz,
  srgbLuminance,
  srgbPrimaries,
} from '../../../src/imaging/colour/rgb-primaries.ts';

function expectMatrix(found: Matrix3, wanted: readonly number[], bound: number): void {
  expect(Math.max(...found.map((v, i) => Math.abs(v - wanted[i])))).toBeLessThanOrEqual(bound);
}

describe('matrices of RGB spaces', () => {
  test('sRGB to XYZ is that of IEC 61966-2-1 to its four decimals, and so is the inverse', () => {
    const published = [0.4124, 0.3576, 0.1805, 0.2126, 0.7152, 0.0722, 0.0193, 0.1192, 0.9505];
    expectMatrix(rgbToXyz(srgbPrimaries), published, 0.00005);
    // The standard inverts its rounded matrix, so the last decimal may differ by a few.
    const inverse = [3.2406, -1.5372, -0.4986, -0.9689, 1.8758, 0.0415, 0.0557, -0.204, 1.057];
    expectMatrix(invert3(rgbToXyz(srgbPrimaries)), inverse, 0.0004);
  });

  test('Display P3 to linear sRGB agrees with the values from Python', () => {
    // NumPy 1.24, from the same chromaticities by SMPTE RP 177.
    const p3ToSrgb = multiply3(invert3(rgbToXyz(srgbPrimaries)), rgbToXyz(displayP3Primaries));
    expectMatrix(
      p3ToSrgb,
      [1.22494, -0.22494, 0, -0.042057, 1.042057, 0, -0.019638, -0.078636, 1.098274],
      0.000005,
    );
  });

  test('Bradford adaptation from D65 to D50 is the one in the tests of colour-science', () => {
    const m = adaptWhite([0.95045593, 1, 1.08905775], [0.96429568, 1, 0.8251046]);
    expectMatrix(
      m,
      [
        1.04792979, 0.02294687, -0.05019227, 0.02962781, 0.99043443, -0.0170738, -0.00924304,
        0.01505519, 0.75187428,
      ],
      1e-6,
    );
  });

  test('the ICC connection space comes to linear sRGB with white at 1, 1, 1', () => {
    // libvips' own sRGB profile (Little CMS) holds these columns, rounded to 1/65536.
    const columns: Matrix3 = [
      0.43604, 0.3851, 0.14307, 0.22244, 0.71693, 0.06062, 0.0139, 0.09708, 0.71393,
    ];
    expectMatrix(multiply3(connectionToSrgb, columns), [1, 0, 0, 0, 1, 0, 0, 0, 1], 0.0003);
  });

  test('luminance weights add up to 1', () => {
    expect(srgbLuminance[0] + srgbLuminance[1] + srgbLuminance[2]).toBeCloseTo(1, 12);
  });

  test('a matrix without an inverse is refused', () => {
    expect(() => invert3([1, 2, 3, 2, 4, 6, 0, 0, 1])).toThrow('has no inverse');
  });
});
