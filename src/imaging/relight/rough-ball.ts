/**
 * Where a glossy ball lies in the frames of a set: by the highlights of the lamps that are known,
 * or by its outline, if it is darker than its ground and shows highlights as a ball does.
 */
import type { Estimate } from '../plane.ts';
import { ballAmongSpots, type LampSpots } from './ball-among-spots.ts';
import { fewestHighlights } from './ball-fit.ts';
import { blockMeans } from './block-means.ts';
import { brightSpots } from './bright-spots.ts';
import { darkDiscCandidates } from './dark-disc-candidates.ts';
import { exactBall, type FoundBall, type OffsetAt } from './exact-ball.ts';
import { frameMean, frameMedian } from './frame-middles.ts';

/** Longer side of the picture in which discs are looked for, pixels. */
const small = 160;

/**
 * @param frames Linear luminance, white at 1, row-major with `width` columns.
 * @param offsets One for each frame, taking places in these pixels.
 */
export function roughBall(
  frames: readonly Float32Array[],
  width: number,
  offsets: readonly OffsetAt[],
): Estimate<FoundBall> {
  const reasons: string[] = [];
  if (offsets.filter((offset) => offset !== null).length >= fewestHighlights) {
    const found = byHighlights(frames, width, offsets);
    if (found.ok) return found;
    reasons.push(found.reason);
  }
  const found = byOutline(frames, width);
  if (found.ok) return found;
  reasons.push(found.reason);
  return { ok: false, reason: reasons.join('; ') };
}

function byHighlights(
  frames: readonly Float32Array[],
  width: number,
  offsets: readonly OffsetAt[],
): Estimate<FoundBall> {
  const spots = brightSpots(frames, frameMean(frames), width);
  const known = offsets.flatMap((offsetAt, l): LampSpots[] =>
    offsetAt ? [{ spots: spots[l], offsetAt }] : [],
  );
  const found = ballAmongSpots(known, width, frames[0].length / width);
  if (!found.ok) return found;
  const { x, y, radius, residual } = found.value;
  return { ok: true, value: { x, y, radius, residual, from: 'highlights' } };
}

function byOutline(frames: readonly Float32Array[], width: number): Estimate<FoundBall> {
  const height = frames[0].length / width;
  const step = Math.max(1, Math.ceil(Math.max(width, height) / small));
  const shrunk = frames.map((frame) => blockMeans(frame, width, step));
  const columns = Math.floor(width / step);
  // The centre of the first block lies half a block from the first pixel's edge.
  const back = (place: number): number => (place + 0.5) * step - 0.5;
  for (const { x, y, radius } of darkDiscCandidates(frameMedian(shrunk), columns)) {
    const rough = { x: back(x), y: back(y), radius: radius * step };
    const found = exactBall(frames, width, rough, null);
    if (found.ok) return found;
  }
  return { ok: false, reason: 'no dark disc with highlights stands out from its ground' };
}
