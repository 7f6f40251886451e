/** Gaussian smoothing in two passes, edges repeated: the first step of several measures. */
import type { Plane } from '../plane.ts';
import type { Samples } from './samples.ts';

/** Smooth with a standard deviation of `sigma` pixels; the kernel is cut at 4 sigma. */
export function smooth(plane: Samples, sigma: number): Plane {
  const { width, height } = plane;
  const kernel = gaussianKernel(sigma);
  const reach = (kernel.length - 1) / 2;
  const across = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      let sum = 0;
      for (let k = -reach; k <= reach; k += 1) {
        const from = Math.min(width - 1, Math.max(0, x + k));
        sum += kernel[k + reach] * plane.data[y * width + from];
      }
      across[y * width + x] = sum;
    }
  }
  const data = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let k = -reach; k <= reach; k += 1) {
      const from = Math.min(height - 1, Math.max(0, y + k)) * width;
      const weight = kernel[k + reach];
      for (let x = 0; x < width; x += 1) data[y * width + x] += weight * across[from + x];
    }
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
