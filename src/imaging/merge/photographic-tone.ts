/**
 * A rendering of a wide range for a page: one curve for the whole picture, as the photographic
 * process has one. It is a rendering and not a measurement; the measurement is the merged light.
 *
 * References
 * - Reinhard, E., Stark, M., Shirley, P. and Ferwerda, J. (2002). Photographic tone reproduction
 *   for digital images. ACM Trans. Graph. 21(3), 267-276. doi:10.1145/566654.566575 (equations 1,
 *   2 and 4).
 */

export interface PhotographicTone {
  /** Luminance to scaled luminance: key over the log-average. */
  readonly scale: number;
  /** Scaled luminance that becomes white. */
  readonly white: number;
}

/** Middle grey of the rendering: the paper's usual value. */
export const usualKey = 0.18;

/** @param logAverage Geometric mean of the luminance. @param brightest Luminance shown as white. */
export function photographicTone(
  logAverage: number,
  brightest: number,
  key = usualKey,
): PhotographicTone {
  const scale = key / logAverage;
  return { scale, white: scale * brightest };
}

/** Display luminance, linear; 1 at the brightest, above 1 beyond it. */
export function photographicLuminance({ scale, white }: PhotographicTone, luminance: number) {
  const l = luminance * scale;
  return (l * (1 + l / (white * white))) / (1 + l);
}
