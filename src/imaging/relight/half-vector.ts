/**
 * Where on a glossy ball a lamp's highlight lies: at the normal half-way between the lamp and the
 * line of sight, whose part in the picture's plane is the highlight's place in units of the radius.
 *
 * References
 * - Plane mirror law: n = (l + v) / |l + v|, here with v = (0, 0, 1), the lens taken as far away.
 */
import type { Direction } from './light-place.ts';

/** Offset from the ball's centre in radii, to the right and DOWN as rows of a picture run. */
export type Offset = readonly [right: number, down: number];

export function highlightOffset([x, y, z]: Direction): Offset {
  const long = Math.hypot(x, y, z + 1);
  return [x / long, -y / long];
}

/**
 * The direction in which a ball sees a lamp that the plate's centre sees in `direction`: the
 * inverse of `fromPlateCentre`.
 *
 * @param ball Where the ball is from the plate's centre, mm, y up.
 * @param distance Of the lamp from the plate's centre, mm; null when it is not known.
 */
export function fromBall(
  direction: Direction,
  ball: readonly [x: number, y: number],
  distance: number | null,
): Direction {
  if (distance === null) return direction;
  const x = direction[0] * distance - ball[0];
  const y = direction[1] * distance - ball[1];
  const z = direction[2] * distance;
  const far = Math.hypot(x, y, z);
  return [x / far, y / far, z / far];
}
