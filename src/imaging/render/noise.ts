/**
 * Smooth random fields over the plate, in the plate's own millimetres: haze, undulation,
 * polishing lines and the grain of the surface are all made of them.
 *
 * References
 * - Lattice values joined by a quintic: Perlin, K. (2002). Improving noise. ACM Trans. Graph.
 *   21(3), 681-682. doi:10.1145/566654.566636 (values on the lattice instead of gradients).
 */
import { hashAt } from './seeded.ts';

const toSigned = 2 / 4294967295;

/** Smooth noise, -1 to 1, mean 0, one feature about each lattice step. */
export function smoothNoise(x: number, y: number, seed: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const fx = x - ix;
  const fy = y - iy;
  const u = fx * fx * fx * (fx * (fx * 6 - 15) + 10);
  const v = fy * fy * fy * (fy * (fy * 6 - 15) + 10);
  const a = hashAt(ix, iy, seed) * toSigned - 1;
  const b = hashAt(ix + 1, iy, seed) * toSigned - 1;
  const c = hashAt(ix, iy + 1, seed) * toSigned - 1;
  const d = hashAt(ix + 1, iy + 1, seed) * toSigned - 1;
  const top = a + (b - a) * u;
  return top + (c + (d - c) * u - top) * v;
}

/** Sum of octaves of {@link smoothNoise}, each of half the size and half the strength. */
export function cloudyNoise(x: number, y: number, seed: number, octaves: number): number {
  let sum = 0;
  let strength = 1;
  let total = 0;
  for (let i = 0; i < octaves; i += 1) {
    const size = 2 ** i;
    sum += strength * smoothNoise(x * size + 17.3 * i, y * size - 9.1 * i, seed + i);
    total += strength;
    strength *= 0.5;
  }
  return sum / total;
}

/**
 * Fill a row with a slow field: evaluated at every `step`-th place and joined by straight lines,
 * which is exact to the eye where the field's features are many steps wide.
 */
export function fillSlowly(out: Float64Array, step: number, at: (index: number) => number): void {
  const last = out.length - 1;
  let left = at(0);
  for (let start = 0; start < last; start += step) {
    const end = Math.min(start + step, last);
    const right = at(end);
    const slope = (right - left) / (end - start);
    for (let i = start; i < end; i += 1) out[i] = left + slope * (i - start);
    left = right;
  }
  out[last] = left;
}

/**
 * Fill a row with {@link smoothNoise} at places that follow one another closely: what the last
 * place found out about its cell is used again.
 *
 * @param scale Lattice steps per unit of `x` and `y`.
 */
export function fillWithNoise(
  out: Float64Array,
  x: Float64Array,
  y: Float64Array,
  scale: number,
  seed: number,
): void {
  let cellX = NaN;
  let cellY = NaN;
  let [a, b, c, d] = [0, 0, 0, 0];
  for (let i = 0; i < out.length; i += 1) {
    const px = x[i] * scale;
    const py = y[i] * scale;
    const ix = Math.floor(px);
    const iy = Math.floor(py);
    if (ix !== cellX || iy !== cellY) {
      const next = iy === cellY && ix === cellX + 1;
      a = next ? b : hashAt(ix, iy, seed) * toSigned - 1;
      c = next ? d : hashAt(ix, iy + 1, seed) * toSigned - 1;
      b = hashAt(ix + 1, iy, seed) * toSigned - 1;
      d = hashAt(ix + 1, iy + 1, seed) * toSigned - 1;
      cellX = ix;
      cellY = iy;
    }
    const fx = px - ix;
    const fy = py - iy;
    const u = fx * fx * fx * (fx * (fx * 6 - 15) + 10);
    const v = fy * fy * fy * (fy * (fy * 6 - 15) + 10);
    const top = a + (b - a) * u;
    out[i] = top + (c + (d - c) * u - top) * v;
  }
}
