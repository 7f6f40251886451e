/**
 * Did focus or lens change between the two captures? Asked of what the tiles still find after
 * the homography: a radial term is wanted only where it explains a good part of it, far more
 * than chance would.
 *
 * References
 * - Draper, N. R. and Smith, H. (1998). Applied Regression Analysis, 3rd ed., section 6.1 (the
 *   extra sum of squares and its F ratio). Wiley.
 */
import { bend, radialAbout } from '../radial.ts';
import { project, type Homography } from '../conventions.ts';
import { fitIncrement, freely, type Measured } from './fit-increment.ts';

/** What a radial term would explain. */
export interface RadialEvidence {
  /** Share of the remaining sum of squares that the term takes away, 0 to 1. */
  readonly share: number;
  /** F ratio of the term, 1 and 2 n - 9 degrees of freedom. */
  readonly ratio: number;
  readonly coefficient: number;
}

/**
 * From here on a radial term is tried. Tiles overlap and share the plate's own structures, so
 * they are not independent and the ratio stands far above the 11 that chance exceeds once in a
 * thousand. The share was below 0.15 on the three pairs without any change that were looked at
 * (one rendered, two photographs); it has not been measured on a larger set.
 */
export const lensChange = { leastShare: 0.3, leastRatio: 40 } as const;

/** Fewer tiles than this say nothing about nine parameters. */
const fewest = 16;

/**
 * @param tiles What agreeing tiles still find, base pixels.
 * @returns Null when the tiles are too few to tell.
 */
export function radialEvidence(
  tiles: readonly Omit<Measured, 'weight'>[],
  width: number,
  height: number,
): RadialEvidence | null {
  if (tiles.length < fewest) return null;
  const points = tiles.map((t) => ({ ...t, weight: 1 }));
  const plain = fitIncrement(points, width, height, freely);
  const bent = fitIncrement(points, width, height, freely, true);
  if (!plain || !bent) return null;
  const without = squares(points, plain.map, 0, width, height);
  const withTerm = squares(points, bent.map, bent.coefficient, width, height);
  const freedom = 2 * points.length - 9;
  return {
    share: 1 - withTerm / without,
    ratio: ((without - withTerm) * freedom) / withTerm,
    coefficient: bent.coefficient,
  };
}

export function asksForRadial(evidence: RadialEvidence | null): boolean {
  return (
    evidence !== null &&
    evidence.share >= lensChange.leastShare &&
    evidence.ratio >= lensChange.leastRatio
  );
}

function squares(
  points: readonly Measured[],
  map: Homography,
  coefficient: number,
  width: number,
  height: number,
): number {
  const radial = radialAbout(width, height, coefficient);
  let sum = 0;
  for (const { x, y, dx, dy } of points) {
    const [px, py] = project(map, x, y);
    const [bx, by] = bend(radial, x, y);
    sum += (px + bx - 2 * x - dx) ** 2 + (py + by - 2 * y - dy) ** 2;
  }
  return sum;
}
