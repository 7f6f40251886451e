/**
 * Pixels per millimetre, and how sure one can be of it.
 *
 * References
 * - JCGM 100:2008 (GUM), section 5.1: combined standard uncertainty.
 */

export interface Scale {
  readonly pixelsPerMillimetre: number;
  /** Standard uncertainty, pixels per mm. */
  readonly uncertainty: number;
}

export interface Length {
  readonly value: number;
  /** Standard uncertainty in the value's unit. */
  readonly uncertainty: number;
}

/** Scale from one length known in pixels and in millimetres. */
export function scaleFromLength(pixels: Length, millimetres: Length): Scale {
  const pixelsPerMillimetre = pixels.value / millimetres.value;
  const relative = Math.hypot(
    pixels.uncertainty / pixels.value,
    millimetres.uncertainty / millimetres.value,
  );
  return { pixelsPerMillimetre, uncertainty: relative * pixelsPerMillimetre };
}

/** Scale from the plate's two sides: their mean, weighted by how well each is known. */
export function scaleFromPlate(
  sidesPixels: readonly [number, number],
  pixelUncertainty: number,
  sidesMillimetres: readonly [number, number],
  millimetreUncertainty: number,
): Scale {
  const scales = [0, 1].map((k) =>
    scaleFromLength(
      { value: sidesPixels[k], uncertainty: pixelUncertainty },
      { value: sidesMillimetres[k], uncertainty: millimetreUncertainty },
    ),
  );
  const weights = scales.map((s) => 1 / s.uncertainty ** 2);
  const total = weights[0] + weights[1];
  const mean = scales.reduce((sum, s, k) => sum + weights[k] * s.pixelsPerMillimetre, 0) / total;
  // Sides that disagree more than their uncertainties tell of a wrong size, not of a fine scale.
  const apart = Math.abs(scales[0].pixelsPerMillimetre - scales[1].pixelsPerMillimetre) / 2;
  return { pixelsPerMillimetre: mean, uncertainty: Math.hypot(1 / Math.sqrt(total), apart) };
}

/** A length in millimetres from pixels. */
export function toMillimetres(pixels: Length, scale: Scale): Length {
  const value = pixels.value / scale.pixelsPerMillimetre;
  const relative = Math.hypot(
    pixels.uncertainty / pixels.value,
    scale.uncertainty / scale.pixelsPerMillimetre,
  );
  return { value, uncertainty: relative * value };
}

/** Millimetres of an inch: exact since 1959. */
const inch = 25.4;

export function pixelsPerInch(scale: Scale): number {
  return scale.pixelsPerMillimetre * inch;
}
