/** Which pictures stand for a plate in previews elsewhere: both readings, or the only one. */
import type { PlateRecord } from './plate.ts';
import type { PlateResult, ViewResult } from './result.ts';

/** Positive first; none of a covered plate, and none that a withheld capture has a part in. */
export function previewViews(
  { advisory, withheld }: Pick<PlateRecord, 'advisory' | 'withheld'>,
  { views, pair }: PlateResult,
): readonly ViewResult[] {
  if (advisory !== undefined) return [];
  const open = views.filter(({ captures }) => !captures.some((id) => withheld.includes(id)));
  const readings = (['positive', 'negative'] as const).flatMap((reading) => {
    const paired = open.find(({ id }) => id === pair?.[reading]);
    return paired ?? open.find((view) => view.reading === reading) ?? [];
  });
  return readings.length > 0 ? readings : open.slice(0, 1);
}
