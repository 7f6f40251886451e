/** Which views of a plate a mode can work with. */
import type { StageData, StageView } from './stage-data.ts';

/** The view that carries data planes of a kind, the asked-for one first; null when none does. */
export function viewWith(data: StageData, layer: string, asked?: string): StageView | null {
  const able = data.views.filter((view) => view.layers.includes(layer));
  return able.find((view) => view.id === asked) ?? able[0] ?? null;
}

/**
 * Two registered views of one reading and light from two sittings: what Difference compares.
 *
 * @param asked Views to prefer where they can be compared.
 */
export function differencePair(
  data: StageData,
  asked: readonly string[] = [],
): readonly [string, string] | null {
  const able = data.views.filter((view) => view.registered);
  const comparable = (a: StageView, b: StageView) =>
    a.sitting !== b.sitting && a.reading === b.reading && a.reading !== 'none';
  const pairs = able.flatMap((a) =>
    able.filter((b) => comparable(a, b)).map((b) => [a, b] as const),
  );
  const wanted = pairs.find(([a, b]) => a.id === asked[0] && b.id === asked[1]);
  const rising = pairs.find(([a, b]) => a.sitting < b.sitting);
  const found = wanted ?? rising ?? null;
  return found && [found[0].id, found[1].id];
}
