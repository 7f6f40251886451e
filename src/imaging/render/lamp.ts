/**
 * A lamp over the plate: what the particles scatter of it, and what the mirror, its polishing
 * lines and its scratches throw into the lens.
 *
 * The strength of a lamp is the luminance of a perfect white diffuser at the plate's centre
 * that faces the lamp. The mirror family is a microfacet surface whose slopes are normally
 * distributed: narrow for the polished metal (as wide as the lamp itself), wide across the
 * polishing lines, wide across each scratch.
 *
 * References
 * - Lambert's cosine law and the inverse square law.
 * - Torrance, K. E. and Sparrow, E. M. (1967). Theory for off-specular reflection from
 *   roughened surfaces. J. Opt. Soc. Am. 57(9), 1105-1114. doi:10.1364/JOSA.57.001105.
 * - Smith, B. G. (1967). Geometrical shadowing of a random rough surface. IEEE Trans. Antennas
 *   Propag. 15(5), 668-671. doi:10.1109/TAP.1967.1138991 (normally distributed slopes).
 */
import { lightDirection } from '../conventions.ts';
import type { PlateRow } from './plate-row.ts';
import type { Reflectances } from './reflectance.ts';

export interface Lamp {
  /** Degrees, as in `conventions.ts`. */
  readonly bearing: number;
  readonly height: number;
  /** From the plate's centre, mm. */
  readonly distance: number;
  /** Width of the lit face or of the diffuser before it, mm. */
  readonly size: number;
  /** Luminance of a perfect white diffuser at the centre, facing the lamp. */
  readonly strength: number;
}

/** Standard deviations of slopes, rise per run. */
export interface Lobes {
  /** Along and across the polishing lines. */
  readonly polishAlong: number;
  readonly polishAcross: number;
  /** The deeper of the lines: their share, and slopes that waver more. */
  readonly deepShare: number;
  readonly deepAlong: number;
  readonly deepAcross: number;
  /** Along and across a scratch. */
  readonly scratchAlong: number;
  readonly scratchAcross: number;
}

export const usualLobes: Lobes = {
  polishAlong: 0.02,
  polishAcross: 0.16,
  deepShare: 0.07,
  deepAlong: 0.25,
  deepAcross: 0.6,
  scratchAlong: 0.03,
  scratchAcross: 0.45,
};

/** Slopes of a polished surface seen under a point of light: waviness finer than a pixel. */
const finestSlope = 0.003;

/** Exponents above this give less than 1e-9 of the lobe. */
const negligible = 21;

/** Standard deviation of half-vector slopes that a lamp's own width makes: a disc's is radius/2. */
export function lampSlope(lamp: Lamp): number {
  const radius = lamp.size / 2 / lamp.distance;
  return Math.hypot(finestSlope, radius / 4);
}

/**
 * Add a lamp's light to a row.
 *
 * @param camera From the plate's centre to the lens, mm.
 * @param offset Where the lens stands over the plate, mm from the plate's centre, y down: the
 *   lamp keeps its place beside the lens when the plate is moved under both.
 */
export function addLamp(
  out: readonly [Float64Array, Float64Array, Float64Array],
  line: PlateRow,
  surface: Reflectances,
  lamp: Lamp,
  camera: number,
  offset: readonly [number, number] = [0, 0],
  lobes: Lobes = usualLobes,
): void {
  const [ux, uy, uz] = lightDirection(lamp.bearing, lamp.height);
  const lampX = offset[0] + ux * lamp.distance;
  const lampY = offset[1] - uy * lamp.distance;
  const lampZ = uz * lamp.distance;
  const narrow = lampSlope(lamp);
  // In units of pi times the strength: the irradiance that such a diffuser receives.
  const irradiance = Math.PI * lamp.strength;
  const reference = lamp.distance * lamp.distance;
  const masks = [narrow, lobes.polishAcross, lobes.scratchAcross, lobes.deepAcross].map((slope) =>
    smithMask(uz / Math.sqrt(1 - Math.min(0.999999, uz * uz)), slope),
  );
  const { polishAlong, polishAcross, scratchAlong, scratchAcross } = lobes;
  const { deepShare, deepAlong, deepAcross } = lobes;
  const alongSpread = Math.hypot(polishAlong, narrow);
  const acrossSpread = Math.hypot(polishAcross, narrow);
  const scratchThin = Math.hypot(scratchAlong, narrow);
  const [dr, dg, db] = surface.diffuse;
  const [mr, mg, mb] = surface.mirror;
  for (let i = 0; i < line.length; i += 1) {
    const lx = lampX - line.x[i];
    const ly = lampY - line.y[i];
    const square = lx * lx + ly * ly + lampZ * lampZ;
    const near = 1 / Math.sqrt(square);
    const fall = (reference / square) * near;
    const cosine = (lampZ - lx * line.slopeX[i] - ly * line.slopeY[i]) * fall;
    const white = cosine > 0 ? lamp.strength * cosine : 0;
    let glint = 0;
    if (mr[i] > 0) {
      const vx = offset[0] - line.x[i];
      const vy = offset[1] - line.y[i];
      const away = 1 / Math.sqrt(vx * vx + vy * vy + camera * camera);
      const hz = lampZ * near + camera * away;
      const toHalf = 1 / hz;
      const hx = lx * near + vx * away;
      const hy = ly * near + vy * away;
      const half2 = hx * hx + hy * hy + hz * hz;
      const sx = -hx * toHalf - line.slopeX[i];
      const sy = -hy * toHalf - line.slopeY[i];
      const nz2 = (hz * hz) / half2;
      const scale = (irradiance * (reference / square)) / (4 * camera * away * nz2 * nz2);
      const scratch = line.scratch[i];
      const gloss = line.gloss[i] * (1 - scratch);
      let sum = (1 - gloss - scratch) * masks[0] * facets(sx, sy, narrow, narrow);
      sum += gloss * (1 - deepShare) * masks[1] * facets(sx, sy, alongSpread, acrossSpread);
      sum += gloss * deepShare * masks[3] * facets(sx, sy, deepAlong, deepAcross);
      if (scratch > 0) {
        const ax = line.alongX[i];
        const ay = line.alongY[i];
        sum +=
          scratch *
          masks[2] *
          facets(sx * ax + sy * ay, sy * ax - sx * ay, scratchThin, scratchAcross);
      }
      glint = sum * scale;
    }
    out[0][i] += dr[i] * white + mr[i] * glint;
    out[1][i] += dg[i] * white + mg[i] * glint;
    out[2][i] += db[i] * white + mb[i] * glint;
  }
}

/** Density of facets with a slope, for normally distributed slopes. */
export function facets(x: number, y: number, spreadX: number, spreadY: number): number {
  const u = x / spreadX;
  const v = y / spreadY;
  const e = 0.5 * (u * u + v * v);
  return e > negligible ? 0 : Math.exp(-e) / (2 * Math.PI * spreadX * spreadY);
}

/** Share of facets that a ray meets unshadowed; `cotangent` of its angle from the normal. */
export function smithMask(cotangent: number, slope: number): number {
  const a = cotangent / (slope * Math.SQRT2);
  if (a > 4) return 1;
  const tail = Math.exp(-a * a) / (a * Math.sqrt(Math.PI)) - complementaryError(a);
  return 1 / (1 + 0.5 * tail);
}

/** erfc for a >= 0. Abramowitz and Stegun, formula 7.1.26, error below 1.5e-7. */
function complementaryError(a: number): number {
  const t = 1 / (1 + 0.3275911 * a);
  const sum =
    ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
  return sum * Math.exp(-a * a);
}
