/**
 * Luminance along a line, in linear light: bilinear samples one picture pixel apart.
 *
 * References
 * - ITU-R BT.709-6, 3.2: luminance weights.
 */
import type { Plane } from '../../imaging/plane.ts';
import type { Point } from './area-measure.ts';

/** One sample: where along the line, in units of the plane's pixels, and its luminance, 0 to 1. */
export interface ProfileSample {
  readonly along: number;
  readonly luminance: number;
}

/** @param from Pixel centres of the plane are whole numbers. */
export function lineProfile(plane: Plane, from: Point, to: Point): ProfileSample[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const steps = Math.max(1, Math.ceil(length));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = i / steps;
    const x = from[0] + t * (to[0] - from[0]);
    const y = from[1] + t * (to[1] - from[1]);
    return { along: t * length, luminance: sample(plane, x, y) };
  });
}

function sample(plane: Plane, x: number, y: number): number {
  const hold = (value: number, most: number) => Math.min(most, Math.max(0, value));
  const left = hold(Math.floor(x), plane.width - 1);
  const top = hold(Math.floor(y), plane.height - 1);
  const right = hold(left + 1, plane.width - 1);
  const bottom = hold(top + 1, plane.height - 1);
  const [fx, fy] = [hold(x - left, 1), hold(y - top, 1)];
  const at = (column: number, row: number) => plane.data[row * plane.width + column];
  const upper = at(left, top) * (1 - fx) + at(right, top) * fx;
  const lower = at(left, bottom) * (1 - fx) + at(right, bottom) * fx;
  return upper * (1 - fy) + lower * fy;
}
