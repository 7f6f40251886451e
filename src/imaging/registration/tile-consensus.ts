/**
 * The small shift, turn and change of size that most tiles agree on.
 *
 * A weak tile's highest peak is often a wrong one, but the right place is usually among its
 * first few. Two tiles fix a guess; every tile then votes with its best peak near the guess.
 *
 * References
 * - Fischler, M. A. and Bolles, R. C. (1981). Random sample consensus. Communications of the ACM
 *   24(6), 381-395. doi:10.1145/358669.358692
 */
import type { Peak } from './phase-correlation.ts';
import type { Tile } from './tile-shifts.ts';

/** Displacement of a point of the base frame, pixels. */
export type Displacement = (x: number, y: number) => readonly [dx: number, dy: number];

export interface Consensus {
  readonly displacement: Displacement;
  /** Sum over the tiles of how far the peaks that agree stand out. */
  readonly votes: number;
}

/** Guesses drawn. */
const guesses = 1200;
/** Pairs are drawn from this many of the highest peaks, the highest more often. */
const strongest = 80;
/** Largest turn (radians) and change of size that a guess may have. */
const mostTurn = 0.02;
const mostSize = 0.02;
/** Height of a peak that counts as nothing, standard deviations. */
const noVote = 2.2;

/** Turn and size as a + ib, shift as c + id, about the centre of the frame. */
type Similarity = readonly [a: number, b: number, c: number, d: number];

/** @param tolerance Distance in pixels at which a peak stops to agree. */
export function tileConsensus(
  tiles: readonly Tile[],
  width: number,
  height: number,
  tolerance: number,
): Consensus | null {
  const cx = (width - 1) / 2;
  const cy = (height - 1) / 2;
  const centred = tiles.map((t) => ({ u: t.x - cx, v: t.y - cy, peaks: t.peaks }));
  const drawn = centred
    .flatMap((tile) => tile.peaks.map((peak) => ({ tile, peak })))
    .sort((p, q) => q.peak.z - p.peak.z)
    .slice(0, strongest);
  if (drawn.length < 2) return null;
  const random = seededRandom(1);
  let best: Similarity | null = null;
  let votes = -1;
  for (let k = 0; k < guesses; k += 1) {
    const first = drawn[Math.floor(random() * random() * drawn.length)];
    const second = drawn[Math.floor(random() * random() * drawn.length)];
    const guess = similarityFrom(first, second, width);
    if (!guess) continue;
    const sum = countVotes(centred, guess, tolerance);
    if (sum <= votes) continue;
    votes = sum;
    best = guess;
  }
  if (!best) return null;
  const [a, b, c, d] = best;
  return {
    displacement: (x, y) => [a * (x - cx) - b * (y - cy) + c, b * (x - cx) + a * (y - cy) + d],
    votes,
  };
}

interface CentredTile {
  readonly u: number;
  readonly v: number;
  readonly peaks: readonly Peak[];
}
interface Drawn {
  readonly tile: CentredTile;
  readonly peak: Peak;
}

function similarityFrom(first: Drawn, second: Drawn, width: number): Similarity | null {
  const { tile: p, peak } = first;
  const { tile: q } = second;
  if (p === q) return [0, 0, peak.dx, peak.dy];
  const ux = p.u - q.u;
  const uy = p.v - q.v;
  const length = ux * ux + uy * uy;
  // Neighbours fix no turn: their noise would be blown up.
  if (length < (width * 0.15) ** 2) return null;
  const vx = peak.dx - second.peak.dx;
  const vy = peak.dy - second.peak.dy;
  const a = (ux * vx + uy * vy) / length;
  const b = (ux * vy - uy * vx) / length;
  if (Math.abs(a) > mostSize || Math.abs(b) > mostTurn) return null;
  return [a, b, peak.dx - (a * p.u - b * p.v), peak.dy - (b * p.u + a * p.v)];
}

function countVotes(
  tiles: readonly CentredTile[],
  [a, b, c, d]: Similarity,
  tolerance: number,
): number {
  let sum = 0;
  for (const { u, v, peaks } of tiles) {
    const ex = a * u - b * v + c;
    const ey = b * u + a * v + d;
    let most = 0;
    for (const peak of peaks) {
      const miss = ((peak.dx - ex) ** 2 + (peak.dy - ey) ** 2) / (tolerance * tolerance);
      if (miss < 1) most = Math.max(most, (peak.z - noVote) * (1 - miss));
    }
    sum += most;
  }
  return sum;
}

/** Linear congruential generator of Numerical Recipes: the same input gives the same result. */
function seededRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}
