/**
 * What has changed between two pictures of one plate in one frame: mid grey where nothing has,
 * lighter where the second picture is lighter. The difference is that of encoded luminance, so
 * that a step looks alike in the shadows and in the lights.
 *
 * References
 * - ITU-R BT.709-6, 3.2: luminance weights 0.2126, 0.7152, 0.0722 for linear red, green, blue.
 */
import { decodeSrgb, encodeSrgb } from './colour/srgb-curve.ts';

type Codes = readonly [red: number, green: number, blue: number];

function encodedLuminance([r, g, b]: Codes): number {
  const linear =
    0.2126 * decodeSrgb(r / 255) + 0.7152 * decodeSrgb(g / 255) + 0.0722 * decodeSrgb(b / 255);
  return encodeSrgb(linear);
}

/**
 * One pixel of the last pass, as the shader computes it.
 *
 * @param first Encoded sRGB codes, 0 to 255. @param stretch 1 shows a full step as half the range.
 * @returns Grey, 0 to 255, not rounded.
 */
export function differenceCode(first: Codes, second: Codes, stretch: number): number {
  const step = encodedLuminance(second) - encodedLuminance(first);
  return 255 * Math.min(1, Math.max(0, 0.5 + stretch * step));
}
