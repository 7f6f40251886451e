/**
 * A wide-range picture on an 8-bit screen: the merged light of a bracket, worked out again from
 * the rendering that the site shows and its gain, then brought to an exposure and a white point.
 *
 *     light = (B + offsetBase) * 2^gain - offsetMerged
 *     shown = min(clip, light * 2^stops) / white, on the sRGB curve
 *
 * with B the rendering's linear light. With the clip of a frame and the white point 1 this is
 * what that one exposure would have shown.
 *
 * References
 * - ISO 21496-1:2025, gain map metadata for image conversion (clause numbers not seen).
 */
import { decodeSrgb, encodeSrgb } from './colour/srgb-curve.ts';

/** The numbers of a gain layer that are needed here (`src/records/layer.ts`). */
export interface GainNumbers {
  /** Stops that a code c stands for: `offset + step * c`. */
  readonly offset: number;
  readonly step: number;
  readonly offsetBase: number;
  readonly offsetMerged: number;
}

/** Exposure and white point. */
export interface Exposure {
  /** Stops; null for the rendering as it was made. */
  readonly stops: number | null;
  /** Light, after the exposure, that is shown as white. */
  readonly white: number;
  /** Light, after the exposure, at which a frame clips; null for none. */
  readonly clip: number | null;
}

/** Merged light, relative: 1 is what the frame of 0 stops shows as its largest code. */
export function mergedLight(base: number, gainCode: number, numbers: GainNumbers): number {
  const gain = numbers.offset + numbers.step * gainCode;
  return (decodeSrgb(base / 255) + numbers.offsetBase) * 2 ** gain - numbers.offsetMerged;
}

/**
 * One channel of one pixel, as the shader computes it.
 *
 * @param base Encoded sRGB code of the rendering, 0 to 255. @param gainCode Code of the gain.
 * @returns Encoded sRGB value, 0 to 255, not rounded.
 */
export function rangeCode(
  base: number,
  gainCode: number,
  numbers: GainNumbers,
  exposure: Exposure,
): number {
  const { stops, white, clip } = exposure;
  const light =
    stops === null
      ? decodeSrgb(base / 255)
      : Math.min(clip ?? Infinity, mergedLight(base, gainCode, numbers) * 2 ** stops);
  return 255 * encodeSrgb(Math.min(1, Math.max(0, light / white)));
}
