/** Gaussian smoothing of one channel, samples beyond the edge taken from the edge. */

/**
 * @param data Row-major, `width * height` samples; not changed.
 * @param sigma Standard deviation, pixels; the kernel is cut at three of them.
 * @returns A new array of the same size.
 */
export function gaussianBlur(
  data: Float32Array,
  width: number,
  height: number,
  sigma: number,
): Float32Array {
  const kernel = gaussianKernel(sigma);
  return blurColumns(blurRows(data, width, height, kernel), width, height, kernel);
}

/** Weights of the centre and of the samples 1, 2, ... away; all of them sum to 1. */
export function gaussianKernel(sigma: number): Float64Array {
  const radius = Math.ceil(3 * sigma);
  const kernel = Float64Array.from({ length: radius + 1 }, (_, i) =>
    Math.exp((-i * i) / (2 * sigma * sigma)),
  );
  const total = kernel.reduce((sum, v, i) => sum + (i === 0 ? v : 2 * v), 0);
  return kernel.map((v) => v / total);
}

function blurRows(
  data: Float32Array,
  width: number,
  height: number,
  kernel: Float64Array,
): Float32Array {
  const radius = kernel.length - 1;
  const result = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    for (let x = 0; x < width; x += 1) {
      let v = data[row + x] * kernel[0];
      if (x >= radius && x < width - radius) {
        const i = row + x;
        for (let j = 1; j <= radius; j += 1) v += kernel[j] * (data[i - j] + data[i + j]);
      } else {
        for (let j = 1; j <= radius; j += 1) {
          v +=
            kernel[j] * (data[row + Math.max(0, x - j)] + data[row + Math.min(width - 1, x + j)]);
        }
      }
      result[row + x] = v;
    }
  }
  return result;
}

function blurColumns(
  data: Float32Array,
  width: number,
  height: number,
  kernel: Float64Array,
): Float32Array {
  const result = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    for (let x = 0; x < width; x += 1) result[row + x] = data[row + x] * kernel[0];
    for (let j = 1; j < kernel.length; j += 1) {
      const above = Math.max(0, y - j) * width;
      const below = Math.min(height - 1, y + j) * width;
      const k = kernel[j];
      for (let x = 0; x < width; x += 1) result[row + x] += k * (data[above + x] + data[below + x]);
    }
  }
  return result;
}
