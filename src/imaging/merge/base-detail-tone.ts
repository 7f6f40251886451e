/**
 * A local rendering: the wide slow part of the light is compressed, the fine part is kept as it
 * is. What is wide and what is fine is told by a filter that keeps edges, so that no bright rim
 * grows along them.
 *
 * References
 * - Durand, F. and Dorsey, J. (2002). Fast bilateral filtering for the display of
 *   high-dynamic-range images. ACM Trans. Graph. 21(3), 257-266. doi:10.1145/566654.566574 (base
 *   and detail in the logarithm).
 * - He, K., Sun, J. and Tang, X. (2013). Guided image filtering. IEEE Trans. PAMI 35(6),
 *   1397-1409. doi:10.1109/TPAMI.2012.213 (the filter).
 */
import type { Plane } from '../plane.ts';
import { guidedLines, type GuidedLines } from './guided-filter.ts';

export interface BaseDetail {
  readonly lines: GuidedLines;
  /** Stops of the base to stops of the rendering. */
  readonly compression: number;
  /** Base, log2 of luminance, that is shown as white. */
  readonly brightest: number;
}

export interface BaseDetailOptions {
  /** Stops that the base may have in the rendering. */
  readonly stops?: number;
  /** Window as a share of the longer side. */
  readonly window?: number;
  /** Standard deviation, stops, below which a texture is detail. */
  readonly texture?: number;
}

/** The base keeps about this range, stops: what a page under room light holds (own choice). */
const usualStops = 6.5;
const usualWindow = 1 / 60;
const usualTexture = 0.5;

/** @param small log2 of luminance, shrunk; every sample finite. */
export function baseDetail(small: Plane, options: BaseDetailOptions = {}): BaseDetail {
  const { stops = usualStops, window = usualWindow, texture = usualTexture } = options;
  const radius = Math.max(1, Math.round(Math.max(small.width, small.height) * window));
  const lines = guidedLines(small, radius, texture * texture);
  const sorted = small.data.map((v, i) => lines.slope.data[i] * v + lines.offset.data[i]).sort();
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  const [darkest, brightest] = [at(0.05), at(0.995)];
  return {
    lines,
    brightest,
    compression: Math.min(1, stops / Math.max(1e-6, brightest - darkest)),
  };
}

/**
 * Factors for one row of a full-size picture: display luminance over luminance.
 *
 * @param logs log2 of the row's luminance, finite. @param y Row of `height` rows.
 */
export function baseDetailRow(
  tone: BaseDetail,
  logs: Float32Array,
  y: number,
  height: number,
  factors: Float32Array,
): void {
  const { slope, offset } = tone.lines;
  const sy = ((y + 0.5) * slope.height) / height - 0.5;
  const top = Math.max(0, Math.min(slope.height - 1, Math.floor(sy)));
  const bottom = Math.min(slope.height - 1, top + 1);
  const fy = Math.max(0, Math.min(1, sy - top));
  const step = slope.width / logs.length;
  for (let x = 0; x < logs.length; x += 1) {
    const sx = (x + 0.5) * step - 0.5;
    const left = Math.max(0, Math.min(slope.width - 1, Math.floor(sx)));
    const right = Math.min(slope.width - 1, left + 1);
    const fx = Math.max(0, Math.min(1, sx - left));
    const [a, b] = [top * slope.width + left, top * slope.width + right];
    const [c, d] = [bottom * slope.width + left, bottom * slope.width + right];
    const mix = (p: Float32Array) =>
      (p[a] * (1 - fx) + p[b] * fx) * (1 - fy) + (p[c] * (1 - fx) + p[d] * fx) * fy;
    const base = mix(slope.data) * logs[x] + mix(offset.data);
    // Compressed base plus untouched detail, less the luminance: what is left of both is the base's.
    factors[x] = 2 ** ((base - tone.brightest) * tone.compression - base);
  }
}
