/**
 * Lamps near the plate: each place of it sees a lamp from another direction and from another
 * distance. Worked out for a patch of pixels at a time, within which both hardly change.
 *
 * References
 * - The inverse square law.
 */
import type { Direction } from './light-place.ts';

export interface LampStand {
  /** From the plate's centre. */
  readonly directions: readonly Direction[];
  /** From the plate's centre, mm; null for lamps that may be taken as far away. */
  readonly distance: number | null;
  /** From the plate to the lens, mm; null for far away. */
  readonly camera: number | null;
  readonly pixelsPerMillimetre: number | null;
}

export interface PatchLamps {
  /** Three for each lamp: its direction times its strength here, 1 at the plate's centre. */
  readonly rows: Float64Array;
  /** Two for each lamp: slope (to the right, upwards) of the half vector of lamp and lens. */
  readonly halves: Float64Array;
}

/** @param x, y Pixels from the picture's centre, y down. */
export function patchLamps(stand: LampStand, x: number, y: number): PatchLamps {
  const { directions, distance, camera, pixelsPerMillimetre: scale } = stand;
  const rows = new Float64Array(directions.length * 3);
  const halves = new Float64Array(directions.length * 2);
  const px = scale === null ? 0 : x / scale;
  const py = scale === null ? 0 : -y / scale;
  const lens = unit(camera === null ? [0, 0, 1] : [-px, -py, camera]);
  directions.forEach((direction, l) => {
    const from = distance === null ? direction : direction.map((v) => v * distance);
    const way = distance === null ? from : [from[0] - px, from[1] - py, from[2]];
    const length = Math.hypot(way[0], way[1], way[2]);
    const strength = distance === null ? 1 : (distance / length) ** 2;
    const towards = [way[0] / length, way[1] / length, way[2] / length];
    for (let c = 0; c < 3; c += 1) rows[3 * l + c] = towards[c] * strength;
    const up = towards[2] + lens[2];
    halves[2 * l] = (towards[0] + lens[0]) / up;
    halves[2 * l + 1] = (towards[1] + lens[1]) / up;
  });
  return { rows, halves };
}

function unit([x, y, z]: readonly [number, number, number]): readonly [number, number, number] {
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}
