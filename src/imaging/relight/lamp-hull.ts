/**
 * The region that the captured lamps enclose. Outside it a surface would be guessed, not
 * interpolated, so a lamp that the reader drags beyond is kept at the nearest point of the edge.
 *
 * References
 * - Andrew, A. M. (1979). Another efficient algorithm for convex hulls in two dimensions.
 *   Information Processing Letters 9(5), 216-219. doi:10.1016/0020-0190(79)90072-3
 */
import { type Direction, directionAt, type Place, placeOf } from './light-place.ts';

/** Twice the area of the triangle, positive when it turns anticlockwise. */
function turn(a: Place, b: Place, c: Place): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/** Indices of the lamps round the outside of the stereographic plane, anticlockwise. */
export function lampHull(lamps: readonly Direction[]): number[] {
  const places = lamps.map(placeOf);
  const order = places
    .map((_, i) => i)
    .sort((i, j) => places[i][0] - places[j][0] || places[i][1] - places[j][1]);
  const chain = (indices: readonly number[]): number[] => {
    const kept: number[] = [];
    for (const i of indices) {
      while (kept.length > 1) {
        const [a, b] = kept.slice(-2);
        if (turn(places[a], places[b], places[i]) > 1e-12) break;
        kept.pop();
      }
      kept.push(i);
    }
    return kept.slice(0, -1);
  };
  return [...chain(order), ...chain(order.toReversed())];
}

/** The direction itself where the lamps enclose it, otherwise the nearest one on their edge. */
export function withinHull(
  lamps: readonly Direction[],
  hull: readonly number[],
  direction: Direction,
): Direction {
  const wanted = placeOf(direction);
  const corners = hull.map((i) => placeOf(lamps[i]));
  let nearest: Place = wanted;
  let least = Infinity;
  let inside = true;
  for (let i = 0; i < corners.length; i += 1) {
    const a = corners[i];
    const b = corners[(i + 1) % corners.length];
    if (turn(a, b, wanted) >= 0) continue;
    inside = false;
    const along = [b[0] - a[0], b[1] - a[1]] as const;
    const share =
      ((wanted[0] - a[0]) * along[0] + (wanted[1] - a[1]) * along[1]) /
      (along[0] * along[0] + along[1] * along[1]);
    const t = Math.min(1, Math.max(0, share));
    const place: Place = [a[0] + t * along[0], a[1] + t * along[1]];
    const distance = Math.hypot(place[0] - wanted[0], place[1] - wanted[1]);
    if (distance < least) {
      least = distance;
      nearest = place;
    }
  }
  return inside ? direction : directionAt(nearest);
}
