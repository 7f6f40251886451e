/**
 * Where a capture lies: in the plate's frame, in the same frame drawn at fewer pixels, or alone.
 *
 * Frames of a many-light set are often saved smaller than the base. Enlarging dozens of them
 * would cost time and show nothing more; shrinking the frame by one factor both ways keeps every
 * length and every place, and the bound of the alignment stays what it is in pixels of the base.
 */
import { type Homography, project } from '../../imaging/conventions.ts';
import { bendScaled } from '../../imaging/radial.ts';
import { compose, enlargement } from '../../imaging/registration/homography.ts';
import type { Registration } from '../../records/result.ts';
import type { PlannedView } from './part.ts';

/** A pixel of the capture may cover so many of the base's, to a side, before the frame is shrunk. */
const mostEnlargement = 2;
/** A detail that covers less of the frame than this would fill it with nothing. */
const leastCovered = 0.25;

interface Size {
  readonly width: number;
  readonly height: number;
}

export function placeView(
  registration: Registration | undefined,
  frame: Size,
  file: Size,
): Pick<PlannedView, 'width' | 'height' | 'registered' | 'warp' | 'radial'> {
  const alone = { ...sizeOf(file), registered: false, warp: null };
  if (registration?.state === 'base') return { ...sizeOf(frame), registered: true, warp: null };
  if (registration?.state !== 'registered') return alone;
  const warp = registration.homography as unknown as Homography;
  const { radial } = registration;
  const times = enlargementBy(warp, file);
  const covered = (times * times * file.width * file.height) / (frame.width * frame.height);
  if (covered < leastCovered) return alone;
  if (times < mostEnlargement) return { ...sizeOf(frame), registered: true, warp, radial };
  const width = Math.round(frame.width / times);
  const share = width / frame.width;
  return {
    ...{ width, height: Math.round(frame.height * share), registered: true },
    warp: compose(enlargement(share), warp),
    radial: radial && bendScaled(radial, share),
  };
}

/** Pixels of the frame to a pixel of the capture, each way, in its middle. */
function enlargementBy(warp: Homography, { width, height }: Size): number {
  const [x, y] = [(width - 1) / 2, (height - 1) / 2];
  const [left, top] = project(warp, x - 0.5, y - 0.5);
  const [right, bottom] = project(warp, x + 0.5, y + 0.5);
  // Of the two diagonals of a pixel one is enough: no lens stretches one direction alone.
  return Math.hypot(right - left, bottom - top) / Math.SQRT2;
}

function sizeOf({ width, height }: Size): Size {
  return { width, height };
}
