/**
 * From the survey of a mosaic's close-ups to the plan that draws it: tiles placed, laid on the
 * base where that succeeds, balanced, and cut along seams.
 */
import { project } from '../conventions.ts';
import { compose, invert, translation } from '../registration/homography.ts';
import type { Plane16 } from '../plane.ts';
import { drawPlan, ownFrame, type DrawnPlan } from './draw-plan.ts';
import type { GridTile } from './grid.ts';
import { hangOnBase, type Hung } from './hang-on-base.ts';
import { joinedTiles } from './joined-tiles.ts';
import { findPlaces, type Misplaced } from './misplaced.ts';
import { placeTiles, type Placement } from './place-tiles.ts';
import type { Survey } from './survey.ts';

export interface NamedTile extends GridTile {
  /** Name in the captures' folder. */
  readonly file: string;
}

export interface Base {
  /** Linear luminance. */
  readonly plane: Plane16;
  readonly pixelsPerMillimetre: number | null;
}

export interface Assembly extends DrawnPlan {
  /** Tiles of the plan, as indices of the list that was given. */
  readonly members: readonly number[];
  /** Tiles that fit none of their neighbours. */
  readonly lost: readonly Misplaced[];
  /** Pairs are of indices of the list that was given. */
  readonly placement: Placement;
  readonly hung: Hung;
}

/** @returns Null when not even two tiles agree. */
export function assembleMosaic(
  tiles: readonly NamedTile[],
  survey: Survey,
  base: Base,
): Assembly | null {
  const { members, reference } = joinedTiles(tiles, survey.pairs);
  if (members.length < 2) return null;
  const own = tiles[reference];
  const local = new Map(members.map((tile, k) => [tile, k]));
  const pairs = survey.pairs.flatMap(({ first, second, matches, reason }) => {
    const [a, b] = [local.get(first), local.get(second)];
    return reason !== null || a === undefined || b === undefined
      ? []
      : { first: a, second: b, matches };
  });
  const placement = placeTiles(
    members.map((t) => tiles[t]),
    members.map((t) =>
      translation(
        (tiles[t].column - own.column) * survey.pitch.across,
        (tiles[t].row - own.row) * survey.pitch.down,
      ),
    ),
    pairs,
    members.indexOf(reference),
  );
  const placed = members.map((t, k) => ({
    file: tiles[t].file,
    row: tiles[t].row,
    width: tiles[t].width,
    height: tiles[t].height,
    map: placement.maps[k],
    small: survey.small[t],
  }));
  const hung = hangOnBase(base.plane, placed, survey.factor, base.pixelsPerMillimetre);
  const { frame, maps } = hung.ok ? hung : ownSize(placed, placement);
  // From the frame that the tiles were placed in to that of the mosaic.
  const toFrame = compose(maps[0], invert(placement.maps[0]));
  const drawn = drawPlan(
    placed.map((tile, k) => ({ ...tile, map: maps[k] })),
    pairs.map(({ first, second }) => [first, second] as const),
    frame,
    survey.factor,
  );
  return {
    ...drawn,
    members,
    lost: findPlaces(tiles, survey, members),
    placement: {
      ...placement,
      maps,
      points: placement.points.map((p) => {
        const [x, y] = project(toFrame, p.x, p.y);
        return { ...p, x, y };
      }),
      pairs: placement.pairs.map((p) => ({
        ...p,
        first: members[p.first],
        second: members[p.second],
      })),
    },
    hung,
  };
}

function ownSize(placed: Parameters<typeof ownFrame>[0], placement: Placement) {
  const frame = ownFrame(placed, placement.maps);
  return { frame, maps: frame.maps };
}
