/**
 * Which of the bright spots of a set are the highlights of one ball: two spots of two frames
 * whose lamps are known make a circle, and the circle that most frames agree with is the ball.
 *
 * References
 * - Fischler, M. A. and Bolles, R. C. (1981). Random sample consensus. Comm. ACM 24, 381-395.
 *   doi:10.1145/358669.358692 (here all pairs of some frames, so nothing is drawn at random)
 */
import type { Estimate } from '../plane.ts';
import { ballFit, fewestHighlights, type FittedBall, type SeenHighlight } from './ball-fit.ts';
import type { Circle } from './ball-highlight.ts';
import type { Spot } from './bright-spots.ts';
import type { Offset } from './half-vector.ts';

export interface LampSpots {
  readonly spots: readonly Spot[];
  /** Where a ball at this place would show the lamp. */
  readonly offsetAt: (x: number, y: number) => Offset;
}

/** Smallest radius, pixels of the spots; largest, share of the picture's shorter side. */
const smallest = 3;
const largest = 1 / 3;
/** A spot belongs to a circle within this share of its radius and one pixel. */
const tolerance = 0.06;
/** Frames that must agree: the rest may have a lamp hidden, or too low. */
const share = 0.5;
/** Pairs of frames from which circles are made. */
const pairs = 12;

export function ballAmongSpots(
  frames: readonly LampSpots[],
  width: number,
  height: number,
): Estimate<FittedBall> {
  const radii = { least: smallest, most: largest * Math.min(width, height) };
  let best: SeenHighlight[] = [];
  for (const [i, j] of farPairs(frames, width / 2, height / 2)) {
    for (const first of frames[i].spots) {
      const one = frames[i].offsetAt(first.x, first.y);
      const other = frames[j].offsetAt(first.x, first.y);
      for (const second of frames[j].spots) {
        const circle = circleOf(first, one, second, other, radii);
        if (!circle) continue;
        const seen = agreeing(frames, circle);
        if (seen.length > best.length) best = seen;
      }
    }
  }
  const needed = Math.max(fewestHighlights, Math.ceil(share * frames.length));
  if (best.length < needed) {
    return {
      ok: false,
      reason: `the highlights of ${best.length} of ${frames.length} lamps lie on one ball; ${needed} are needed`,
    };
  }
  return ballFit(best);
}

/** Pairs of frames whose highlights lie far apart: the farther, the surer the radius. */
function farPairs(frames: readonly LampSpots[], x: number, y: number): [number, number][] {
  const offsets = frames.map(({ offsetAt }) => offsetAt(x, y));
  const found: { pair: [number, number]; apart: number }[] = [];
  for (let i = 0; i < frames.length; i += 1) {
    for (let j = i + 1; j < frames.length; j += 1) {
      const apart = Math.hypot(offsets[i][0] - offsets[j][0], offsets[i][1] - offsets[j][1]);
      found.push({ pair: [i, j], apart });
    }
  }
  found.sort((a, b) => b.apart - a.apart);
  const taken = new Map<number, number>();
  const often = (frame: number): number => taken.get(frame) ?? 0;
  const chosen: [number, number][] = [];
  for (const { pair } of found) {
    // No frame thrice: its highlight may be hidden.
    if (chosen.length >= pairs || pair.some((frame) => often(frame) >= 2)) continue;
    for (const frame of pair) taken.set(frame, often(frame) + 1);
    chosen.push(pair);
  }
  return chosen;
}

function circleOf(
  first: Spot,
  one: Offset,
  second: Spot,
  other: Offset,
  { least, most }: { least: number; most: number },
): Circle | null {
  const [u, v] = [other[0] - one[0], other[1] - one[1]];
  const [x, y] = [second.x - first.x, second.y - first.y];
  const square = u * u + v * v;
  const radius = (u * x + v * y) / square;
  if (!(radius >= least && radius <= most)) return null;
  const aside = Math.abs(u * y - v * x) / Math.sqrt(square);
  if (aside > 2 * (tolerance * radius + 1)) return null;
  return { x: first.x - radius * one[0], y: first.y - radius * one[1], radius };
}

function agreeing(frames: readonly LampSpots[], { x, y, radius }: Circle): SeenHighlight[] {
  const limit = tolerance * radius + 1;
  return frames.flatMap(({ spots, offsetAt }) => {
    const offset = offsetAt(x, y);
    const [wantedX, wantedY] = [x + radius * offset[0], y + radius * offset[1]];
    const spot = spots.find((s) => Math.hypot(s.x - wantedX, s.y - wantedY) <= limit);
    return spot ? [{ x: spot.x, y: spot.y, offset }] : [];
  });
}
