/** What a reader calls a view: its reading first, then the light that made it. */
import type { ViewResult } from '../records/result.ts';
import type { Reading, SetupKind } from '../records/vocabulary.ts';

const readingWords: Readonly<Record<Reading, string | null>> = {
  positive: 'Positive',
  negative: 'Negative',
  mixed: 'Mixed reading',
  none: null,
};

const lightWords: Readonly<Record<SetupKind, string | null>> = {
  normal: 'side lamp',
  raking: 'raking lamp',
  axial: 'axial light',
  transmitted: 'transmitted light',
  ultraviolet: 'ultraviolet',
  infrared: 'infrared',
  scan: 'scanner',
  other: null,
};

function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** "Positive, side lamp"; the id stands in where neither the reading nor the light has a word. */
export function nameView(view: Pick<ViewResult, 'id' | 'reading' | 'setupKind'>): string {
  const words = [readingWords[view.reading], lightWords[view.setupKind]].filter((w) => w !== null);
  return words.length > 0 ? sentenceCase(words.join(', ')) : view.id;
}

/** Names by id; views that would share a name carry their id as well. */
export function nameViews(
  views: readonly Pick<ViewResult, 'id' | 'reading' | 'setupKind'>[],
): ReadonlyMap<string, string> {
  const plain = views.map(nameView);
  return new Map(
    views.map((view, i) => {
      const shared = plain.filter((name) => name === plain[i]).length > 1;
      return [view.id, shared ? `${plain[i]} (${view.id})` : plain[i]];
    }),
  );
}
