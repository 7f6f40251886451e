/**
 * The frame, the angles and the signs that every module uses, defined once.
 *
 * - **Pixels**: rows run down, columns run right; the origin (0, 0) is the *centre*
 *   of the top-left pixel. A picture of width w spans x from -0.5 to w - 0.5.
 * - **Plate frame**: the pixels of the base capture. Lengths in it are millimetres
 *   after division by the pixels per millimetre of the base.
 * - **Bearing**: clockwise from the plate's top edge as the camera sees it, 0 to 360 degrees.
 * - **Height**: above the plate's plane; 90 degrees is along the lens.
 * - **Light direction**: unit vector from the plate to the lamp, x right, y *up*, z towards
 *   the camera.
 * - **Light**: "linear" is proportional to luminance; "encoded" is through a transfer curve.
 * - **Handedness**: `as-seen` is what the camera sees, a mirror image on most plates;
 *   `corrected` is turned left for right, and never happens without being named.
 */
import type { Matrix3 } from './colour/matrix3.ts';

export type Handedness = 'as-seen' | 'corrected';

/** A projective map, row-major 3 x 3, last element 1: takes (x, y, 1) to (x', y', w'). */
export type Homography = Matrix3;

export const identity: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** Unit vector towards a lamp: x right, y up, z towards the camera. Angles in degrees. */
export function lightDirection(
  bearing: number,
  height: number,
): readonly [x: number, y: number, z: number] {
  const b = (bearing * Math.PI) / 180;
  const h = (height * Math.PI) / 180;
  return [Math.sin(b) * Math.cos(h), Math.cos(b) * Math.cos(h), Math.sin(h)];
}

/** Where a homography takes a point. */
export function project(m: Homography, x: number, y: number): readonly [x: number, y: number] {
  const w = m[6] * x + m[7] * y + m[8];
  return [(m[0] * x + m[1] * y + m[2]) / w, (m[3] * x + m[4] * y + m[5]) / w];
}
