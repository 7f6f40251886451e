/** The circle of a glossy ball in the frames of a set, from a rough one. */
import type { Estimate } from '../plane.ts';
import { ballFit, type SeenHighlight } from './ball-fit.ts';
import { ballHighlight, type Circle } from './ball-highlight.ts';
import { darkDisc } from './dark-disc.ts';
import { frameMedian } from './frame-middles.ts';
import { highlightOffset, type Offset } from './half-vector.ts';

/** Where a ball at a place of the picture shows the lamp of a frame; null where that is not known. */
export type OffsetAt = ((x: number, y: number) => Offset) | null;

export interface FoundBall extends Circle {
  readonly from: 'highlights' | 'outline' | 'both';
  /** Distance of highlights, or of the outline alone, from where the circle has them, pixels. */
  readonly residual: number;
}

/** The highlights may miss the fitted ball by so much of its radius: 3 degrees of lamp direction. */
const worstResidual = 0.025;
/**
 * The outline is taken where it leaves the highlights no farther off than this many times what
 * their own best circle does: so much is chance with the eight numbers that four lamps give.
 */
const asGood = 1.25;
/** Highlights are not known better than this, pixels. */
const leastMiss = 0.25;
/** Frames that must show a highlight on a dark disc for it to be a glossy ball. */
const glossy = 0.6;

/**
 * @param frames Linear luminance about the ball, white at 1, row-major with `width` columns.
 * @param rough In these pixels, as are the places that `offsets` take.
 */
export function exactBall(
  frames: readonly Float32Array[],
  width: number,
  rough: Circle,
  offsets: readonly OffsetAt[] | null,
): Estimate<FoundBall> {
  return offsets
    ? fromHighlights(frames, width, rough, offsets)
    : fromOutline(frames, width, rough);
}

function fromHighlights(
  frames: readonly Float32Array[],
  width: number,
  rough: Circle,
  offsets: readonly OffsetAt[],
): Estimate<FoundBall> {
  let circle = rough;
  let residual = 0;
  let seen: SeenHighlight[] = [];
  // What a ball searches for its highlight depends a little on its circle.
  for (let round = 0; round < 3; round += 1) {
    seen = frames.flatMap((frame, l): SeenHighlight[] => {
      const found = offsets[l] ? ballHighlight(frame, width, circle, 1) : null;
      if (!found?.ok) return [];
      const [right, down] = highlightOffset(found.value.direction);
      const place = { x: circle.x + circle.radius * right, y: circle.y + circle.radius * down };
      const offset = offsets[l]?.(circle.x, circle.y);
      return offset ? [{ ...place, offset }] : [];
    });
    const fit = ballFit(seen);
    if (!fit.ok) return fit;
    circle = fit.value;
    residual = fit.value.residual;
  }
  if (residual > worstResidual * circle.radius) {
    return {
      ok: false,
      reason: `the highlights miss the best circle by ${residual.toFixed(1)} pixels`,
    };
  }
  const disc = darkDisc(frameMedian(frames), width, circle);
  const aside = disc.ok ? middleMiss(disc.value, seen) : Infinity;
  if (disc.ok && aside <= asGood * Math.max(leastMiss, middleMiss(circle, seen))) {
    return { ok: true, value: { ...disc.value, residual: aside, from: 'both' } };
  }
  const { x, y, radius } = circle;
  return { ok: true, value: { x, y, radius, residual, from: 'highlights' } };
}

/** Median distance of the highlights from where a circle puts them, pixels. */
function middleMiss({ x, y, radius }: Circle, seen: readonly SeenHighlight[]): number {
  const misses = seen.map((spot) =>
    Math.hypot(spot.x - x - radius * spot.offset[0], spot.y - y - radius * spot.offset[1]),
  );
  return misses.sort((a, b) => a - b)[misses.length >> 1];
}

function fromOutline(
  frames: readonly Float32Array[],
  width: number,
  rough: Circle,
): Estimate<FoundBall> {
  const disc = darkDisc(frameMedian(frames), width, rough);
  if (!disc.ok) return disc;
  const shown = frames.filter((frame) => ballHighlight(frame, width, disc.value, 1).ok).length;
  if (shown < glossy * frames.length) {
    return {
      ok: false,
      reason: `a dark disc shows a highlight in ${shown} of ${frames.length} frames only`,
    };
  }
  return { ok: true, value: { ...disc.value, from: 'outline' } };
}
