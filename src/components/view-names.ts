/**
 * What the pages call a view: its light, how it was made where that is more than one
 * photograph, and as much more as it takes to tell it from the plate's other views.
 */
import type { PlateResult, ViewResult } from '../records/result.ts';
import { dateInWords } from './label-words.ts';
import type { Speech } from './speech.ts';

/** Kind of the capture that a view was made from. */
export function captureKind(result: PlateResult, view: ViewResult) {
  const sitting = result.sittings.find(({ id }) => id === view.sitting);
  return sitting?.captures.find(({ id }) => id === view.captures[0])?.kind ?? 'single';
}

/** Names by id, no two the same. */
export function viewNames(
  result: PlateResult,
  { language, words }: Pick<Speech, 'language' | 'words'>,
): ReadonlyMap<string, string> {
  const day = (view: ViewResult) => {
    const date = result.sittings.find(({ id }) => id === view.sitting)?.date;
    return result.sittings.length > 1 ? dateInWords(date ?? undefined, language) : undefined;
  };
  const steps: ((view: ViewResult) => string | undefined)[] = [
    (view) => {
      const kind = captureKind(result, view);
      const alone = kind === 'mosaic' && view.kind === 'capture';
      return alone ? words.closeUp : words.captureKind[kind];
    },
    day,
    ({ id }) => id.replaceAll('-', ' '),
  ];
  const names = new Map(result.views.map((view) => [view.id, words.setup[view.setupKind]]));
  const shared = (view: ViewResult) =>
    result.views.some(
      (other) =>
        other.id !== view.id &&
        other.reading === view.reading &&
        names.get(other.id) === names.get(view.id),
    );
  for (const step of steps) {
    const unclear = result.views.filter(
      (view) => shared(view) || (step === steps[0] && captureKind(result, view) !== 'single'),
    );
    for (const view of unclear) {
      const more = step(view);
      if (more) names.set(view.id, `${names.get(view.id)}, ${more}`);
    }
  }
  return names;
}
