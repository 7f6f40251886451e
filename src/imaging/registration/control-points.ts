/**
 * The person's way out: points marked in both captures give a start that the gate then checks.
 *
 * References
 * - Hartley, R. I. (1997). In defense of the eight-point algorithm. IEEE Trans. PAMI 19(6),
 *   580-593. doi:10.1109/34.601246 (why points are centred and scaled first)
 */
import type { Homography } from '../conventions.ts';
import { compose, invert, normalise } from './homography.ts';
import { solveInPlace } from './linear-system.ts';

/** One point of the plate: pixels in the moving capture and in the base. */
export interface ControlPoint {
  readonly here: readonly [x: number, y: number];
  readonly base: readonly [x: number, y: number];
}

/**
 * The homography from base to moving that fits the points in the sense of least squares.
 *
 * @returns Null for fewer than four points, or points that lie on a line.
 */
export function homographyFromPoints(points: readonly ControlPoint[]): Homography | null {
  if (points.length < 4) return null;
  const toUnit = unitMap(points.map((p) => p.base));
  const toUnitHere = unitMap(points.map((p) => p.here));
  if (!toUnit || !toUnitHere) return null;
  const normal = new Float64Array(64);
  const right = new Float64Array(8);
  for (const p of points) {
    const [u, v] = apply(toUnit, p.base);
    const [x, y] = apply(toUnitHere, p.here);
    addEquation(normal, right, [u, v, 1, 0, 0, 0, -u * x, -v * x], x);
    addEquation(normal, right, [0, 0, 0, u, v, 1, -u * y, -v * y], y);
  }
  const h = solveInPlace(normal, right, 1e-9);
  if (!h) return null;
  const unit: Homography = [h[0], h[1], h[2], h[3], h[4], h[5], h[6], h[7], 1];
  const map = normalise(compose(compose(invert(toUnitHere), unit), toUnit));
  return map.every(Number.isFinite) ? map : null;
}

function addEquation(
  normal: Float64Array,
  right: Float64Array,
  row: readonly number[],
  value: number,
): void {
  for (let i = 0; i < 8; i += 1) {
    for (let j = 0; j < 8; j += 1) normal[i * 8 + j] += row[i] * row[j];
    right[i] += row[i] * value;
  }
}

/** Centres the points and makes their mean distance from the centre the square root of 2. */
function unitMap(points: readonly (readonly [number, number])[]): Homography | null {
  const cx = points.reduce((s, p) => s + p[0], 0) / points.length;
  const cy = points.reduce((s, p) => s + p[1], 0) / points.length;
  const mean = points.reduce((s, p) => s + Math.hypot(p[0] - cx, p[1] - cy), 0) / points.length;
  if (!(mean > 0)) return null;
  const k = Math.SQRT2 / mean;
  return [k, 0, -k * cx, 0, k, -k * cy, 0, 0, 1];
}

function apply(m: Homography, [x, y]: readonly [number, number]): readonly [number, number] {
  return [m[0] * x + m[2], m[4] * y + m[5]];
}
