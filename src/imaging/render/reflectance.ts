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
  if (silver) reflectSilverRow(out, line, films);
  else {
    for (let i = 0; i < line.length; i += 1) {
      if (line.inside[i] === 0) reflectFromCloth(out, i);
      else reflectFromGlass(out, line, i);
    }
  }
  out.through.fill(0);
  if (!silver) letThrough(out.through, line);
}

function reflectFromCloth({ diffuse, mirror }: Reflectances, i: number): void {
  diffuse[0][i] = diffuse[1][i] = diffuse[2][i] = velvetAlbedo;
  mirror[0][i] = mirror[1][i] = mirror[2][i] = 0;
}

/** Written out for three channels: with the lamp, this is where the renderer's time goes. */
function reflectSilverRow(out: Reflectances, line: PlateRow, films: Float64Array): void {
  const { inside, coverage, film, scratch, tint, dust } = line;
  const [dr, dg, db] = out.diffuse;
  const [mr, mg, mb] = out.mirror;
  const [pr, pg, pb] = particleAlbedo.silver;
  const [cleanR, cleanG, cleanB] = films;
  const last = films.length / 3 - 2;
  for (let i = 0; i < line.length; i += 1) {
    if (inside[i] === 0) {
      reflectFromCloth(out, i);
      continue;
    }
    const covered = coverage[i] * (1 - 0.85 * scratch[i]);
    const open = 1 - covered;
    const dense = covered > 0.6 ? (covered - 0.6) * 2.5 : 0;
    const whole = Math.min(last, Math.floor(film[i]));
    const low = whole * 3;
    const t = film[i] - whole;
    const r = films[low] + (films[low + 3] - films[low]) * t;
    const g = films[low + 1] + (films[low + 4] - films[low + 1]) * t;
    const b = films[low + 2] + (films[low + 5] - films[low + 2]) * t;
    // Tarnish lies over particles as well: they lose what the mirror below it loses.
    const keptR = r < cleanR ? r / cleanR : 1;
    const keptG = g < cleanG ? g / cleanG : 1;
    const keptB = b < cleanB ? b / cleanB : 1;
    dr[i] = covered * pr * (1 - blueing[0] * dense) * keptR * (1 + open * r);
    dg[i] = covered * pg * (1 - blueing[1] * dense) * keptG * (1 + open * g);
    db[i] = covered * pb * (1 - blueing[2] * dense) * keptB * (1 + open * b);
    const clear = open * open;
    mr[i] = clear * r;
    mg[i] = clear * g;
    mb[i] = clear * b;
    // Most of a plate has nothing on it that would take light away.
    if (inside[i] === 1 && scratch[i] === 0 && tint[i] === 0 && dust[i] === 0) continue;
    for (let c = 0; c < 3; c += 1) settle(out, line, i, c, out.diffuse[c][i], out.mirror[c][i]);
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
