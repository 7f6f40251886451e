/**
 * Discrete Fourier transform of square complex pictures, for finding shifts by correlation.
 *
 * Correlation multiplies two spectra point by point and transforms back, so the order in which
 * a spectrum is stored does not matter as long as both use the same. The forward transform
 * therefore leaves its result transposed (columns as rows) and the inverse one starts from that
 * form, which saves half of the transpositions.
 *
 * References
 * - Cooley, J. W. and Tukey, J. W. (1965). An algorithm for the machine calculation of complex
 *   Fourier series. Mathematics of Computation 19(90), 297-301. doi:10.2307/2003354
 */

/** Tables for one size; holds no picture and can be shared. */
export interface FftPlan {
  /** Side of the square, a power of two. */
  readonly size: number;
  readonly cosines: Float64Array;
  readonly sines: Float64Array;
  /** Bit-reversed index of each index. */
  readonly reversed: Uint32Array;
}

/** @throws RangeError if the size is not a power of two of at least 4. */
export function planFft(size: number): FftPlan {
  const bits = Math.log2(size);
  if (!Number.isInteger(bits) || size < 4) {
    throw new RangeError(
      `A transform needs a power of two of at least 4 as its size; got ${size}.`,
    );
  }
  const cosines = new Float64Array(size / 2);
  const sines = new Float64Array(size / 2);
  for (let i = 0; i < size / 2; i += 1) {
    cosines[i] = Math.cos((2 * Math.PI * i) / size);
    sines[i] = Math.sin((2 * Math.PI * i) / size);
  }
  const reversed = new Uint32Array(size);
  for (let i = 1; i < size; i += 1) {
    reversed[i] = (reversed[i >> 1] >> 1) | (i & 1 ? size >> 1 : 0);
  }
  return { size, cosines, sines, reversed };
}

/**
 * Transform one row in place, without a scale factor in either direction.
 *
 * @param offset Index of the row's first sample.
 */
export function transformRow(
  plan: FftPlan,
  re: Float64Array,
  im: Float64Array,
  offset: number,
  inverse: boolean,
): void {
  const { size, reversed } = plan;
  for (let i = 1; i < size; i += 1) {
    const j = reversed[i];
    if (j <= i) continue;
    const r = re[offset + i];
    re[offset + i] = re[offset + j];
    re[offset + j] = r;
    const m = im[offset + i];
    im[offset + i] = im[offset + j];
    im[offset + j] = m;
  }
  firstStages(re, im, offset, size, inverse);
  let done = 4;
  // Stages go two at a time, which halves the passes over memory; an odd one goes first.
  if (Math.log2(size) % 2 === 1) {
    oneStage(plan, re, im, offset, done, inverse);
    done *= 2;
  }
  for (; done < size; done *= 4) twoStages(plan, re, im, offset, done, inverse);
}

/** Joins transforms of length `half` to transforms of twice the length. */
function oneStage(
  { size, cosines, sines }: FftPlan,
  re: Float64Array,
  im: Float64Array,
  offset: number,
  half: number,
  inverse: boolean,
): void {
  const length = 2 * half;
  for (let k = 0, t = 0; k < half; k += 1, t += size / length) {
    const c = cosines[t];
    const s = inverse ? sines[t] : -sines[t];
    for (let a = offset + k; a < offset + size; a += length) {
      const b = a + half;
      const xr = re[b] * c - im[b] * s;
      const xi = re[b] * s + im[b] * c;
      re[b] = re[a] - xr;
      im[b] = im[a] - xi;
      re[a] += xr;
      im[a] += xi;
    }
  }
}

/** Joins transforms of length `part` to transforms of four times the length. */
function twoStages(
  { size, cosines, sines }: FftPlan,
  re: Float64Array,
  im: Float64Array,
  offset: number,
  part: number,
  inverse: boolean,
): void {
  const length = 4 * part;
  const sign = inverse ? 1 : -1;
  for (let k = 0, t = 0; k < part; k += 1, t += size / length) {
    // Factors of the first stage and of the second.
    const c1 = cosines[2 * t];
    const s1 = sign * sines[2 * t];
    const c2 = cosines[t];
    const s2 = sign * sines[t];
    for (let a = offset + k; a < offset + size; a += length) {
      const b = a + part;
      const c = b + part;
      const d = c + part;
      const ur = re[b] * c1 - im[b] * s1;
      const ui = re[b] * s1 + im[b] * c1;
      const vr = re[d] * c1 - im[d] * s1;
      const vi = re[d] * s1 + im[d] * c1;
      const er = re[c] + vr;
      const ei = im[c] + vi;
      const fr = re[c] - vr;
      const fi = im[c] - vi;
      const gr = er * c2 - ei * s2;
      const gi = er * s2 + ei * c2;
      // A quarter turn further than the factor of the second stage.
      const hr = -sign * (fr * s2 + fi * c2);
      const hi = sign * (fr * c2 - fi * s2);
      const pr = re[a] + ur;
      const pi = im[a] + ui;
      const qr = re[a] - ur;
      const qi = im[a] - ui;
      re[a] = pr + gr;
      im[a] = pi + gi;
      re[c] = pr - gr;
      im[c] = pi - gi;
      re[b] = qr + hr;
      im[b] = qi + hi;
      re[d] = qr - hr;
      im[d] = qi - hi;
    }
  }
}

/** Butterflies of length 2 and 4, whose factors are 1, -1, i and -i. */
function firstStages(
  re: Float64Array,
  im: Float64Array,
  offset: number,
  size: number,
  inverse: boolean,
): void {
  const sign = inverse ? -1 : 1;
  for (let a = offset; a < offset + size; a += 4) {
    const r0 = re[a] + re[a + 1];
    const i0 = im[a] + im[a + 1];
    const r1 = re[a] - re[a + 1];
    const i1 = im[a] - im[a + 1];
    const r2 = re[a + 2] + re[a + 3];
    const i2 = im[a + 2] + im[a + 3];
    const r3 = sign * (im[a + 2] - im[a + 3]);
    const i3 = sign * (re[a + 3] - re[a + 2]);
    re[a] = r0 + r2;
    im[a] = i0 + i2;
    re[a + 1] = r1 + r3;
    im[a + 1] = i1 + i3;
    re[a + 2] = r0 - r2;
    im[a + 2] = i0 - i2;
    re[a + 3] = r1 - r3;
    im[a + 3] = i1 - i3;
  }
}

/**
 * Spectrum of a square complex picture, in place.
 *
 * @returns Nothing; `re` and `im` hold the spectrum transposed: the sample of frequency
 *   (row u, column v) is at `v * size + u`.
 */
export function forward2d(plan: FftPlan, re: Float64Array, im: Float64Array): void {
  transformRows(plan, re, im, false);
  transpose(re, plan.size);
  transpose(im, plan.size);
  transformRows(plan, re, im, false);
}

/** Picture from a spectrum as {@link forward2d} leaves it, in place, times size squared. */
export function inverse2d(plan: FftPlan, re: Float64Array, im: Float64Array): void {
  transformRows(plan, re, im, true);
  transpose(re, plan.size);
  transpose(im, plan.size);
  transformRows(plan, re, im, true);
}

function transformRows(plan: FftPlan, re: Float64Array, im: Float64Array, inverse: boolean): void {
  for (let y = 0; y < plan.size; y += 1) transformRow(plan, re, im, y * plan.size, inverse);
}

/** Side of the blocks that are transposed one after another, so that both stay in the cache. */
const block = 8;

function transpose(data: Float64Array, size: number): void {
  for (let top = 0; top < size; top += block) {
    const bottom = Math.min(size, top + block);
    for (let left = top; left < size; left += block) {
      const right = Math.min(size, left + block);
      for (let y = top; y < bottom; y += 1) {
        for (let x = Math.max(left, y + 1); x < right; x += 1) {
          const kept = data[y * size + x];
          data[y * size + x] = data[x * size + y];
          data[x * size + y] = kept;
        }
      }
    }
  }
}
