/**
 * What the frames of a many-light set have in common: the principal components of a pixel's
 * values under all lamps and in all channels. A pixel is then a few numbers, one for each
 * component, and each frame a mean and as many factors. One set for the three channels together
 * needs a third of the planes that one for each would (measured on near-neutral plates).
 *
 * References
 * - Pearson, K. (1901). On lines and planes of closest fit to systems of points in space.
 *   Philosophical Magazine 2(11), 559-572. doi:10.1080/14786440109462720
 */
import { type Domain, domainTable } from './light-domain.ts';
import type { LightSample } from './light-sample.ts';
import { symmetricEigen } from './symmetric-eigen.ts';

export interface Components {
  readonly domain: Domain;
  /** Lamps times 3; variable of lamp l and channel c is number `3 * l + c`. */
  readonly variables: number;
  readonly mean: Float64Array;
  /** Mean square along each component, largest first; all of them. */
  readonly energies: Float64Array;
  /** Unit vectors over the variables, as many as may be wanted. */
  readonly vectors: readonly Float64Array[];
}

export function learnComponents(sample: LightSample, domain: Domain, most: number): Components {
  const variables = sample.lamps * 3;
  const { pixels, codes } = sample;
  const table = domainTable(domain);
  const mean = new Float64Array(variables);
  for (let p = 0; p < pixels; p += 1) {
    for (let j = 0; j < variables; j += 1) mean[j] += table[codes[p * variables + j]];
  }
  for (let j = 0; j < variables; j += 1) mean[j] /= pixels;
  const covariance = centredProducts(sample, table, mean);
  const { values, vectors } = symmetricEigen(covariance, variables);
  return { domain, variables, mean, energies: values, vectors: vectors.slice(0, most) };
}

/** Mean products of all pairs of variables about their means, row-major. */
function centredProducts(
  { lamps, pixels, codes }: LightSample,
  table: Float64Array,
  mean: Float64Array,
): Float64Array {
  const n = lamps * 3;
  const products = new Float64Array(n * n);
  // Four pixels at once: each sum is loaded and stored a quarter as often.
  const x = Array.from({ length: 4 }, () => new Float64Array(n));
  for (let p = 0; p < pixels; p += 4) {
    for (let q = 0; q < 4; q += 1) {
      for (let j = 0; j < n; j += 1) {
        x[q][j] = p + q < pixels ? table[codes[(p + q) * n + j]] - mean[j] : 0;
      }
    }
    addProducts(products, x[0], x[1], x[2], x[3]);
  }
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      products[i * n + j] /= pixels;
      products[j * n + i] = products[i * n + j];
    }
  }
  return products;
}

function addProducts(
  products: Float64Array,
  a: Float64Array,
  b: Float64Array,
  c: Float64Array,
  d: Float64Array,
): void {
  const n = a.length;
  for (let i = 0; i < n; i += 1) {
    const [ai, bi, ci, di] = [a[i], b[i], c[i], d[i]];
    const at = i * n;
    for (let j = 0; j <= i; j += 1) {
      products[at + j] += ai * a[j] + bi * b[j] + ci * c[j] + di * d[j];
    }
  }
}

/** Mean square per variable that is lost when only the first `kept` components are. */
export function lostEnergy({ energies, variables }: Components, kept: number): number {
  let sum = 0;
  for (let k = kept; k < energies.length; k += 1) sum += Math.max(0, energies[k]);
  return sum / variables;
}
