/**
 * Which bodies can be seen in which part of the picture: the box of each body is projected,
 * and a ray of the camera asks only the bodies whose boxes cover its tile.
 */
import { type Solid } from './solid.ts';
import { type View } from './view.ts';

/** Side of a tile in picture elements. */
const tile = 32;

/** Gives the bodies to ask for a ray through picture element (column, row). */
export function makeVisible(
  solids: readonly Solid[],
  view: View,
  columns: number,
  rows: number,
): (column: number, row: number) => readonly number[] {
  const extents = solids.map((solid) => {
    let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
    for (let k = 0; k < 8; k++) {
      const at = view.project(
        (k & 1 ? solid.max : solid.min)[0],
        (k & 2 ? solid.max : solid.min)[1],
        (k & 4 ? solid.max : solid.min)[2],
      );
      // A corner behind the camera: the body may be anywhere.
      if (!at) return [-Infinity, Infinity, -Infinity, Infinity] as const;
      left = Math.min(left, at[0] * columns);
      right = Math.max(right, at[0] * columns);
      top = Math.min(top, at[1] * rows);
      bottom = Math.max(bottom, at[1] * rows);
    }
    return [left - 2, right + 2, top - 2, bottom + 2] as const;
  });
  const known = new Map<number, readonly number[]>();
  return (column, row) => {
    const tx = Math.floor(column / tile);
    const ty = Math.floor(row / tile);
    const key = ty * 4096 + tx;
    let list = known.get(key);
    if (!list) {
      list = extents.flatMap(([left, right, top, bottom], k) =>
        left <= (tx + 1) * tile &&
        right >= tx * tile &&
        top <= (ty + 1) * tile &&
        bottom >= ty * tile
          ? [k]
          : [],
      );
      known.set(key, list);
    }
    return list;
  };
}
