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
import { type PlateRow } from './plate-row.ts';
import { type Plate, type Support } from './plate.ts';

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

/** Fill in what each pixel does with light. `films` is a table of `silver.ts`. */
export function reflectRow(
  out: Reflectances,
  line: PlateRow,
  plate: Plate,
  films: Float64Array,
): void {
  const silver = plate.support === 'silver';
  for (let i = 0; i < line.length; i += 1) {
    if (line.inside[i] === 0) {
      for (let c = 0; c < 3; c += 1) out.diffuse[c][i] = velvetAlbedo;
      for (let c = 0; c < 3; c += 1) out.mirror[c][i] = 0;
    } else if (silver) reflectFromSilver(out, line, films, i);
    else reflectFromGlass(out, line, i);
  }
  out.through.fill(0);
  if (!silver) letThrough(out.through, line);
}

function reflectFromSilver(
  out: Reflectances,
  line: PlateRow,
  films: Float64Array,
  i: number,
): void {
  const covered = line.coverage[i] * (1 - 0.85 * line.scratch[i]);
  const open = 1 - covered;
  const clean = line.scratch[i] === 0 && line.tint[i] === 0 && line.dust[i] === 0;
  const whole = clean && line.inside[i] === 1;
  const dense = covered > 0.6 ? (covered - 0.6) * 2.5 : 0;
  const thickness = line.film[i];
  const low = Math.min(films.length / 3 - 2, Math.floor(thickness)) * 3;
  const t = thickness - low / 3;
  for (let c = 0; c < 3; c += 1) {
    const below = films[low + c] + (films[low + 3 + c] - films[low + c]) * t;
    // Tarnish lies over particles as well: they lose what the mirror below it loses.
    const kept = below < films[c] ? below / films[c] : 1;
    const albedo = particleAlbedo.silver[c] * (1 - blueing[c] * dense) * kept;
    const diffuse = covered * albedo * (1 + open * below);
    const mirror = open * open * below;
    // Most of a plate has nothing on it that would take light away.
    if (whole) {
      out.diffuse[c][i] = diffuse;
      out.mirror[c][i] = mirror;
    } else settle(out, line, i, c, diffuse, mirror);
  }
}

function reflectFromGlass(out: Reflectances, line: PlateRow, i: number): void {
  const covered = line.coverage[i] * (1 - 0.85 * line.scratch[i]);
  const open = 1 - covered;
  const mirror = glassMirror * (0.35 + 0.65 * open);
  for (let c = 0; c < 3; c += 1) {
    const diffuse = covered * particleAlbedo.glass[c] + open * blackPaper;
    settle(out, line, i, c, Math.min(diffuse, 1 - mirror), mirror);
  }
}

/** What scratches, pigment, dust and the plate's edge leave of both shares. */
function settle(
  out: Reflectances,
  line: PlateRow,
  i: number,
  c: number,
  diffuse: number,
  mirror: number,
): void {
  const tint = line.tint[i];
  const dust = line.dust[i];
  let d = diffuse + scratchAlbedo * line.scratch[i] * (1 - diffuse - mirror);
  let m = mirror;
  if (tint > 0) {
    d = d * (1 - tint) + line.tintColour[c][i] * tint;
    m *= (1 - tint) * (1 - tint);
  }
  if (dust > 0) {
    d = d * (1 - dust) + dustAlbedo * dust;
    m *= (1 - dust) * (1 - dust);
  }
  out.diffuse[c][i] = velvetAlbedo + (d - velvetAlbedo) * line.inside[i];
  out.mirror[c][i] = m * line.inside[i];
}

/** Silver in the way of a light behind the plate; a pixel's share of clear glass squared. */
function letThrough(out: Float64Array, line: PlateRow): void {
  for (let i = 0; i < line.length; i += 1) {
    const clear = 1 - line.coverage[i] * (1 - line.scratch[i]);
    out[i] = 0.9 * clear * clear * (1 - line.dust[i]) * line.inside[i];
  }
}
