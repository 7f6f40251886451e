/**
 * The lens's blur, row by row: a separable normal kernel over a ring of rows, so that memory
 * follows the width of the picture and the blur's reach only.
 */

export type Channels = readonly [Float64Array, Float64Array, Float64Array];

export function emptyChannels(length: number): Channels {
  return [new Float64Array(length), new Float64Array(length), new Float64Array(length)];
}

/** Weights of a normal kernel with the given standard deviation, pixels; their sum is 1. */
export function normalKernel(sigma: number): Float64Array {
  if (sigma < 0.2) return Float64Array.of(1);
  const reach = Math.ceil(3 * sigma);
  const kernel = Float64Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-0.5 * ((i - reach) / sigma) ** 2),
  );
  const sum = kernel.reduce((a, b) => a + b, 0);
  return kernel.map((weight) => weight / sum);
}

/**
 * A blur that takes the rows of a sharp picture one after the other, from `-reach` to
 * `height + reach - 1` (the plate goes on above and below it), each with `reach` more columns
 * on either side, where `reach` is half of the kernel's length.
 *
 * @param take Receives each blurred row; the arrays are used again.
 * @returns What is to be called for each row.
 */
export function rowBlur(
  width: number,
  height: number,
  kernel: Float64Array,
  take: (y: number, row: Channels) => void,
): (y: number, line: Channels) => void {
  const size = kernel.length;
  const reach = (size - 1) / 2;
  const [along, down] = size === 5 ? [blurAlongFive, blurDownFive] : [blurAlong, blurDown];
  const ring = Array.from({ length: size }, () => emptyChannels(width));
  const result = emptyChannels(width);
  return (y, line) => {
    const across = ring[(y + reach) % size];
    for (let c = 0; c < 3; c += 1) along(line[c], across[c], kernel);
    const centre = y - reach;
    if (centre < 0 || centre >= height) return;
    for (let c = 0; c < 3; c += 1) {
      const lines = ring.map((_, k) => ring[(centre + k) % size][c]);
      down(lines, result[c], kernel);
    }
    take(centre, result);
  };
}

/** The kernel of a sharp lens: five samples, in one sum. */
function blurDownFive(
  lines: readonly Float64Array[],
  out: Float64Array,
  kernel: Float64Array,
): void {
  const [a, b, c, d, e] = lines;
  const [k2, k1, k0] = kernel;
  for (let x = 0; x < out.length; x += 1) {
    out[x] = k0 * c[x] + k1 * (b[x] + d[x]) + k2 * (a[x] + e[x]);
  }
}

function blurDown(lines: readonly Float64Array[], out: Float64Array, kernel: Float64Array): void {
  const reach = (kernel.length - 1) / 2;
  const centre = lines[reach];
  const middle = kernel[reach];
  for (let x = 0; x < out.length; x += 1) out[x] = middle * centre[x];
  // The kernel is even: two rows at a time.
  for (let k = 0; k < reach; k += 1) {
    const above = lines[k];
    const below = lines[2 * reach - k];
    const weight = kernel[k];
    for (let x = 0; x < out.length; x += 1) out[x] += weight * (above[x] + below[x]);
  }
}

/** The same along a line; each sample is read once and handed on. */
function blurAlongFive(line: Float64Array, out: Float64Array, kernel: Float64Array): void {
  const [k2, k1, k0] = kernel;
  let [a, b, c, d] = line;
  for (let x = 0; x < out.length; x += 1) {
    const e = line[x + 4];
    out[x] = k0 * c + k1 * (b + d) + k2 * (a + e);
    a = b;
    b = c;
    c = d;
    d = e;
  }
}

/** `out` has the length of `line` less twice the kernel's reach. */
function blurAlong(line: Float64Array, out: Float64Array, kernel: Float64Array): void {
  const reach = (kernel.length - 1) / 2;
  const middle = kernel[reach];
  for (let x = 0; x < out.length; x += 1) out[x] = middle * line[x + reach];
  for (let k = 0; k < reach; k += 1) {
    const other = 2 * reach - k;
    const weight = kernel[k];
    for (let x = 0; x < out.length; x += 1) out[x] += weight * (line[x + k] + line[x + other]);
  }
}
