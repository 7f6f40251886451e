/**
 * Symmetric positive definite equations whose matrix is zero far from its diagonal, by Cholesky
 * factors within the band: the tiles of a mosaic meet only their neighbours in the grid.
 *
 * References
 * - Golub, G. H. and Van Loan, C. F. (2013). Matrix Computations, 4th ed., section 4.3.5 (band
 *   Cholesky). Johns Hopkins University Press.
 */

export interface BandedSystem {
  /** Add `value` at (i, j) and, off the diagonal, at (j, i). */
  readonly add: (i: number, j: number, value: number) => void;
  readonly right: Float64Array;
  /** The solution; the system is used up. Null where the matrix is not positive definite. */
  readonly solve: () => Float64Array | null;
}

/** @param band Largest distance from the diagonal of an element that is not zero. */
export function bandedSystem(size: number, band: number): BandedSystem {
  const width = band + 1;
  // Row i holds the elements (i, i - band) to (i, i).
  const rows = new Float64Array(size * width);
  const right = new Float64Array(size);
  return {
    right,
    add(i, j, value) {
      const [low, high] = i < j ? [i, j] : [j, i];
      if (high - low > band) throw new RangeError(`Element (${i}, ${j}) is outside of the band.`);
      rows[high * width + band - (high - low)] += value;
    },
    solve() {
      for (let i = 0; i < size; i += 1) {
        for (let j = Math.max(0, i - band); j <= i; j += 1) {
          let sum = rows[i * width + band - (i - j)];
          for (let k = Math.max(0, i - band, j - band); k < j; k += 1) {
            sum -= rows[i * width + band - (i - k)] * rows[j * width + band - (j - k)];
          }
          if (j < i) {
            rows[i * width + band - (i - j)] = sum / rows[j * width + band];
          } else {
            if (!(sum > 0)) return null;
            rows[i * width + band] = Math.sqrt(sum);
          }
        }
      }
      for (let i = 0; i < size; i += 1) {
        for (let k = Math.max(0, i - band); k < i; k += 1) {
          right[i] -= rows[i * width + band - (i - k)] * right[k];
        }
        right[i] /= rows[i * width + band];
      }
      for (let i = size - 1; i >= 0; i -= 1) {
        right[i] /= rows[i * width + band];
        for (let k = Math.max(0, i - band); k < i; k += 1) {
          right[k] -= rows[i * width + band - (i - k)] * right[i];
        }
      }
      return right;
    },
  };
}
