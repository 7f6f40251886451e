/**
 * The small projective map that fits displacements measured at many points, by least squares.
 */
import type { Homography } from '../conventions.ts';
import { fromUnitFrame, type Freedom } from './gauss-newton-step.ts';
import { solveInPlace } from './linear-system.ts';

/** A displacement that was measured at a point, with its weight. */
export interface Measured {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly weight: number;
}

/** Strength of the pull towards no shear and no perspective, per unit of weight. */
export interface Pull {
  readonly shear: number;
  readonly perspective: number;
}

const firm = 1e9;
/** By how many parameters a map has. */
export const pulls: Readonly<Record<Freedom, Pull>> = {
  4: { shear: firm, perspective: firm },
  6: { shear: 30, perspective: firm },
  8: { shear: 3, perspective: 10 },
};

/** No pull at all, for tiles that speak clearly. */
export const freely: Pull = { shear: 0, perspective: 0 };

/** A small map, and the radial term beside it: displacements of both add up. */
export interface Increment {
  readonly map: Homography;
  /** Of a `Radial` about the middle of the frame; 0 where none was fitted. */
  readonly coefficient: number;
}

/**
 * Least-squares increment of a map; null when the points do not fix it.
 *
 * @param bent Whether a radial term is fitted as well.
 */
export function fitIncrement(
  points: readonly Measured[],
  width: number,
  height: number,
  pull: Pull,
  bent = false,
): Increment | null {
  const s = width / 2;
  const n = bent ? 9 : 8;
  const corner = 1 + (height / width) ** 2;
  const normal = new Float64Array(n * n);
  const right = new Float64Array(n);
  let total = 0;
  for (const { x, y, dx, dy, weight } of points) {
    const u = (x - (width - 1) / 2) / s;
    const v = (y - (height - 1) / 2) / s;
    const r = (s * (u * u + v * v)) / corner;
    total += weight;
    const across = [s * u, s * v, s, 0, 0, 0, -s * u * u, -s * u * v, r * u];
    const down = [0, 0, 0, s * u, s * v, s, -s * u * v, -s * v * v, r * v];
    addRow(normal, right, weight, dx, across.slice(0, n));
    addRow(normal, right, weight, dy, down.slice(0, n));
  }
  const shear = pull.shear * (pull.shear < firm ? total : 1);
  const perspective = pull.perspective * total;
  for (const [i, j, sign] of [
    [0, 4, -1],
    [1, 3, 1],
  ] as const) {
    normal[i * n + i] += shear;
    normal[j * n + j] += shear;
    normal[i * n + j] += sign * shear;
    normal[j * n + i] += sign * shear;
  }
  for (const p of [6, 7]) normal[p * n + p] += perspective;
  for (let p = 0; p < n; p += 1) normal[p * n + p] *= 1 + 1e-9;
  const z = solveInPlace(normal, right);
  if (!z || !z.every(Number.isFinite)) return null;
  const unit: Homography = [1 + z[0], z[1], z[2], z[3], 1 + z[4], z[5], z[6], z[7], 1];
  return { map: fromUnitFrame(unit, width, height), coefficient: bent ? z[8] : 0 };
}

function addRow(
  normal: Float64Array,
  right: Float64Array,
  weight: number,
  value: number,
  row: readonly number[],
): void {
  const n = row.length;
  for (let i = 0; i < n; i += 1) {
    if (row[i] === 0) continue;
    for (let j = 0; j < n; j += 1) normal[i * n + j] += weight * row[i] * row[j];
    right[i] += weight * row[i] * value;
  }
}
