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

/**
 * Rows: each is copied into a line with its edge repeated, so that the sum needs no conditions.
 * Three distances are summed at a time, which is several times faster than one.
 */
function blurRows(
  data: Float32Array,
  width: number,
  height: number,
  kernel: Float64Array,
): Float32Array {
  const radius = kernel.length - 1;
  const result = new Float32Array(width * height);
  const pad = radius + 2;
  const line = new Float32Array(width + 2 * pad);
  const sum = new Float64Array(width);
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    line.set(data.subarray(row, row + width), pad);
    line.fill(data[row], 0, pad);
    line.fill(data[row + width - 1], pad + width);
    for (let x = 0; x < width; x += 1) sum[x] = kernel[0] * line[pad + x];
    for (let j = 1; j <= radius; j += 3) {
      const [k1, k2, k3] = threeWeights(kernel, j);
      for (let x = 0, l = pad - j, r = pad + j; x < width; x += 1, l += 1, r += 1) {
        sum[x] +=
          k1 * (line[l] + line[r]) +
          k2 * (line[l - 1] + line[r + 1]) +
          k3 * (line[l - 2] + line[r + 2]);
      }
    }
    result.set(sum, row);
  }
  return result;
}

function threeWeights(kernel: Float64Array, j: number): readonly [number, number, number] {
  return [kernel[j], kernel[j + 1] ?? 0, kernel[j + 2] ?? 0];
}

function blurColumns(
  data: Float32Array,
  width: number,
  height: number,
  kernel: Float64Array,
): Float32Array {
  const result = new Float32Array(width * height);
  const sum = new Float64Array(width);
  const rowAt = (y: number) => Math.max(0, Math.min(height - 1, y)) * width;
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    for (let x = 0; x < width; x += 1) sum[x] = kernel[0] * data[row + x];
    for (let j = 1; j < kernel.length; j += 3) {
      const [k1, k2, k3] = threeWeights(kernel, j);
      const [a1, a2, a3] = [rowAt(y - j), rowAt(y - j - 1), rowAt(y - j - 2)];
      const [b1, b2, b3] = [rowAt(y + j), rowAt(y + j + 1), rowAt(y + j + 2)];
      for (let x = 0; x < width; x += 1) {
        sum[x] +=
          k1 * (data[a1 + x] + data[b1 + x]) +
          k2 * (data[a2 + x] + data[b2 + x]) +
          k3 * (data[a3 + x] + data[b3 + x]);
      }
    }
    result.set(sum, row);
  }
  return result;
}
