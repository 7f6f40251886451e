/**
 * A rendering and what it left out: stops of gain, pixel by pixel, that turn the rendering back
 * into the light it was made from, wholly or in part.
 *
 * References
 * - ISO 21496-1:2025, gain map metadata for image conversion: base and alternate image, weight
 *   from the display's headroom (clause numbers not seen; the arithmetic is checked against
 *   rows of another implementation).
 */

export interface GainMap {
  /** Stops at codes 0 and 1 of the recovery. */
  readonly min: number;
  readonly max: number;
  /** Exponent with which the recovery is encoded: recovery = share^gamma. */
  readonly gamma: number;
  readonly offsetBase: number;
  readonly offsetMerged: number;
}

/** Light from the rendering: base and result linear, recovery 0 to 1, weight 0 to 1. */
export function applyGain(map: GainMap, base: number, recovery: number, weight = 1): number {
  const share = Math.min(1, Math.max(0, recovery)) ** (1 / map.gamma);
  const stops = map.min * (1 - share) + map.max * share;
  return (base + map.offsetBase) * 2 ** (stops * weight) - map.offsetMerged;
}

/** The recovery, 0 to 1, that turns `base` into `light`; clipped where the range does not reach. */
export function recoveryFor(map: GainMap, base: number, light: number): number {
  const stops = Math.log2((light + map.offsetMerged) / (base + map.offsetBase));
  const share = (stops - map.min) / (map.max - map.min);
  return Math.min(1, Math.max(0, share)) ** map.gamma;
}

/** How much of the gain a display of some headroom shows, all in stops above the base's white. */
export function gainWeight(display: number, baseHeadroom: number, mergedHeadroom: number): number {
  const weight = (display - baseHeadroom) / (mergedHeadroom - baseHeadroom);
  return Math.min(1, Math.max(0, weight));
}
