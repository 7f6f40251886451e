/**
 * The functions of a lamp's direction that a relightable surface is made of: thin-plate kernels
 * about the captured lamps with a linear drift, or the hemispherical basis.
 *
 * References
 * - Duchon, J. (1977). Splines minimizing rotation-invariant semi-norms in Sobolev spaces. In
 *   Constructive Theory of Functions of Several Variables, LNM 571, 85-100 (thin plate,
 *   r^2 log r). doi:10.1007/BFb0086566
 */
import { hemisphericalBasis } from './hemispherical.ts';
import { type Direction, placeOf } from './light-place.ts';

export type TermKind = 'thin-plate' | 'hemispherical';

/** Energy of a thin plate bent at a point, at distance d; 0 at 0. */
export function thinPlateKernel(distance: number): number {
  return distance > 0 ? distance * distance * Math.log(distance) : 0;
}

/** Values for one direction: a kernel for each lamp, then 1, u, v; or sixteen basis values. */
export function lampTerms(
  kind: TermKind,
  lamps: readonly Direction[],
  direction: Direction,
): Float64Array {
  if (kind === 'hemispherical') return hemisphericalBasis(direction);
  const [u, v] = placeOf(direction);
  const terms = new Float64Array(lamps.length + 3);
  for (let i = 0; i < lamps.length; i += 1) {
    const [a, b] = placeOf(lamps[i]);
    terms[i] = thinPlateKernel(Math.hypot(u - a, v - b));
  }
  terms.set([1, u, v], lamps.length);
  return terms;
}
