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
  if (kernel.length <= 4) {
    const [k0, k1 = 0, k2 = 0, k3 = 0] = kernel;
    const near = [k0, k1, k2, k3] as const;
    return blurColumnsNear(blurRowsNear(data, width, height, near), width, height, near);
  }
  // Along the rows, and with rows and columns exchanged once more: twice is the way round.
  return blurredAcross(blurredAcross(data, width, height, kernel), height, width, kernel);
}

/** Weights of a kernel that reaches no further than three samples, which one sum holds. */
type NearKernel = readonly [k0: number, k1: number, k2: number, k3: number];

function blurRowsNear(
  data: Float32Array,
  width: number,
  height: number,
  [k0, k1, k2, k3]: NearKernel,
): Float32Array {
  const result = new Float32Array(width * height);
  const line = new Float32Array(width + 6);
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    line.fill(data[row], 0, 3);
    line.set(data.subarray(row, row + width), 3);
    line.fill(data[row + width - 1], width + 3);
    for (let x = 0, c = 3; x < width; x += 1, c += 1) {
      result[row + x] =
        k0 * line[c] +
        (k1 * (line[c - 1] + line[c + 1]) +
          k2 * (line[c - 2] + line[c + 2]) +
          k3 * (line[c - 3] + line[c + 3]));
    }
  }
  return result;
}

function blurColumnsNear(
  data: Float32Array,
  width: number,
  height: number,
  [k0, k1, k2, k3]: NearKernel,
): Float32Array {
  const result = new Float32Array(width * height);
  const rowAt = (y: number) => Math.max(0, Math.min(height - 1, y)) * width;
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    const [a1, a2, a3] = [rowAt(y - 1), rowAt(y - 2), rowAt(y - 3)];
    const [b1, b2, b3] = [rowAt(y + 1), rowAt(y + 2), rowAt(y + 3)];
    for (let x = 0; x < width; x += 1) {
      result[row + x] =
        k0 * data[row + x] +
        (k1 * (data[a1 + x] + data[b1 + x]) +
          k2 * (data[a2 + x] + data[b2 + x]) +
          k3 * (data[a3 + x] + data[b3 + x]));
    }
  }
  return result;
}

/** Variances of the mean of two samples and of linear interpolation between every second one. */
const halvingVariance = 0.25 + 2 / 3;

/**
 * The same for a smooth picture and a large kernel: smoothed at half size, where a quarter of
 * the samples and half of the kernel are left, and interpolated.
 *
 * @param sigma At least 2 pixels.
 */
export function wideBlur(
  data: Float32Array,
  width: number,
  height: number,
  sigma: number,
): Float32Array {
  const [w, h] = [(width + 1) >> 1, (height + 1) >> 1];
  const small = new Float32Array(w * h);
  for (let y = 0; y < h; y += 1) {
    const above = 2 * y * width;
    const below = Math.min(height - 1, 2 * y + 1) * width;
    for (let x = 0; x < w; x += 1) {
      const [l, r] = [2 * x, Math.min(width - 1, 2 * x + 1)];
      small[y * w + x] =
        0.25 * (data[above + l] + data[above + r] + data[below + l] + data[below + r]);
    }
  }
  const smooth = gaussianBlur(small, w, h, Math.sqrt(sigma * sigma - halvingVariance) / 2);
  return twiceAsLarge(smooth, w, h, width, height);
}

/** Each sample lies between two of the small picture, a quarter of the way from the nearer one. */
function twiceAsLarge(
  small: Float32Array,
  w: number,
  h: number,
  width: number,
  height: number,
): Float32Array {
  const result = new Float32Array(width * height);
  const line = new Float32Array(w + 2);
  for (let y = 0; y < height; y += 1) {
    const near = (y >> 1) * w;
    const far = Math.min(h - 1, Math.max(0, (y >> 1) + (y & 1 ? 1 : -1))) * w;
    for (let x = 0; x < w; x += 1) line[x + 1] = 0.75 * small[near + x] + 0.25 * small[far + x];
    line[0] = line[1];
    line[w + 1] = line[w];
    const row = y * width;
    for (let x = 0; x < width; x += 1) {
      const i = (x >> 1) + 1;
      result[row + x] = 0.75 * line[i] + 0.25 * line[x & 1 ? i + 1 : i - 1];
    }
  }
  return result;
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

/** Rows that are exchanged for columns together, so that each write meets its neighbours. */
const together = 8;

/** Every row smoothed along itself, and the result transposed: column x is row x of it. */
function blurredAcross(
  data: Float32Array,
  width: number,
  height: number,
  kernel: Float64Array,
): Float32Array {
  const reach = kernel.length - 1;
  const smooth = reach <= 6 ? alongFar : alongAny;
  const pad = Math.max(6, reach);
  const line = new Float64Array(width + 2 * pad);
  const lines = Array.from({ length: together }, () => new Float64Array(width));
  const result = new Float32Array(width * height);
  for (let top = 0; top < height; top += together) {
    const rows = Math.min(together, height - top);
    for (let r = 0; r < rows; r += 1) {
      const row = (top + r) * width;
      // The edge is repeated, so that the sums need no conditions.
      line.set(data.subarray(row, row + width), pad);
      line.fill(line[pad], 0, pad);
      line.fill(line[pad + width - 1], pad + width);
      smooth(line, pad, kernel, lines[r]);
    }
    for (let r = 0; r < rows; r += 1) {
      const from = lines[r];
      for (let x = 0, to = top + r; x < width; x += 1, to += height) result[to] = from[x];
    }
  }
  return result;
}

/** Smooths a line; sample 0 of `out` is about sample `first` of it. */
type Along = (line: Float64Array, first: number, kernel: Float64Array, out: Float64Array) => void;

/** Kernels that reach no further than six samples: each sample is read once and handed on. */
const alongFar: Along = (line, at, [k0, k1, k2, k3, k4, k5 = 0, k6 = 0], out) => {
  let [a, b, c] = [line[at - 6], line[at - 5], line[at - 4]];
  let [d, e, f] = [line[at - 3], line[at - 2], line[at - 1]];
  let [g, h, i] = [line[at], line[at + 1], line[at + 2]];
  let [j, k, l] = [line[at + 3], line[at + 4], line[at + 5]];
  for (let x = 0, next = at + 6; x < out.length; x += 1, next += 1) {
    const m = line[next];
    const inner = k1 * (f + h) + k2 * (e + i) + k3 * (d + j);
    out[x] = k0 * g + inner + (k4 * (c + k) + k5 * (b + l) + k6 * (a + m));
    a = b;
    b = c;
    c = d;
    d = e;
    e = f;
    f = g;
    g = h;
    h = i;
    i = j;
    j = k;
    k = l;
    l = m;
  }
};

const alongAny: Along = (line, first, kernel, out) => {
  for (let x = 0; x < out.length; x += 1) out[x] = kernel[0] * line[first + x];
  for (let j = 1; j < kernel.length; j += 1) {
    const weight = kernel[j];
    for (let x = 0, l = first - j, r = first + j; x < out.length; x += 1, l += 1, r += 1) {
      out[x] += weight * (line[l] + line[r]);
    }
  }
};
