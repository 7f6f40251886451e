/** The drawing of a profile, and its numbers as a table for other programs. */
import type { ProfileSample } from './line-profile.ts';
import { words } from '../words.ts';

/** A line in a box of 256 by 72, luminance 0 at its foot, the largest one at its top. */
export function profilePath(samples: readonly ProfileSample[]): string {
  const length = samples[samples.length - 1]?.along ?? 0;
  const most = Math.max(1e-6, ...samples.map((s) => s.luminance));
  return samples
    .map(({ along, luminance }, i) => {
      const x = length > 0 ? (256 * along) / length : 0;
      return `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${(71 - (70 * luminance) / most).toFixed(1)}`;
    })
    .join('');
}

/** @param perMillimetre Samples per millimetre of the line; null where the scale is not known. */
export function profileTable(
  samples: readonly ProfileSample[],
  perMillimetre: number | null,
): string {
  const unit = perMillimetre === null ? words.measure.inPixel : 'mm';
  const rows = samples.map(
    ({ along, luminance }) =>
      `${(along / (perMillimetre ?? 1)).toFixed(4)},${luminance.toFixed(5)}`,
  );
  return [`${words.measure.along(unit)},${words.measure.luminance}`, ...rows, ''].join('\n');
}
