/**
 * One step of placing all tiles of a mosaic at once: the normal equations of small corrections,
 * each in its own tile's frame, and their solution.
 *
 * References
 * - Szeliski (2006), as in `place-tiles.ts`.
 */
import { project, type Homography } from '../conventions.ts';
import { fromUnitFrame } from '../registration/gauss-newton-step.ts';
import { compose, normalise } from '../registration/homography.ts';
import { bandedSystem } from './banded-system.ts';
import type { Size } from './match-pair.ts';
import type { MatchedPair, Placement } from './place-tiles.ts';

type Model = Placement['model'];

const parameters = 8;
/** Deviation of a common point that is never held against it, pixels. */
export const leastDeviation = 0.05;
/** How far a corner may be sheared or bent by perspective before that counts as unlikely, pixels. */
const priorPixels = 1;

/** One Gauss-Newton step; null where the points do not hold all tiles. */
export function placeStep(
  sizes: readonly Size[],
  maps: readonly Homography[],
  pairs: readonly MatchedPair[],
  weights: readonly (readonly number[])[],
  reference: number,
  model: Model,
): readonly Homography[] | null {
  const widest = Math.max(1, ...pairs.map((p) => Math.abs(p.first - p.second)));
  const system = bandedSystem(sizes.length * parameters, (widest + 1) * parameters - 1);
  pairs.forEach((pair, k) => {
    pair.matches.forEach((match, i) => {
      const weight = weights[k][i];
      if (weight === 0) return;
      const a = motion(maps[pair.first], sizes[pair.first], match.first);
      const b = motion(maps[pair.second], sizes[pair.second], match.second);
      for (const axis of [0, 1] as const) {
        const miss = b.place[axis] - a.place[axis];
        addEquation(system, weight, miss, [
          { tile: pair.first, row: a.rows[axis], sign: 1 },
          { tile: pair.second, row: b.rows[axis], sign: -1 },
        ]);
      }
    });
  });
  sizes.forEach((size, tile) => addPrior(system, tile, size, model, tile === reference));
  const z = system.solve();
  if (!z || !z.every(Number.isFinite)) return null;
  return maps.map((map, tile) => {
    const [a, b, c, d, e, f, g, h] = z.subarray(tile * parameters, (tile + 1) * parameters);
    const unit: Homography = [1 + a, b, c, d, 1 + e, f, g, h, 1];
    return normalise(compose(map, fromUnitFrame(unit, sizes[tile].width, sizes[tile].height)));
  });
}

interface Term {
  readonly tile: number;
  readonly row: readonly number[];
  readonly sign: 1 | -1;
}

function addEquation(
  system: ReturnType<typeof bandedSystem>,
  weight: number,
  value: number,
  terms: readonly Term[],
): void {
  const elements = terms.flatMap(({ tile, row, sign }) =>
    row.map((v, p) => ({ at: tile * parameters + p, v: sign * v })),
  );
  for (const [n, { at, v }] of elements.entries()) {
    if (v === 0) continue;
    system.right[at] += weight * v * value;
    for (let m = 0; m <= n; m += 1) {
      if (elements[m].v !== 0) system.add(at, elements[m].at, weight * v * elements[m].v);
    }
  }
}

/** Where a point of a tile lies, and how it moves with the eight numbers of the correction. */
function motion(map: Homography, { width, height }: Size, [x, y]: readonly [number, number]) {
  const s = width / 2;
  const u = (x - (width - 1) / 2) / s;
  const v = (y - (height - 1) / 2) / s;
  const place = project(map, x, y);
  const w = map[6] * x + map[7] * y + map[8];
  const across = [0, 1].map((r) => (s * (map[r * 3] - place[r] * map[6])) / w);
  const down = [0, 1].map((r) => (s * (map[r * 3 + 1] - place[r] * map[7])) / w);
  const rows = [0, 1].map((r) => {
    const [p, q] = [across[r], down[r]];
    return [p * u, p * v, p, q * u, q * v, q, -u * (p * u + q * v), -v * (p * u + q * v)];
  });
  return { place, rows };
}

/** Keeps the reference where it is, and what no point fixes where it was. */
function addPrior(
  system: ReturnType<typeof bandedSystem>,
  tile: number,
  { width }: Size,
  model: Model,
  fixed: boolean,
): void {
  const at = tile * parameters;
  const s = width / 2;
  const firm = 1e6 * s * s;
  for (let p = 0; p < parameters; p += 1) system.add(at + p, at + p, fixed ? firm : 1e-6);
  const pull = model === 'similarity' ? firm : (leastDeviation * s) ** 2 / priorPixels ** 2;
  for (const [i, j, sign] of [
    [0, 4, -1],
    [1, 3, 1],
  ] as const) {
    system.add(at + i, at + i, pull);
    system.add(at + j, at + j, pull);
    system.add(at + i, at + j, sign * pull);
  }
  for (const p of [6, 7]) system.add(at + p, at + p, pull);
}
