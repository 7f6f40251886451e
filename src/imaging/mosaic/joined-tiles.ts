/** Which tiles hang together through pairs that agree, and which of them is the most central. */
import type { GridTile } from './grid.ts';
import type { SurveyedPair } from './survey.ts';

export interface JoinedTiles {
  /** The largest group, indices in ascending order. */
  readonly members: readonly number[];
  /** The member nearest to the middle of the group. */
  readonly reference: number;
}

export function joinedTiles(
  tiles: readonly Pick<GridTile, 'row' | 'column'>[],
  pairs: readonly SurveyedPair[],
): JoinedTiles {
  const group = tiles.map((_, i) => i);
  const rootOf = (i: number): number => (group[i] === i ? i : rootOf(group[i]));
  for (const { first, second, reason } of pairs) {
    if (reason === null) group[rootOf(second)] = rootOf(first);
  }
  const roots = tiles.map((_, i) => rootOf(i));
  const sizes = roots.map((root) => roots.filter((r) => r === root).length);
  const root = roots[sizes.indexOf(Math.max(...sizes))];
  const members = tiles.map((_, i) => i).filter((i) => roots[i] === root);
  const mean = (of: 'row' | 'column') =>
    members.reduce((sum, i) => sum + tiles[i][of], 0) / members.length;
  const [row, column] = [mean('row'), mean('column')];
  const away = members.map((i) => Math.hypot(tiles[i].row - row, tiles[i].column - column));
  return { members, reference: members[away.indexOf(Math.min(...away))] };
}
