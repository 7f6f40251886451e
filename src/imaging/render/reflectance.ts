/**
 * From what lies in a pixel to what it does with light: a diffuse share and a mirror share for
 * each channel, which together never give back more than they got.
 *
 * A share c of the light meets particles and is scattered by them; the rest reaches the mirror,
 * and on its way back a share c meets particles once more. Dust and pigment lie on top of both.
 * The scattered sum is at most c + (1 - c) c, the mirror's at most (1 - c)^2: one together.
 *
 * References
 * - Highlights are densely covered by particles, shadows are bare mirror: AIC Photographic
 *   Materials Conservation Catalog, chapter 2. That they scatter as a matt surface does, with
 *   the albedo below, is a model: no published figure was found.
 */
import type { PlateRow } from './plate-row.ts';
import type { Plate, Support } from './plate.ts';

export interface Reflectances {
  /** Diffuse albedo, linear sRGB. */
  readonly diffuse: readonly [Float64Array, Float64Array, Float64Array];
  /** Share that the mirror gives back in all its lobes together, linear sRGB. */
  readonly mirror: readonly [Float64Array, Float64Array, Float64Array];
  /** Share let through, for a plate of glass; 0 for silver. */
  readonly through: Float64Array;
}

export function emptyReflectances(length: number): Reflectances {
  const line = () => new Float64Array(length);
  return {
    diffuse: [line(), line(), line()],
    mirror: [line(), line(), line()],
    through: line(),
  };
}

/** Albedo of the particles by support: gilded silver is a warm white, collodion silver is cream. */
const particleAlbedo: Record<Support, readonly [number, number, number]> = {
  silver: [0.86, 0.83, 0.775],
  glass: [0.62, 0.545, 0.44],
};

/** Very dense highlights turn blue; how much of the red and green is lost at full coverage. */
const blueing: readonly [number, number, number] = [0.1, 0.045, 0];

/** Smooth glass, both faces, at normal incidence (index 1.52: 2r/(1+r) with r = .04258). */
const glassMirror = 0.0817;
/** Black paper behind the glass. */
const blackPaper = 0.018;
const dustAlbedo = 0.5;
/** The cloth around the plate. */
const velvetAlbedo = 0.003;
/** Bare metal in a scratch scatters a little in all directions. */
const scratchAlbedo = 0.08;

/** Fill in what each pixel does with light. `films` is the table of `filmColours`. */
export function reflectRow(
  out: Reflectances,
  line: PlateRow,
  plate: Plate,
  films: Float64Array,
): void {
  for (let c = 0; c < 3; c += 1) reflectChannel(out, line, plate.support, films, c);
  out.through.fill(0);
  if (plate.support === 'glass') letThrough(out.through, line);
}

function reflectChannel(
  out: Reflectances,
  line: PlateRow,
  support: Support,
  films: Float64Array,
  c: number,
): void {
  const albedo = particleAlbedo[support][c];
  const bare = films[c];
  const diffuse = out.diffuse[c];
  const mirror = out.mirror[c];
  const colour = line.tintColour[c];
  const silver = support === 'silver';
  for (let i = 0; i < line.length; i += 1) {
    const covered = line.coverage[i] * (1 - 0.85 * line.scratch[i]);
    const below = silver ? filmAt(films, line.film[i], c) : glassMirror;
    const dense = Math.max(0, covered - 0.6) * 2.5;
    // Tarnish lies over particles as well: they lose what the mirror below it loses.
    const scattered = silver
      ? albedo * (1 - blueing[c] * dense) * Math.min(1, below / bare)
      : albedo;
    const open = 1 - covered;
    let d = covered * scattered + (silver ? open * covered * below * scattered : open * blackPaper);
    let m = silver ? open * open * below : glassMirror * (0.35 + 0.65 * open);
    if (!silver) d = Math.min(d, 1 - m);
    d += scratchAlbedo * line.scratch[i] * (1 - d - m);
    const uncovered = (1 - line.tint[i]) * (1 - line.tint[i]);
    d = d * (1 - line.tint[i]) + colour[i] * line.tint[i];
    m *= uncovered;
    const dust = line.dust[i];
    d = d * (1 - dust) + dustAlbedo * dust;
    m *= (1 - dust) * (1 - dust);
    diffuse[i] = velvetAlbedo + (d - velvetAlbedo) * line.inside[i];
    mirror[i] = m * line.inside[i];
  }
}

/** Silver in the way of a light behind the plate; a pixel's share of clear glass squared. */
function letThrough(out: Float64Array, line: PlateRow): void {
  for (let i = 0; i < line.length; i += 1) {
    const clear = 1 - line.coverage[i] * (1 - line.scratch[i]);
    out[i] = 0.9 * clear * clear * (1 - line.dust[i]) * line.inside[i];
  }
}

function filmAt(films: Float64Array, thickness: number, c: number): number {
  const low = Math.min(films.length / 3 - 2, Math.floor(thickness));
  const t = thickness - low;
  const a = films[low * 3 + c];
  return a + (films[low * 3 + 3 + c] - a) * t;
}
