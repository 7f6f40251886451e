/**
 * A length on the plate with its standard uncertainty.
 *
 * References
 * - JCGM 100:2008 (GUM), 5.1.2: the relative uncertainties of a quotient add in squares.
 */
import { measures, words } from '../words.ts';

export interface MeasuredLength {
  readonly millimetres: number;
  /** Standard uncertainty; null when that of the scale is not known. */
  readonly uncertainty: number | null;
}

/**
 * @param pixels Distance in plate pixels. @param pointing Standard uncertainty of it, pixels.
 * @param perMillimetre Pixels per mm. @param scaleUncertainty Its standard uncertainty, or null.
 */
export function measuredLength(
  pixels: number,
  pointing: number,
  perMillimetre: number,
  scaleUncertainty: number | null,
): MeasuredLength {
  const millimetres = pixels / perMillimetre;
  if (scaleUncertainty === null) return { millimetres, uncertainty: null };
  const fromScale = (millimetres * scaleUncertainty) / perMillimetre;
  return { millimetres, uncertainty: Math.hypot(fromScale, pointing / perMillimetre) };
}

/** "12.34 mm ± 0.06 mm", digits after the uncertainty's second one left out. */
export function lengthWords({ millimetres, uncertainty }: MeasuredLength): string {
  if (uncertainty === null || !(uncertainty > 0))
    return words.measure.uncertain(measures.millimetres(millimetres));
  const digits = Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(uncertainty))));
  const length = (value: number) => `${measures.fixed(value, digits)}\u202fmm`;
  return words.measure.standard(length(millimetres), length(uncertainty));
}
