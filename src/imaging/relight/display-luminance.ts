/** Linear luminance, 0 to 1, of display codes on the sRGB curve. */
import { srgbLuminance } from '../colour/rgb-primaries.ts';
import { decodeSrgb } from '../colour/srgb-curve.ts';

const [red, green, blue] = srgbLuminance.map((share) =>
  Float64Array.from({ length: 256 }, (_, code) => share * decodeSrgb(code / 255)),
);

/** Of the three codes from `at` on. */
export function displayLuminance(codes: Uint8Array, at: number): number {
  return red[codes[at]] + green[codes[at + 1]] + blue[codes[at + 2]];
}
