/**
 * What a reader calls a view: its reading first, then the light that made it, or how it was made
 * where that is more than one photograph.
 */
import type { CaptureResult, ViewResult } from '../records/result.ts';
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

/** How a view was made from several photographs. */
const madeWords = {
  merge: 'merged exposures',
  relight: 'lamp that can be moved',
  mosaic: 'joined close-ups',
} as const;

/** Views that a picture of many photographs comes with, by the end of their id. */
const besideWords: Readonly<Record<string, { readonly word: string; readonly reads: boolean }>> = {
  local: { word: 'merged exposures, detail brought out', reads: true },
  slope: { word: 'slope of the surface', reads: false },
  relief: { word: 'relief of the surface', reads: false },
  gloss: { word: 'gloss of the surface', reads: false },
  adds: { word: 'what raking light adds', reads: false },
};

/** One of the photographs of a set. */
const frameWords: Readonly<Record<CaptureResult['kind'], (n: number, of: number) => string>> = {
  single: (n, of) => `photograph ${n} of ${of}`,
  bracket: (n, of) => `exposure ${n} of ${of}`,
  lights: (n, of) => `lamp ${n} of ${of}`,
  mosaic: (n, of) => `close-up ${n} of ${of}`,
};

const day = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' });

/** What names depend on. */
export type NamedView = Pick<
  ViewResult,
  'id' | 'reading' | 'setupKind' | 'kind' | 'captures' | 'sitting'
>;

export interface NamedSitting {
  readonly id: string;
  readonly date: string | null;
  readonly captures: readonly {
    readonly id: string;
    readonly kind: CaptureResult['kind'];
    readonly files: readonly unknown[];
  }[];
}

function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Words for how a view came about; null for one photograph. */
function madeOf(
  view: NamedView,
  sittings: readonly NamedSitting[],
): { readonly word: string; readonly reads: boolean } | null {
  const [capture] = view.captures;
  const end = view.id.startsWith(`${capture}-`) ? view.id.slice(capture.length + 1) : view.id;
  const beside = besideWords[/[a-z]+$/.exec(end)?.[0] ?? ''];
  if (view.kind !== 'capture' && beside !== undefined) return beside;
  if (view.kind === 'merge' || view.kind === 'relight' || view.kind === 'mosaic')
    return { word: madeWords[view.kind], reads: true };
  if (!/^\d+$/.test(end)) return null;
  const from = sittings
    .find(({ id }) => id === view.sitting)
    ?.captures.find(({ id }) => id === capture);
  if (from === undefined || from.files.length < 2) return null;
  return { word: frameWords[from.kind](Number(end), from.files.length), reads: true };
}

/** "Positive, side lamp"; the id stands in where neither the reading nor the light has a word. */
function nameView(view: NamedView, sittings: readonly NamedSitting[]): string {
  const made = madeOf(view, sittings);
  const reading = made?.reads === false ? null : readingWords[view.reading];
  const words = [reading, made?.word ?? lightWords[view.setupKind]].filter((w) => w !== null);
  return words.length > 0 ? sentenceCase(words.join(', ')) : view.id.replaceAll('-', ' ');
}

/**
 * Names by id. Views that would share a name are told apart by the day of their sitting, then
 * by what their ids have beside their light.
 */
export function nameViews(
  views: readonly NamedView[],
  sittings: readonly NamedSitting[],
): ReadonlyMap<string, string> {
  const names = new Map(views.map((view) => [view.id, nameView(view, sittings)]));
  const more: ((view: NamedView) => string | null)[] = [
    ({ sitting }) => {
      const date = sittings.find(({ id }) => id === sitting)?.date;
      return sittings.length > 1 && date ? day.format(new Date(date)) : null;
    },
    ({ id, setupKind }) => id.replace(`${setupKind}-`, '').replaceAll('-', ' '),
  ];
  for (const add of more) {
    const shared = views.filter((view) =>
      views.some((other) => other.id !== view.id && names.get(other.id) === names.get(view.id)),
    );
    for (const view of shared) {
      const words = add(view);
      if (words) names.set(view.id, `${names.get(view.id)}, ${words}`);
    }
  }
  return names;
}
