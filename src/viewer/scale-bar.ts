/** The scale bar: a round length that is long enough to read and short enough to fit. */
import { measures } from './words.ts';

export interface ScaleBar {
  readonly millimetres: number;
  /** Length on the screen, CSS pixels. */
  readonly pixels: number;
  /** "10 mm", "0.5 mm", "200 µm". */
  readonly label: string;
}

/** Steps 1, 2 and 5 of each decade, as on an engineer's rule. */
const steps = [1, 2, 5];

function label(millimetres: number): string {
  return millimetres < 0.5
    ? measures.micrometres(millimetres * 1000)
    : measures.millimetres(millimetres);
}

/**
 * The longest bar of 1, 2 or 5 times a power of ten that is not longer than `longest`.
 *
 * @param cssPixelsPerMillimetre How large a millimetre of the plate is on the screen now.
 * @returns null when the scale is not known.
 */
export function scaleBar(cssPixelsPerMillimetre: number | null, longest = 140): ScaleBar | null {
  if (cssPixelsPerMillimetre === null || !(cssPixelsPerMillimetre > 0)) return null;
  const most = longest / cssPixelsPerMillimetre;
  const decade = 10 ** Math.floor(Math.log10(most));
  const step = steps.findLast((s) => s * decade <= most * (1 + 1e-9)) ?? 1;
  const millimetres = step * decade;
  return { millimetres, pixels: millimetres * cssPixelsPerMillimetre, label: label(millimetres) };
}
