/**
 * The few operations on 3 x 3 matrices that colour and plane geometry need. Row-major, as in
 * `conventions.ts`.
 */

export type Matrix3 = readonly [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
];
export type Vector3 = readonly [number, number, number];

/** The product `a b`: first b, then a. */
export function multiply3(a: Matrix3, b: Matrix3): Matrix3 {
  const row = (r: number): [number, number, number] => [
    a[r] * b[0] + a[r + 1] * b[3] + a[r + 2] * b[6],
    a[r] * b[1] + a[r + 1] * b[4] + a[r + 2] * b[7],
    a[r] * b[2] + a[r + 1] * b[5] + a[r + 2] * b[8],
  ];
  return [...row(0), ...row(3), ...row(6)];
}

/** The product of a matrix and a column. */
export function apply3(m: Matrix3, v: Vector3): Vector3 {
  return [
    m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
    m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
    m[6] * v[0] + m[7] * v[1] + m[8] * v[2],
  ];
}

/** The inverse times the determinant: all of an inverse where a common factor does not matter. */
export function adjugate3([a, b, c, d, e, f, g, h, i]: Matrix3): Matrix3 {
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
}

/**
 * The inverse, by cofactors.
 *
 * @throws RangeError if the matrix has none.
 */
export function invert3(m: Matrix3): Matrix3 {
  const adjugate = adjugate3(m);
  const determinant = m[0] * adjugate[0] + m[1] * adjugate[3] + m[2] * adjugate[6];
  if (!Number.isFinite(determinant) || determinant === 0) {
    throw new RangeError(`The matrix [${m.join(', ')}] has no inverse.`);
  }
  return adjugate.map((v) => v / determinant) as unknown as Matrix3;
}
