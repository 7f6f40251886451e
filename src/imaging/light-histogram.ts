/**
 * How the merged light of what is in sight is spread, in stops: what the reader chooses an
 * exposure by. From the codes of the rendering and of the gain, one sample a pixel of the screen.
 *
 * References
 * - ITU-R BT.709-6, 3.2: luminance weights.
 */
import { decodeSrgb } from './colour/srgb-curve.ts';
import type { GainNumbers } from './wide-range.ts';

const table = Float64Array.from({ length: 256 }, (_, code) => decodeSrgb(code / 255));

/**
 * @param base RGBA codes of the rendering, alpha 255 where there is one. @param gain RGBA codes:
 *   the gain, two shares, and 255 where there is data.
 * @param low Stops at the lower end of the first bar. @param high At the upper end of the last.
 */
export function lightHistogram(
  base: Uint8Array,
  gain: Uint8Array,
  numbers: GainNumbers,
  low: number,
  high: number,
  bars: number,
): { readonly counts: Uint32Array; readonly total: number } {
  const counts = new Uint32Array(bars);
  let total = 0;
  for (let i = 0; i + 3 < base.length; i += 4) {
    if (base[i + 3] < 255 || gain[i + 3] < 255) continue;
    const linear =
      0.2126 * table[base[i]] + 0.7152 * table[base[i + 1]] + 0.0722 * table[base[i + 2]];
    const factor = 2 ** (numbers.offset + numbers.step * gain[i]);
    const light = (linear + numbers.offsetBase) * factor - numbers.offsetMerged;
    total++;
    const bar = Math.floor(((Math.log2(Math.max(light, 1e-9)) - low) / (high - low)) * bars);
    counts[Math.min(bars - 1, Math.max(0, bar))]++;
  }
  return { counts, total };
}
