/**
 * A dark disc on a lighter ground: the outline of a black ball, where no lamp is known by whose
 * highlights its circle could be told.
 *
 * References
 * - Kasa, I. (1976). A circle fitting procedure and its error analysis. IEEE Trans. Instrum.
 *   Meas. 25, 8-14. doi:10.1109/TIM.1976.6312298 (the linear fit; sound on a whole outline)
 */
import type { Estimate } from '../plane.ts';
import type { Circle } from './ball-highlight.ts';

export interface Disc extends Circle {
  /** Root mean square distance of the outline from the circle, pixels. */
  readonly residual: number;
}

const rays = 180;
/** Rays that must meet an edge near the circle. */
const share = 0.6;
/** The outline may depart from a circle by so much of the radius. */
const roundness = 0.03;

/**
 * @param luminance Linear, row-major with `width` columns.
 * @param start Circle to within a fifth of its radius.
 */
export function darkDisc(
  luminance: ArrayLike<number>,
  width: number,
  start: Circle,
): Estimate<Disc> {
  let edge = outline(luminance, width, start);
  let circle: Circle = start;
  for (let round = 0; round < 6; round += 1) {
    if (edge.length < share * rays) return { ok: false, reason: 'its outline is not to be seen' };
    const fitted = kasa(edge);
    if (!fitted) return { ok: false, reason: 'its outline is no circle' };
    circle = fitted;
    // The second round looks along the rays of the better circle.
    if (round === 0) edge = outline(luminance, width, circle);
    const misses = edge.map(([x, y]) =>
      Math.abs(Math.hypot(x - circle.x, y - circle.y) - circle.radius),
    );
    const middle = [...misses].sort((a, b) => a - b)[misses.length >> 1];
    const limit = Math.max(0.2, 3 * 1.4826 * middle);
    edge = edge.filter((_, i) => misses[i] <= limit);
  }
  const square = edge.reduce(
    (sum, [x, y]) => sum + (Math.hypot(x - circle.x, y - circle.y) - circle.radius) ** 2,
    0,
  );
  const residual = Math.sqrt(square / edge.length);
  if (edge.length < share * rays || residual > roundness * circle.radius) {
    return { ok: false, reason: 'its outline is no circle' };
  }
  return { ok: true, value: { ...circle, residual } };
}

/** Where the light rises half-way from the disc's to the ground's, along rays from the centre. */
function outline(
  luminance: ArrayLike<number>,
  width: number,
  { x, y, radius }: Circle,
): [number, number][] {
  const height = luminance.length / width;
  const sample = (px: number, py: number): number => {
    const [left, top] = [Math.floor(px), Math.floor(py)];
    if (left < 0 || top < 0 || left >= width - 1 || top >= height - 1) return NaN;
    const at = top * width + left;
    const [u, v] = [px - left, py - top];
    return (
      (1 - v) * ((1 - u) * luminance[at] + u * luminance[at + 1]) +
      v * ((1 - u) * luminance[at + width] + u * luminance[at + width + 1])
    );
  };
  const found: [number, number][] = [];
  const step = Math.min(0.5, radius / 40);
  for (let k = 0; k < rays; k += 1) {
    const [c, s] = [Math.cos((2 * Math.PI * k) / rays), Math.sin((2 * Math.PI * k) / rays)];
    const along = (r: number): number => sample(x + r * c, y + r * s);
    const inside = along(0.75 * radius);
    const outside = along(1.25 * radius + 1);
    // NaN, beyond the picture, is no edge either.
    if (!(outside > 1.5 * inside + 0.002)) continue;
    const half = (inside + outside) / 2;
    let before = inside;
    for (let r = 0.75 * radius + step; r <= 1.25 * radius + 1; r += step) {
      const here = along(r);
      if (before < half && here >= half) {
        const at = r - step + (step * (half - before)) / (here - before);
        found.push([x + at * c, y + at * s]);
        break;
      }
      before = here;
    }
  }
  return found;
}

/** x^2 + y^2 = 2 a x + 2 b y + c by linear least squares, about the mean of the points. */
function kasa(points: readonly (readonly [number, number])[]): Circle | null {
  const n = points.length;
  const mx = points.reduce((sum, [x]) => sum + x, 0) / n;
  const my = points.reduce((sum, [, y]) => sum + y, 0) / n;
  let [uu, uv, vv, uz, vz, zz] = [0, 0, 0, 0, 0, 0];
  for (const [x, y] of points) {
    const [u, v] = [x - mx, y - my];
    const z = u * u + v * v;
    uu += u * u;
    uv += u * v;
    vv += v * v;
    uz += u * z;
    vz += v * z;
    zz += z;
  }
  const determinant = uu * vv - uv * uv;
  if (!(determinant > 1e-9 * zz * zz)) return null;
  const a = (uz * vv - vz * uv) / determinant / 2;
  const b = (vz * uu - uz * uv) / determinant / 2;
  return { x: mx + a, y: my + b, radius: Math.sqrt(zz / n + a * a + b * b) };
}
