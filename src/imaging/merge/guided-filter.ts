/**
 * A smooth version of a plane that keeps its edges: in each window the plane is explained by a
 * straight line of itself, so that a step stays a step and a texture becomes its mean.
 *
 * References
 * - He, K., Sun, J. and Tang, X. (2013). Guided image filtering. IEEE Trans. PAMI 35(6),
 *   1397-1409. doi:10.1109/TPAMI.2012.213 (section 3, with the plane as its own guide).
 * - He, K. and Sun, J. (2015). Fast guided filter. arXiv:1505.00996 (coefficients found on a
 *   smaller plane).
 */
import type { Plane } from '../plane.ts';

/** Coefficients of the lines: the smooth plane is `slope * value + offset`, at the plane's size. */
export interface GuidedLines {
  readonly slope: Plane;
  readonly offset: Plane;
}

/**
 * @param radius Half the window, samples. @param epsilon Variance below which a texture is smoothed.
 */
export function guidedLines(plane: Plane, radius: number, epsilon: number): GuidedLines {
  const { width, height, data } = plane;
  const mean = boxMean(data, width, height, radius);
  const squares = boxMean(
    data.map((v) => v * v),
    width,
    height,
    radius,
  );
  const slope = new Float32Array(data.length);
  const offset = new Float32Array(data.length);
  for (let i = 0; i < data.length; i += 1) {
    const variance = Math.max(0, squares[i] - mean[i] * mean[i]);
    slope[i] = variance / (variance + epsilon);
    offset[i] = mean[i] * (1 - slope[i]);
  }
  return {
    slope: { width, height, data: boxMean(slope, width, height, radius) },
    offset: { width, height, data: boxMean(offset, width, height, radius) },
  };
}

/** The smooth plane itself. */
export function guidedSmooth(plane: Plane, radius: number, epsilon: number): Plane {
  const { slope, offset } = guidedLines(plane, radius, epsilon);
  const data = plane.data.map((v, i) => slope.data[i] * v + offset.data[i]);
  return { ...plane, data };
}

/** Mean over a square window, cut at the borders, in time that does not depend on its size. */
export function boxMean(
  data: Float32Array,
  width: number,
  height: number,
  radius: number,
): Float32Array {
  const across = new Float32Array(data.length);
  for (let y = 0; y < height; y += 1) {
    runningMean(data, across, y * width, 1, width, radius);
  }
  const out = new Float32Array(data.length);
  for (let x = 0; x < width; x += 1) runningMean(across, out, x, width, height, radius);
  return out;
}

function runningMean(
  from: Float32Array,
  to: Float32Array,
  start: number,
  step: number,
  length: number,
  radius: number,
): void {
  let [sum, count] = [0, 0];
  for (let i = 0; i < Math.min(radius, length); i += 1) {
    sum += from[start + i * step];
    count += 1;
  }
  for (let i = 0; i < length; i += 1) {
    if (i + radius < length) {
      sum += from[start + (i + radius) * step];
      count += 1;
    }
    if (i - radius > 0) {
      sum -= from[start + (i - radius - 1) * step];
      count -= 1;
    }
    to[start + i * step] = sum / count;
  }
}
