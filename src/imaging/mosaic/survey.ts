/**
 * What the close-ups of a mosaic say about each other, gathered tile by tile: each is looked at
 * once, at full size, and of it only what its later neighbours will share is kept.
 */
import type { Homography } from '../conventions.ts';
import type { Plane16 } from '../plane.ts';
import { translation } from '../registration/homography.ts';
import { logTable } from '../registration/masked-plane.ts';
import { shrinkPlane, shrinkToLog } from '../registration/shrink.ts';
import { coarseOffsets, smallTile, type SmallTile } from './coarse-offset.ts';
import { neighbourPairs, pitchOf, type GridPair, type GridTile, type Pitch } from './grid.ts';
import { matchPair, type Match } from './match-pair.ts';
import { cutFrom, type TileCut } from './tile-cut.ts';

export interface SurveyedPair extends GridPair {
  /** Common points; none where the pair does not agree. */
  readonly matches: readonly Match[];
  /** Why the pair does not agree, or null. */
  readonly reason: string | null;
}

export interface Survey {
  /** Pixels of a tile per pixel of its small picture. */
  readonly factor: number;
  /** Pixels of a tile per pixel of its smallest picture, which is for finding neighbours alone. */
  readonly coarseFactor: number;
  readonly pitch: Pitch;
  readonly pairs: readonly SurveyedPair[];
  /** Linear luminance, by tile. */
  readonly small: readonly Plane16[];
  readonly coarse: readonly SmallTile[];
}

export interface Surveyor {
  /** Tiles have to come in the order of rows, and within a row of columns. */
  readonly add: (index: number, tile: Plane16) => void;
  readonly finish: () => Survey;
}

/** Overlap where the sitting says nothing: common practice, no source. */
export const usualOverlap = 0.3;
/** How far a tile may lie from its place in the grid, as a share of its side: overlap known or not. */
const slop = { known: 0.12, unknown: 0.25 };
/** Longest side of the smallest pictures, pixels. */
const coarseSide = 240;
/** Longest side of the whole mosaic in small pictures, pixels, and the least shrinking. */
const smallMosaicSide = 1600;
const leastFactor = 4;

export function startSurvey(tiles: readonly GridTile[], overlap: number | null): Surveyor {
  const pitch = pitchOf(tiles, overlap ?? usualOverlap);
  const play = overlap === null ? slop.unknown : slop.known;
  const longest = Math.max(...tiles.map((t) => Math.max(t.width, t.height)));
  const coarseFactor = Math.max(1, longest / coarseSide);
  const factor = smallFactor(tiles, pitch, coarseFactor);
  const table = logTable();
  const waiting = new Map(neighbourPairs(tiles).map((pair) => [key(pair), pair]));
  const cuts = new Map<string, TileCut>();
  const small: Plane16[] = [];
  const coarse: SmallTile[] = [];
  const pairs: SurveyedPair[] = [];

  return {
    add(index, tile) {
      small[index] = shrinkPlane(tile, factor);
      coarse[index] = smallTile(shrinkToLog(small[index], coarseFactor / factor));
      const whole: TileCut = { left: 0, top: 0, plane: tile };
      for (const pair of waiting.values()) {
        if (pair.second === index) {
          const cut = cuts.get(key(pair));
          if (!cut) throw new RangeError('The tiles of a mosaic have to come row by row.');
          pairs.push({ ...pair, ...match(pair, cut, whole) });
          cuts.delete(key(pair));
        }
        if (pair.first === index) {
          const share = 1 - (overlap ?? usualOverlap) - play;
          const left = pair.side === 'right' ? Math.max(0, Math.floor(tile.width * share)) : 0;
          const top = pair.side === 'below' ? Math.max(0, Math.floor(tile.height * share)) : 0;
          cuts.set(key(pair), cutFrom(tile, left, top));
        }
      }
    },
    finish: () => ({ factor, coarseFactor, pitch, pairs, small, coarse }),
  };

  function match(pair: GridPair, first: TileCut, second: TileCut) {
    const { first: a, second: b, side } = pair;
    const expected = side === 'right' ? pitch.across : pitch.down;
    const extent = side === 'right' ? tiles[a].width : tiles[a].height;
    const offsets = coarseOffsets(
      coarse[a],
      coarse[b],
      side,
      expected / coarseFactor,
      (extent * play) / coarseFactor,
    );
    let reason = 'Nothing in the strip that they share was found in both.';
    for (const { dx, dy } of offsets) {
      const start: Homography = translation(-dx * coarseFactor, -dy * coarseFactor);
      const found = matchPair(first, second, [tiles[a], tiles[b]], start, table);
      if (found.ok) return { matches: found.value.matches, reason: null };
      reason = found.reason;
    }
    return { matches: [], reason };
  }
}

function key({ first, second }: GridPair): string {
  return `${first},${second}`;
}

/** The smallest pictures are made from the small ones, so those may not be smaller still. */
function smallFactor(tiles: readonly GridTile[], pitch: Pitch, coarseFactor: number): number {
  const columns =
    1 + Math.max(...tiles.map((t) => t.column)) - Math.min(...tiles.map((t) => t.column));
  const rows = 1 + Math.max(...tiles.map((t) => t.row)) - Math.min(...tiles.map((t) => t.row));
  const longest = Math.max(
    (columns - 1) * pitch.across + tiles[0].width,
    (rows - 1) * pitch.down + tiles[0].height,
  );
  const wanted = Math.max(leastFactor, Math.ceil(longest / smallMosaicSide));
  return Math.max(1, Math.min(wanted, Math.floor(coarseFactor)));
}
