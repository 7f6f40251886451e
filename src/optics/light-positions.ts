/**
 * Places for a lamp that goes round the plate: evenly spread over the band of heights between
 * two limits, in level rings, because rings are what a stand and a string can do.
 *
 * References
 * - A ring at height h has a length in proportion to cos h; places as dense along the rings as
 *   between them are even on the sphere (plane and spherical geometry).
 * - 15 to 65 degrees, 2.5 to 4 diagonals: common practice, no source.
 */

export interface Ring {
  /** Degrees above the plate. */
  readonly height: number;
  /** Bearings, degrees. */
  readonly bearings: readonly number[];
}

export interface LightPlace {
  readonly bearing: number;
  readonly height: number;
}

const degree = Math.PI / 180;

/**
 * Rings for a number of places, lowest first.
 *
 * @param count At least 6, which a quadratic fit needs. @throws RangeError
 */
export function lightRings(count: number, from = 15, to = 65): Ring[] {
  if (!(Number.isInteger(count) && count >= 6)) {
    throw new RangeError(`${count} places are too few: expected a whole number from 6.`);
  }
  const heights = ringHeights(count, from, to);
  const counts = shareOut(
    count,
    heights.map((h) => Math.cos(h * degree)),
  );
  return heights.map((height, ring) => {
    // Neighbouring rings are turned by half a place against each other.
    const start = ring % 2 === 0 ? 0 : 180 / counts[ring];
    return {
      height,
      bearings: Array.from({ length: counts[ring] }, (_, i) => start + (360 * i) / counts[ring]),
    };
  });
}

/** As many rings as make their distance nearest to that of the places along them. */
function ringHeights(count: number, from: number, to: number): number[] {
  const band = (to - from) * degree;
  const area = 2 * Math.PI * (Math.sin(to * degree) - Math.sin(from * degree));
  const spacing = Math.sqrt(area / count);
  const rings = Math.max(2, Math.min(Math.floor(count / 3), Math.round(band / spacing) + 1));
  return Array.from({ length: rings }, (_, i) => from + ((to - from) * i) / (rings - 1));
}

/** Whole numbers in proportion to weights that add up to a total, each at least 3. */
function shareOut(total: number, weights: readonly number[]): number[] {
  const sum = weights.reduce((a, b) => a + b, 0);
  const exact = weights.map((w) => (total * w) / sum);
  const counts = exact.map((e) => Math.max(3, Math.floor(e)));
  const order = exact
    .map((_, i) => i)
    .sort((a, b) => exact[b] - counts[b] - (exact[a] - counts[a]));
  let left = total - counts.reduce((a, b) => a + b, 0);
  for (let i = 0; left > 0; i += 1, left -= 1) counts[order[i % order.length]] += 1;
  for (let i = 0; left < 0; i = (i + 1) % counts.length) {
    if (counts[i] <= 3) continue;
    counts[i] -= 1;
    left += 1;
  }
  return counts;
}

export function placesOf(rings: readonly Ring[]): LightPlace[] {
  return rings.flatMap(({ height, bearings }) => bearings.map((bearing) => ({ bearing, height })));
}

/** Angle between two places as the plate sees them, degrees. */
export function angleBetween(a: LightPlace, b: LightPlace): number {
  const [ha, hb] = [a.height * degree, b.height * degree];
  const cosine =
    Math.sin(ha) * Math.sin(hb) +
    Math.cos(ha) * Math.cos(hb) * Math.cos((a.bearing - b.bearing) * degree);
  return Math.acos(Math.min(1, Math.max(-1, cosine))) / degree;
}

/** Lamp distance in diagonals of the plate: least and most. */
export const lampDiagonals = [2.5, 4] as const;

/** Error of the lamp's direction for one pixel on a glossy ball's highlight, degrees: 2/r. */
export function ballPrecision(radiusPixels: number): number {
  return 2 / radiusPixels / degree;
}
