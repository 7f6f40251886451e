/**
 * The ghost that a sheet of glass leaves beside the picture: its distance and strength, measured
 * where it is plainest, at the plate's edge. Beyond the edge lies the dark ground; the ghost is a
 * second, faint edge on it. Along the whole edge the picture's noise averages out, so a ghost of
 * a third of a per cent can be placed to a fraction of a pixel.
 *
 * The profile across the edge is p(k), k pixels outwards. Outside it is a straight background
 * and s times the profile itself, d pixels further out: for each d the least squares of
 * background and s leave a remainder, and the d with the least remainder is the ghost's.
 *
 * (The autocorrelation of the picture was tried: on plates with polishing lines, whose own
 * correlation runs along the same rows, it did not bring out a ghost below one per cent.)
 */
import type { Estimate, Plane } from '../plane.ts';
import { leastSquares } from './least-squares.ts';

export interface Ghost {
  /** From the picture, along the outward normal of the edge. */
  readonly pixels: number;
  /** Relative to the picture. */
  readonly strength: number;
}

type Point = readonly [x: number, y: number];

/** From the rim's foot to where the ground is looked at, pixels: the lens's own blur. */
const nearest = 2;
/** A ghost must explain this share of what the background leaves: measured on renders. */
const leastShare = 0.6;
/** More than this no plain glass gives, at any usual index: r^2 of a face at 45 degrees. */
const mostStrength = 0.03;
/** Share of the plate's brightness below which the ground begins. */
const footShare = 0.025;
/** Below this strength nothing is said: stray light in the lens has such steps too. */
const leastStrength = 0.001;

/**
 * Profile across an edge: the median over places along it, for 0 to 2 reach, the edge at reach.
 *
 * @param from Ends of the edge, in pixels of the plane; outwards is to the left of the way from
 *   the first to the second as the picture is seen (clockwise round the plate).
 */
export function edgeProfile(plane: Plane, from: Point, to: Point, reach: number): Float64Array {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const along = [(to[0] - from[0]) / length, (to[1] - from[1]) / length] as const;
  const out = [along[1], -along[0]] as const;
  const places = Math.min(1500, Math.floor(0.7 * length));
  const profile = new Float64Array(2 * reach + 1);
  const values = new Float64Array(places);
  for (let k = -reach; k <= reach; k += 1) {
    for (let i = 0; i < places; i += 1) {
      const t = length * (0.15 + (0.7 * (i + 0.5)) / places);
      const [x, y] = [0, 1].map((c) => from[c] + along[c] * t + out[c] * k);
      values[i] = sample(plane, x, y);
    }
    values.sort();
    profile[k + reach] = values[places >> 1];
  }
  return profile;
}

function sample({ width, height, data }: Plane, x: number, y: number): number {
  const cx = Math.min(width - 1.001, Math.max(0, x));
  const cy = Math.min(height - 1.001, Math.max(0, y));
  const [ix, iy] = [Math.floor(cx), Math.floor(cy)];
  const [fx, fy] = [cx - ix, cy - iy];
  const at = iy * width + ix;
  const upper = data[at] * (1 - fx) + data[at + 1] * fx;
  const lower = data[at + width] * (1 - fx) + data[at + width + 1] * fx;
  return upper * (1 - fy) + lower * fy;
}

/** The ghost in a profile that {@link edgeProfile} gave. */
export function ghostStep(profile: Float64Array): Estimate<Ghost> {
  const reach = (profile.length - 1) / 2;
  const inside = profile[Math.round(reach / 3)];
  const outside = profile[profile.length - 1];
  if (!(inside > 4 * outside)) {
    return { ok: false, reason: 'the plate has no edge against something dark' };
  }
  const edge = halfway(profile, (inside + outside) / 2);
  if (edge === null) {
    return { ok: false, reason: 'the plate’s edge was not found where its outline says' };
  }
  // A sheet's rounded rim dims before it ends: the ground begins where that is over.
  const first = Math.ceil(footOf(profile, outside + footShare * (inside - outside))) + nearest;
  // The ghost's own foot must still lie in the profile.
  const largest = profile.length - 1 - edge - 4;
  const least = first - edge + 2;
  if (largest < least + 4)
    return { ok: false, reason: 'there is too little room beside the plate' };
  const fitAt = (d: number) => fitGhost(profile, first, d);
  const none = fitGhost(profile, first, Infinity).remainder;
  let best = least;
  for (let d = best; d <= largest; d += 0.5) {
    if (fitAt(d).remainder < fitAt(best).remainder) best = d;
  }
  for (let step = 0.25; step > 0.01; step /= 2) {
    for (const d of [best - step, best + step]) {
      if (fitAt(d).remainder < fitAt(best).remainder) best = d;
    }
  }
  const { remainder, strength } = fitAt(best);
  if (
    !(strength > leastStrength && strength < mostStrength) ||
    !(1 - remainder / none > leastShare)
  ) {
    return { ok: false, reason: 'no ghost stands out beside the plate' };
  }
  // At an end of what was looked at, it is the slope of something else.
  if (best < least + 1) return { ok: false, reason: 'no ghost stands out beside the plate' };
  if (best > largest - 1) return { ok: false, reason: 'there is too little room beside the plate' };
  return { ok: true, value: { pixels: best, strength } };
}

/**
 * The outermost place where the profile falls through a level. The outline that the profile was
 * laid along may lie at the ghost's foot: a search for edges can take that for the plate's.
 */
function halfway(profile: Float64Array, level: number): number | null {
  for (let k = profile.length - 1; k > 0; k -= 1) {
    if (profile[k - 1] > level && profile[k] <= level) {
      return k - 1 + (profile[k - 1] - level) / (profile[k - 1] - profile[k]);
    }
  }
  return null;
}

/** The outermost place above a level. */
function footOf(profile: Float64Array, level: number): number {
  let k = profile.length - 1;
  while (k > 0 && profile[k] <= level) k -= 1;
  return k;
}

interface Fit {
  /** Sum of squares that is left. */
  readonly remainder: number;
  readonly strength: number;
}

/** Background and ghost at one distance; the background alone for a distance without end. */
function fitGhost(profile: Float64Array, first: number, distance: number): Fit {
  const values = profile.subarray(first);
  const terms = distance === Infinity ? 2 : 3;
  const rows = new Float64Array(values.length * terms);
  for (let i = 0; i < values.length; i += 1) {
    rows[i * terms] = 1;
    rows[i * terms + 1] = i / values.length;
    if (terms === 3) rows[i * terms + 2] = between(profile, first + i - distance);
  }
  const found = leastSquares(rows, terms, values);
  if (!found) return { remainder: Infinity, strength: 0 };
  let remainder = 0;
  for (let i = 0; i < values.length; i += 1) {
    let fit = 0;
    for (let j = 0; j < terms; j += 1) fit += rows[i * terms + j] * found[j];
    remainder += (values[i] - fit) ** 2;
  }
  return { remainder, strength: terms === 3 ? found[2] : 0 };
}

function between(profile: Float64Array, place: number): number {
  const low = Math.min(profile.length - 2, Math.max(0, Math.floor(place)));
  const part = place - low;
  return profile[low] * (1 - part) + profile[low + 1] * part;
}
