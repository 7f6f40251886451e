/**
 * The last pass of Slide for one channel of one pixel, as the shader `src/shaders/divide.ts`
 * computes it: the first picture on one side of a line, the second on the other, mixed in linear
 * light over the one pixel that the line crosses.
 */
import { decodeSrgb, encodeSrgb } from './colour/srgb-curve.ts';

/**
 * @param first Encoded sRGB code 0 to 255. @param second The same.
 * @param distance Of the pixel's centre from the line, pixels, positive on the second's side.
 * @returns Encoded sRGB value, 0 to 255, not rounded.
 */
export function divideCode(first: number, second: number, distance: number): number {
  const share = Math.min(1, Math.max(0, distance + 0.5));
  const linear = decodeSrgb(first / 255) * (1 - share) + decodeSrgb(second / 255) * share;
  return 255 * encodeSrgb(linear);
}
