/**
 * How thick the tarnish is: a rim along the edge of the mat's opening, a haze within, a band
 * from the plate's edges, and round spots. Thickness alone is decided here; its colours follow
 * from interference (`silver.ts`).
 */
import { cloudyNoise, fillSlowly, smoothNoise } from './noise.ts';
import type { PlateRow } from './plate-row.ts';
import type { FilmSpot, Opening, Plate } from './plate.ts';
import { seedOf } from './seeded.ts';
import { thickestFilm } from './silver.ts';

const slowStep = 8;

/** Under the mat the rim thins to a third within this distance, mm. */
const underMat = 0.7;

/** Fill in the film. Needs the places of the row. */
export function tarnishRow(line: PlateRow, plate: Plate): void {
  const { tarnish } = plate;
  const cloudSeed = seedOf('tarnish', plate.seed);
  fillSlowly(line.film, slowStep, (i) => {
    const x = line.x[i];
    const y = line.y[i];
    const cloud = cloudyNoise(x * 0.09, y * 0.09, cloudSeed, 3);
    // The edge of a film wanders: air came in here more than there.
    const wander = smoothNoise(x * 0.07, y * 0.07, cloudSeed + 9) + 0.3 * cloud;
    const depth = openingDepth(tarnish.openings, x, y) + 0.5 * wander;
    const fall = depth >= 0 ? Math.exp(-depth / tarnish.reach) : Math.exp(depth / underMat);
    const toEdge = Math.min(plate.width / 2 - Math.abs(x), plate.height / 2 - Math.abs(y));
    const band = tarnish.edge * Math.exp(-Math.max(0, toEdge + wander) / (0.6 * tarnish.reach));
    return Math.max(
      0,
      tarnish.rim * fall * (1 + 0.5 * cloud) + tarnish.haze * (1 + 0.7 * cloud) + band,
    );
  });
  for (const spot of plate.filmSpots) spotRow(line, spot, cloudSeed);
  for (let i = 0; i < line.length; i += 1)
    line.film[i] = Math.min(thickestFilm, Math.max(0, line.film[i]));
}

/** How far inside the nearest opening a point lies, mm, below 0 outside; roughly, near the edge well. */
export function openingDepth(openings: readonly Opening[], x: number, y: number): number {
  let depth = -Infinity;
  for (const opening of openings) depth = Math.max(depth, depthIn(opening, x, y));
  return depth;
}

function depthIn(opening: Opening, px: number, py: number): number {
  const halfWidth = opening.width / 2;
  const halfHeight = opening.height / 2;
  const x = Math.abs(px - opening.x);
  const y = Math.abs(py - opening.y);
  const sides = Math.min(halfWidth - x, halfHeight - y);
  switch (opening.shape) {
    case 'oval':
      return (1 - Math.hypot(x / halfWidth, y / halfHeight)) * Math.min(halfWidth, halfHeight);
    case 'rectangle':
      return sides;
    case 'octagon': {
      const cut = 0.3 * Math.min(halfWidth, halfHeight);
      return Math.min(sides, (halfWidth + halfHeight - cut - x - y) / Math.SQRT2);
    }
    case 'arch': {
      // A half ellipse stands on a rectangle.
      const rise = 0.8 * halfWidth;
      const above = opening.y - halfHeight + rise - py;
      if (above <= 0) return sides;
      return Math.min(
        sides,
        (1 - Math.hypot(x / halfWidth, above / rise)) * Math.min(halfWidth, rise),
      );
    }
  }
}

function spotRow(line: PlateRow, spot: FilmSpot, seed: number): void {
  const far = spot.radius * 1.8;
  // Rows are nearly level: most of them pass a spot by.
  const middle = line.length >> 1;
  const lean = Math.abs(line.y[line.length - 1] - line.y[0]);
  if (Math.abs(line.y[middle] - spot.y) > far + lean) return;
  for (let i = 0; i < line.length; i += 1) {
    const dx = line.x[i] - spot.x;
    const dy = line.y[i] - spot.y;
    if (Math.abs(dx) > far || Math.abs(dy) > far) continue;
    const wander = 1 + 0.25 * cloudyNoise(dx / spot.radius, dy / spot.radius, seed + 7, 3);
    const r = (Math.hypot(dx, dy) / spot.radius) * wander;
    const ring = (r - 0.8) / 0.22;
    line.film[i] += spot.rim * Math.exp(-ring * ring) + spot.centre * Math.exp(-2.5 * r * r);
  }
}
