/**
 * The slope of the surface at a pixel from its brightness under many lamps.
 *
 * Light that particles scatter follows the cosine law, and least squares gives the normal. A
 * polished plate adds light of its own, and what matters is how far that reaches from the mirror
 * direction: a narrow glint is an outlier in a few frames, a broad gloss is in half of them and
 * pulls a plain fit to itself (measured: 1.3 degrees on satin, 1.4 on a smooth mirror). So lamps
 * whose half vector is near the normal lose their vote first, then those that still stick out.
 * Where the plain fit leaves no more than noise it is kept: there is no gloss to beware of.
 *
 * References
 * - Woodham, R. J. (1980). Photometric method for determining surface orientation from multiple
 *   images. Optical Engineering 19(1), 139-144. doi:10.1117/12.7972479
 * - Holland, P. W. and Welsch, R. E. (1977), as in `least-squares.ts`: the biweight.
 */
import type { PatchLamps } from './near-lamps.ts';

export interface Shape {
  /** Rise per run to the right and upwards; NaN where too few frames hold light. */
  slopeX: number;
  slopeY: number;
  /** Linear light that the diffuse part gives under a lamp straight above. */
  albedo: number;
  /** Largest excess over the diffuse part, linear. */
  gloss: number;
  /** Median-like residual of the frames that kept their vote, linear. */
  residual: number;
}

/** Half-vector slopes, against the normal's, between which a lamp's vote grows from 0 to 1. */
const gloss = { none: 0.28, full: 0.58 };
/** Deviation below which no residual is distrusted, linear share of white: one code in midtones. */
const noise = 0.003;
/** Fewer frames than this say nothing of a slope. */
const fewest = 4;

/**
 * A solver for sets of `lamps` frames. It uses its space again: read the result before the next.
 *
 * @returns A function of a pixel's linear luminance in each frame, NaN where it was clipped.
 */
export function shapeSolver(
  lamps: number,
): (values: Float64Array, patch: PatchLamps) => Readonly<Shape> {
  const votes = new Float64Array(lamps);
  const misses = new Float64Array(lamps);
  const normal = new Float64Array(3);
  const shape: Shape = { slopeX: NaN, slopeY: NaN, albedo: NaN, gloss: NaN, residual: NaN };
  return (values, patch) => {
    let held = 0;
    for (let l = 0; l < lamps; l += 1) {
      votes[l] = Number.isNaN(values[l]) ? 0 : 1;
      held += votes[l];
    }
    const plain = held >= fewest && fit(values, patch.rows, votes, normal);
    if (!plain || !(normal[2] > 0)) return nothing(shape);
    let deviation = measure(values, patch.rows, votes, normal, misses);
    for (let round = 0; round < 2 && (round > 0 || deviation > noise); round += 1) {
      vote(values, patch.halves, misses, normal, round === 0 ? Infinity : deviation, votes);
      if (!fit(values, patch.rows, votes, normal) || !(normal[2] > 0)) return nothing(shape);
      deviation = measure(values, patch.rows, votes, normal, misses);
    }
    shape.slopeX = -normal[0] / normal[2];
    shape.slopeY = -normal[1] / normal[2];
    shape.albedo = Math.hypot(normal[0], normal[1], normal[2]);
    shape.residual = deviation;
    shape.gloss = excess(values, misses, normal[2]);
    return shape;
  };
}

function nothing(shape: Shape): Shape {
  shape.slopeX = shape.slopeY = shape.albedo = shape.gloss = shape.residual = NaN;
  return shape;
}

/** Least squares with votes; false where they do not determine a vector. */
function fit(
  values: Float64Array,
  rows: Float64Array,
  votes: Float64Array,
  out: Float64Array,
): boolean {
  let xx = 0;
  let xy = 0;
  let xz = 0;
  let yy = 0;
  let yz = 0;
  let zz = 0;
  let bx = 0;
  let by = 0;
  let bz = 0;
  for (let l = 0, at = 0; l < votes.length; l += 1, at += 3) {
    const w = votes[l];
    if (w === 0) continue;
    const x = rows[at];
    const y = rows[at + 1];
    const z = rows[at + 2];
    const wx = w * x;
    const wy = w * y;
    const wz = w * z;
    const v = values[l];
    xx += wx * x;
    xy += wx * y;
    xz += wx * z;
    yy += wy * y;
    yz += wy * z;
    zz += wz * z;
    bx += wx * v;
    by += wy * v;
    bz += wz * v;
  }
  const cx = yy * zz - yz * yz;
  const cy = xz * yz - xy * zz;
  const cz = xy * yz - xz * yy;
  const determinant = xx * cx + xy * cy + xz * cz;
  if (!(determinant > 1e-9 * xx * yy * zz)) return false;
  const dy = xx * zz - xz * xz;
  const dz = xy * xz - xx * yz;
  out[0] = (cx * bx + cy * by + cz * bz) / determinant;
  out[1] = (cy * bx + dy * by + dz * bz) / determinant;
  out[2] = (cz * bx + dz * by + (xx * yy - xy * xy) * bz) / determinant;
  return true;
}

/** Value minus fit of each frame, and the deviation of those that vote. */
function measure(
  values: Float64Array,
  rows: Float64Array,
  votes: Float64Array,
  normal: Float64Array,
  misses: Float64Array,
): number {
  const nx = normal[0];
  const ny = normal[1];
  const nz = normal[2];
  let sum = 0;
  let weight = 0;
  for (let l = 0, at = 0; l < votes.length; l += 1, at += 3) {
    const foretold = nx * rows[at] + ny * rows[at + 1] + nz * rows[at + 2];
    // A lamp behind the slope gives nothing, not less than nothing.
    const miss = values[l] - (foretold > 0 ? foretold : 0);
    misses[l] = miss;
    if (votes[l] === 0) continue;
    sum += votes[l] * miss * miss;
    weight += votes[l];
  }
  return Math.sqrt(sum / weight);
}

/** Votes by distance from the mirror direction and by what stuck out of the last fit. */
function vote(
  values: Float64Array,
  halves: Float64Array,
  misses: Float64Array,
  normal: Float64Array,
  deviation: number,
  votes: Float64Array,
): void {
  const sx = normal[0] / normal[2];
  const sy = normal[1] / normal[2];
  const cut = 1 / (4.685 * Math.max(noise, 0.75 * deviation));
  const widen = 1 / (gloss.full - gloss.none);
  for (let l = 0; l < votes.length; l += 1) {
    if (Number.isNaN(values[l])) continue;
    const dx = halves[2 * l] - sx;
    const dy = halves[2 * l + 1] - sy;
    let t = (Math.sqrt(dx * dx + dy * dy) - gloss.none) * widen;
    t = t < 0 ? 0 : t > 1 ? 1 : t;
    const u = misses[l] * cut;
    const kept = u >= 1 || u <= -1 ? 0 : (1 - u * u) * (1 - u * u);
    votes[l] = (0.001 + t * t * (3 - 2 * t)) * kept;
  }
}

/** Largest excess over the fit; a frame that was clipped there counts as white. */
function excess(values: Float64Array, misses: Float64Array, level: number): number {
  let most = 0;
  for (let l = 0; l < values.length; l += 1) {
    const more = Number.isNaN(values[l]) ? 1 - level : misses[l];
    if (more > most) most = more;
  }
  return Math.min(1, most);
}
