/**
 * For pairs whose contrast fades or changes sides from place to place, where following a slope
 * ends in the wrong valley: many tiles are searched each on its own, and the map is what most of
 * them agree on, first at half size, then at full size.
 */
import type { Homography } from '../conventions.ts';
import { compose, normalise, rescale } from './homography.ts';
import type { Freedom } from './gauss-newton-step.ts';
import { workingTiles } from './pair-tiles.ts';
import { tileConsensus } from './tile-consensus.ts';
import { fitTiles } from './tile-fit.ts';
import type { WorkingPair } from './working-pair.ts';

interface Round {
  /** Level of the working pyramid: 1 is half size. */
  readonly level: 0 | 1;
  /** Side of a tile, distance between tiles, largest displacement, pixels of that level. */
  readonly side: number;
  readonly step: number;
  readonly reach: number;
  /** Distance at which a tile stops to agree, pixels of that level. */
  readonly tolerance: number;
  readonly freedom: Freedom;
}

const atHalfSize: readonly Round[] = [
  { level: 1, side: 128, step: 64, reach: 18, tolerance: 3, freedom: 4 },
  { level: 1, side: 128, step: 64, reach: 8, tolerance: 2.5, freedom: 6 },
];
const atFullSize: readonly Round[] = [
  { level: 0, side: 256, step: 128, reach: 8, tolerance: 2.5, freedom: 8 },
];

export interface WeakResult {
  /** From base to moving, pixels of the working copies. */
  readonly toMoving: Homography;
  /** Votes of the last round. */
  readonly votes: number;
}

/** Peaks kept of each tile: the right one is usually among them. */
const peaks = 4;

/** The two rounds at half size, from a first guess in pixels of the working copies. */
export function gatherAtHalfSize(pair: WorkingPair, start: Homography): WeakResult | null {
  return runRounds(pair, { toMoving: start, votes: 0 }, atHalfSize);
}

/** The round at the full size of the working copies. */
export function gatherAtFullSize(pair: WorkingPair, start: WeakResult): WeakResult | null {
  return runRounds(pair, start, atFullSize);
}

function runRounds(
  pair: WorkingPair,
  start: WeakResult,
  rounds: readonly Round[],
): WeakResult | null {
  let result: WeakResult | null = start;
  for (const round of rounds) {
    if (!result) return null;
    const level = Math.min(round.level, pair.base.levels.length - 1);
    result = runRound(pair, result, { ...round, level: level as 0 | 1 });
  }
  return result;
}

function runRound(pair: WorkingPair, start: WeakResult, round: Round): WeakResult | null {
  const base = pair.base.levels[round.level];
  const map = rescale(start.toMoving, 1 / 2 ** round.level);
  const tiles = workingTiles(pair, map, { ...round, peaks }, round.level);
  const consensus = tileConsensus(tiles, base.width, base.height, round.tolerance);
  if (!consensus) return null;
  const { width, height } = base;
  const step = fitTiles(
    tiles,
    consensus.displacement,
    round.tolerance * 1.5,
    width,
    height,
    round.freedom,
  );
  if (!step) return null;
  return {
    toMoving: rescale(normalise(compose(map, step)), 2 ** round.level),
    votes: consensus.votes,
  };
}
