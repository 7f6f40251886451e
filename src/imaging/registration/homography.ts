/**
 * Products, inverses and changes of pixel size of projective maps.
 *
 * References
 * - Hartley, R. and Zisserman, A. (2004). Multiple View Geometry in Computer Vision, 2nd ed.,
 *   ch. 2 and 4. Cambridge University Press. doi:10.1017/CBO9780511811685
 */
import { adjugate3, multiply3 } from '../colour/matrix3.ts';
import { project, type Homography } from '../conventions.ts';

/** The map that applies `b` first and then `a`; not normalised. */
export { multiply3 as compose };

/** The way back, with last element 1. A map that flattens the plane gives non-finite elements. */
export function invert(m: Homography): Homography {
  return normalise(adjugate3(m));
}

/** The same map with last element 1. */
export function normalise(m: Homography): Homography {
  return m.map((v) => v / m[8]) as unknown as Homography;
}

export function translation(x: number, y: number): Homography {
  return [1, 0, x, 0, 1, y, 0, 0, 1];
}

/**
 * From a picture to the same picture with pixels `factor` times smaller: with the origin at the
 * *centre* of the first pixel, x becomes factor * x + (factor - 1) / 2.
 */
export function enlargement(factor: number): Homography {
  const shift = (factor - 1) / 2;
  return [factor, 0, shift, 0, factor, shift, 0, 0, 1];
}

/** A map between two pictures, rewritten for both enlarged by the same factor. */
export function rescale(m: Homography, factor: number): Homography {
  return normalise(multiply3(multiply3(enlargement(factor), m), enlargement(1 / factor)));
}

/** Mean distance in pixels between where two maps take the four corners of a picture. */
export function cornerDistance(
  a: Homography,
  b: Homography,
  width: number,
  height: number,
): number {
  let sum = 0;
  for (const [x, y] of corners(width, height)) {
    const p = project(a, x, y);
    const q = project(b, x, y);
    sum += Math.hypot(p[0] - q[0], p[1] - q[1]);
  }
  return sum / 4;
}

/** Centres of the four corner pixels, clockwise from the top left. */
export function corners(width: number, height: number): readonly (readonly [number, number])[] {
  return [
    [0, 0],
    [width - 1, 0],
    [width - 1, height - 1],
    [0, height - 1],
  ];
}
