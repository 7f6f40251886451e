/**
 * The 45 degree glass of an axial set-up as a choice: how much light it costs, where its ghost
 * lies, what a polariser on the lens does, and one sheet against another.
 *
 * References
 * - `fresnel.ts` and `glass-sheet.ts` for one face and for a sheet.
 * - Malus's law: a polariser at an angle to polarised light lets through cos^2 of that angle.
 * - A half-silvered sheet of reflectance R without loss: R (1 - R), at most a quarter.
 */
import { doublePass, sheetGhost, sheetReflectance, sheetTransmittance } from './glass-sheet.ts';
import type { Polarised } from './fresnel.ts';

export interface Glass {
  readonly index: number;
  /** mm */
  readonly thickness: number;
  /** Between the lens's axis and the sheet's normal, degrees. */
  readonly angle: number;
}

/** Stops to open against a source of the same luminance seen in the mirror without glass. */
export function glassLossStops({ index, angle }: Glass): number {
  return -Math.log2(doublePass(index, angle));
}

/** Share of a field that comes back through a half-silvered sheet, from its reflectance 0 to 1. */
export function coatedDoublePass(reflectance: number): number {
  return reflectance * (1 - reflectance);
}

/** What comes back from a perfect mirror, by polarisation, for unpolarised light in each. */
export function doublePassByPolarisation({ index, angle }: Glass): Polarised {
  const r = sheetReflectance(index, angle);
  const t = sheetTransmittance(index, angle);
  return { s: r.s * t.s, p: r.p * t.p };
}

/** Share that a perfect polariser lets through of light polarised along a line, angle in degrees. */
export function malus(degrees: number): number {
  return Math.cos((degrees * Math.PI) / 180) ** 2;
}

/**
 * Share of the field that reaches the sensor through a polariser on the lens.
 *
 * @param degrees From the direction in which s-polarised light (from the glass) swings.
 */
export function doublePassPolarised(glass: Glass, degrees: number): number {
  const { s, p } = doublePassByPolarisation(glass);
  return (s * malus(degrees) + p * malus(90 - degrees)) / 2;
}

/** One sheet's figures, to compare sheets by. */
export interface GlassFigures {
  readonly glass: Glass;
  readonly lossStops: number;
  /** Of the ghost beside the picture. */
  readonly ghostMillimetres: number;
  /** Null where the scale is not known. */
  readonly ghostPixels: number | null;
  /** Luminance of the ghost relative to the picture. */
  readonly ghostStrength: number;
  /** s-polarised part of what comes back, 0 to 1. */
  readonly polarisedShare: number;
}

export function glassFigures(glass: Glass, pixelsPerMillimetre: number | null): GlassFigures {
  const ghost = sheetGhost(glass.index, glass.angle, glass.thickness);
  const { s, p } = doublePassByPolarisation(glass);
  return {
    glass,
    lossStops: glassLossStops(glass),
    ghostMillimetres: ghost.displacement,
    ghostPixels: pixelsPerMillimetre === null ? null : ghost.displacement * pixelsPerMillimetre,
    ghostStrength: ghost.strength,
    polarisedShare: s / (s + p),
  };
}

/** Thickness of the sheet whose ghost lies at a distance, both in mm. */
export function thicknessFromGhost(millimetres: number, index: number, angle: number): number {
  return millimetres / sheetGhost(index, angle, 1).displacement;
}
