/**
 * Where a lamp stands, as a point of a plane: the stereographic place (x, y) / (1 + z) of its
 * direction. For a camera along z it is the slope of the facet that would mirror the lamp into
 * the lens, so a glint of fixed width in slope keeps its width all over the plane; and circles
 * on the sphere stay circles, so neighbours stay neighbours.
 *
 * References
 * - Snyder, J. P. (1987). Map projections: a working manual. USGS Professional Paper 1395,
 *   154-163 (stereographic projection of the sphere).
 */

/** Unit vector from the plate to the lamp: x right, y up, z towards the camera. */
export type Direction = readonly [x: number, y: number, z: number];

/** A point of the plane; the lens is at (0, 0), the plate's own plane is the unit circle. */
export type Place = readonly [u: number, v: number];

export function placeOf([x, y, z]: Direction): Place {
  return [x / (1 + z), y / (1 + z)];
}

export function directionAt([u, v]: Place): Direction {
  const square = u * u + v * v;
  const scale = 2 / (1 + square);
  return [u * scale, v * scale, scale - 1];
}

/** Angle between two directions, degrees. */
export function degreesBetween(a: Direction, b: Direction): number {
  const chord = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
  return (2 * Math.asin(Math.min(1, chord / 2)) * 180) / Math.PI;
}

/** Index of the direction that is nearest to `wanted`. */
export function nearestDirection(directions: readonly Direction[], wanted: Direction): number {
  let best = 0;
  for (let i = 1; i < directions.length; i += 1) {
    if (degreesBetween(directions[i], wanted) < degreesBetween(directions[best], wanted)) best = i;
  }
  return best;
}
