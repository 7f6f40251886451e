/**
 * How a file lies against the base: plates are mirror images, get photographed through the back
 * or upside down, and files get turned by hand. Quarter turns are not among them: a camera's own
 * note about those is applied when the file is read.
 */
import type { Homography } from '../conventions.ts';

export type Lay = 'as-is' | 'mirrored' | 'half-turned' | 'mirrored and half-turned';

export const lays: readonly Lay[] = [
  'as-is',
  'mirrored',
  'half-turned',
  'mirrored and half-turned',
];

/** Signs of x and y in a frame whose origin is the picture's centre. */
export function laySigns(lay: Lay): readonly [x: 1 | -1, y: 1 | -1] {
  switch (lay) {
    case 'as-is':
      return [1, 1];
    case 'mirrored':
      return [-1, 1];
    case 'half-turned':
      return [-1, -1];
    case 'mirrored and half-turned':
      return [1, -1];
  }
}

/** The lay nearest to a map between two pictures (either direction gives the same). */
export function layOf(m: Homography): Lay {
  // The determinant tells a mirror image; the sign of the y axis then tells a half-turn.
  const mirrored = m[0] * m[4] - m[1] * m[3] < 0;
  const halfTurned = m[4] < 0;
  if (mirrored) return halfTurned ? 'mirrored and half-turned' : 'mirrored';
  return halfTurned ? 'half-turned' : 'as-is';
}
