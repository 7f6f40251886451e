/**
 * All eigenvalues and eigenvectors of a symmetric matrix, by reflections to three diagonals and
 * implicit QL steps.
 *
 * References
 * - Martin, R. S., Reinsch, C. and Wilkinson, J. H. (1968). Householder's tridiagonalization of
 *   a symmetric matrix. Numerische Mathematik 11, 181-195. doi:10.1007/BF02161841
 * - Dubrulle, A., Martin, R. S. and Wilkinson, J. H. (1968). The implicit QL algorithm.
 *   Numerische Mathematik 12, 377-383. doi:10.1007/BF02165404
 */

export interface Eigen {
  /** Largest first. */
  readonly values: Float64Array;
  /** Row i is the unit eigenvector of value i; its largest element is positive. */
  readonly vectors: readonly Float64Array[];
}

/** @param matrix Row-major n x n, symmetric; not changed. */
export function symmetricEigen(matrix: ArrayLike<number>, n: number): Eigen {
  const z = Array.from({ length: n }, (_, i) =>
    Float64Array.from({ length: n }, (_, j) => matrix[i * n + j]),
  );
  const diagonal = new Float64Array(n);
  const beside = new Float64Array(n);
  tridiagonalise(z, diagonal, beside);
  diagonalise(z, diagonal, beside);
  const order = Array.from(diagonal, (_, i) => i).sort((a, b) => diagonal[b] - diagonal[a]);
  return {
    values: Float64Array.from(order, (i) => diagonal[i]),
    vectors: order.map((i) => signed(Float64Array.from(z, (row) => row[i]))),
  };
}

/** An eigenvector's sign is free; this makes it the same everywhere. */
function signed(vector: Float64Array): Float64Array {
  const largest = vector.reduce((most, v) => (Math.abs(v) > Math.abs(most) ? v : most), 0);
  return largest < 0 ? vector.map((v) => -v) : vector;
}

/** Householder reflections from the last row up; z becomes the matrix that they make together. */
function tridiagonalise(z: Float64Array[], d: Float64Array, e: Float64Array): void {
  const n = d.length;
  for (let i = n - 1; i > 0; i -= 1) {
    const row = z[i];
    let scale = 0;
    for (let k = 0; k < i; k += 1) scale += Math.abs(row[k]);
    if (i === 1 || scale === 0) {
      e[i] = row[i - 1];
      d[i] = 0;
      continue;
    }
    let h = 0;
    for (let k = 0; k < i; k += 1) {
      row[k] /= scale;
      h += row[k] * row[k];
    }
    const g = row[i - 1] > 0 ? -Math.sqrt(h) : Math.sqrt(h);
    e[i] = scale * g;
    h -= row[i - 1] * g;
    row[i - 1] -= g;
    d[i] = h;
    reflectRows(z, e, i, h);
  }
  d[0] = 0;
  e[0] = 0;
  for (let i = 0; i < n; i += 1) gather(z, d, i);
}

function reflectRows(z: Float64Array[], e: Float64Array, i: number, h: number): void {
  const row = z[i];
  let f = 0;
  for (let j = 0; j < i; j += 1) {
    z[j][i] = row[j] / h;
    let g = 0;
    for (let k = 0; k <= j; k += 1) g += z[j][k] * row[k];
    for (let k = j + 1; k < i; k += 1) g += z[k][j] * row[k];
    e[j] = g / h;
    f += e[j] * row[j];
  }
  const half = f / (h + h);
  for (let j = 0; j < i; j += 1) {
    const a = row[j];
    e[j] -= half * a;
    for (let k = 0; k <= j; k += 1) z[j][k] -= a * e[k] + e[j] * row[k];
  }
}

function gather(z: Float64Array[], d: Float64Array, i: number): void {
  if (d[i] !== 0) {
    for (let j = 0; j < i; j += 1) {
      let g = 0;
      for (let k = 0; k < i; k += 1) g += z[i][k] * z[k][j];
      for (let k = 0; k < i; k += 1) z[k][j] -= g * z[k][i];
    }
  }
  d[i] = z[i][i];
  z[i][i] = 1;
  for (let j = 0; j < i; j += 1) {
    z[j][i] = 0;
    z[i][j] = 0;
  }
}

/** Implicit QL until nothing is left beside the diagonal. */
function diagonalise(z: Float64Array[], d: Float64Array, e: Float64Array): void {
  const n = d.length;
  e.copyWithin(0, 1);
  e[n - 1] = 0;
  for (let l = 0; l < n; l += 1) {
    for (let round = 0; ; round += 1) {
      let m = l;
      while (m < n - 1) {
        const size = Math.abs(d[m]) + Math.abs(d[m + 1]);
        if (Math.abs(e[m]) <= Number.EPSILON * size) break;
        m += 1;
      }
      if (m === l) break;
      if (round === 60) throw new RangeError('The matrix holds a number that is not finite.');
      chase(z, d, e, l, m);
    }
  }
}

function chase(z: Float64Array[], d: Float64Array, e: Float64Array, l: number, m: number): void {
  let g = (d[l + 1] - d[l]) / (2 * e[l]);
  let r = Math.hypot(g, 1);
  g = d[m] - d[l] + e[l] / (g + (g < 0 ? -r : r));
  let s = 1;
  let c = 1;
  let p = 0;
  for (let i = m - 1; i >= l; i -= 1) {
    let f = s * e[i];
    const b = c * e[i];
    r = Math.hypot(f, g);
    e[i + 1] = r;
    if (r === 0) {
      d[i + 1] -= p;
      e[m] = 0;
      return;
    }
    s = f / r;
    c = g / r;
    g = d[i + 1] - p;
    r = (d[i] - g) * s + 2 * c * b;
    p = s * r;
    d[i + 1] = g + p;
    g = c * r - b;
    for (const row of z) {
      f = row[i + 1];
      row[i + 1] = s * row[i] + c * f;
      row[i] = c * row[i] - s * f;
    }
  }
  d[l] -= p;
  e[l] = g;
  e[m] = 0;
}
