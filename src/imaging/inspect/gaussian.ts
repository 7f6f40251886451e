/** Gaussian smoothing in two passes, edges repeated: the first step of several measures. */
import type { Plane } from '../plane.ts';
import type { Samples } from './samples.ts';

/** Smooth with a standard deviation of `sigma` pixels; the kernel is cut at 4 sigma. */
export function smooth(plane: Samples, sigma: number): Plane {
  const { width, height } = plane;
  const kernel = gaussianKernel(sigma);
  const reach = (kernel.length - 1) / 2;
  const across = new Float32Array(width * height);
  // Each row is copied with its ends repeated, so that the sum needs no conditions.
  const line = new Float64Array(width + 2 * reach);
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    for (let x = 0; x < width; x += 1) line[x + reach] = plane.data[row + x];
    line.fill(line[reach], 0, reach);
    line.fill(line[reach + width - 1], reach + width);
    for (let x = 0; x < width; x += 1) {
      let sum = 0;
      for (let k = 0; k < kernel.length; k += 1) sum += kernel[k] * line[x + k];
      across[row + x] = sum;
    }
  }
  const data = new Float32Array(width * height);
  const sums = new Float64Array(width);
  for (let y = 0; y < height; y += 1) {
    sums.fill(0);
    for (let k = -reach; k <= reach; k += 1) {
      const from = Math.min(height - 1, Math.max(0, y + k)) * width;
      const weight = kernel[k + reach];
      for (let x = 0; x < width; x += 1) sums[x] += weight * across[from + x];
    }
    data.set(sums, y * width);
  }
  return { width, height, data };
}

function gaussianKernel(sigma: number): Float64Array {
  const reach = Math.max(1, Math.ceil(4 * sigma));
  const kernel = Float64Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-0.5 * ((k - reach) / sigma) ** 2),
  );
  const total = kernel.reduce((sum, w) => sum + w, 0);
  return kernel.map((w) => w / total);
}
