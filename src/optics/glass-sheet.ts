/**
 * The sheet of glass of an axial set-up: how much of the field it throws on the plate, how
 * much of the plate it lets through to the lens, and where its second face puts a ghost.
 *
 * The sheet is clear and its faces add up incoherently, as those of any real sheet do.
 *
 * References
 * - Slab of two faces: R = 2r/(1 + r), T = (1 - r)/(1 + r) for each polarisation.
 * - Young and Freedman, University Physics, 14th ed., problem 33.54 (displacement of a ray).
 */
import { fresnelReflectance, type Polarised, unpolarised } from './fresnel.ts';

/** Reflectance of a whole sheet, both faces, by polarisation. */
export function sheetReflectance(index: number, degrees: number): Polarised {
  const { s, p } = fresnelReflectance(index, degrees);
  return { s: (2 * s) / (1 + s), p: (2 * p) / (1 + p) };
}

/** Transmittance of a whole sheet, both faces, by polarisation. */
export function sheetTransmittance(index: number, degrees: number): Polarised {
  const { s, p } = fresnelReflectance(index, degrees);
  return { s: (1 - s) / (1 + s), p: (1 - p) / (1 + p) };
}

/**
 * Share of an unpolarised field's luminance that comes back from a perfect mirror under the
 * sheet: reflected once, then let through once. The mean of the products of the two
 * polarisations, which is less than the product of the means.
 */
export function doublePass(index: number, degrees: number): number {
  const r = sheetReflectance(index, degrees);
  const t = sheetTransmittance(index, degrees);
  return unpolarised({ s: r.s * t.s, p: r.p * t.p });
}

/** Parallel displacement of a ray through the sheet, in the unit of `thickness`. */
export function lateralDisplacement(index: number, degrees: number, thickness: number): number {
  const i = (degrees * Math.PI) / 180;
  const sin = Math.sin(i);
  return thickness * sin * (1 - Math.cos(i) / Math.sqrt(index * index - sin * sin));
}

/** The second picture that two reflections inside the sheet add to what the lens sees. */
export interface Ghost {
  /** Across the view, in the unit of the thickness. */
  readonly displacement: number;
  /** Luminance relative to the first picture, for the light that the sheet itself threw. */
  readonly strength: number;
}

/** Ghost of the view through the sheet: relative strength r squared for each polarisation. */
export function sheetGhost(index: number, degrees: number, thickness: number): Ghost {
  const i = (degrees * Math.PI) / 180;
  const sin = Math.sin(i);
  const face = fresnelReflectance(index, degrees);
  const thrown = sheetReflectance(index, degrees);
  const first = {
    s: thrown.s * (1 - face.s) ** 2,
    p: thrown.p * (1 - face.p) ** 2,
  };
  const second = { s: first.s * face.s ** 2, p: first.p * face.p ** 2 };
  return {
    displacement: (thickness * Math.sin(2 * i)) / Math.sqrt(index * index - sin * sin),
    strength: unpolarised(second) / unpolarised(first),
  };
}
