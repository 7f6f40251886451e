/**
 * What a reader calls a view: its reading first, then the light that made it, or how it was made
 * where that is more than one photograph.
 */
import type { CaptureResult, ViewResult } from '../records/result.ts';
import type { StageWords } from '../words/en/stage.ts';
import { localeOf } from '../words/locale.ts';

/** Views that a picture of many photographs comes with, by the end of their id; whether they read. */
const beside: Readonly<Record<string, boolean>> = {
  local: true,
  slope: false,
  relief: false,
  gloss: false,
  adds: false,
  colouring: false,
};

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
  { made, frame }: StageWords,
): { readonly word: string; readonly reads: boolean } | null {
  const [capture] = view.captures;
  const end = view.id.startsWith(`${capture}-`) ? view.id.slice(capture.length + 1) : view.id;
  const [name = ''] = /[a-z]+$/.exec(end) ?? [];
  const reads = beside[name];
  if (view.kind !== 'capture' && reads !== undefined)
    return { word: made[name as keyof typeof made], reads };
  if (view.kind === 'merge' || view.kind === 'relight' || view.kind === 'mosaic')
    return { word: made[view.kind], reads: true };
  if (!/^\d+$/.test(end)) return null;
  const from = sittings
    .find(({ id }) => id === view.sitting)
    ?.captures.find(({ id }) => id === capture);
  if (from === undefined || from.files.length < 2) return null;
  return { word: frame[from.kind](Number(end), from.files.length), reads: true };
}

/** "Positive, side lamp"; the id stands in where neither the reading nor the light has a word. */
function nameView(view: NamedView, sittings: readonly NamedSitting[], said: StageWords): string {
  const made = madeOf(view, sittings, said);
  const reading = made?.reads === false ? null : said.readings[view.reading];
  const words = [reading, made?.word ?? said.lights[view.setupKind]].filter((w) => w !== null);
  return words.length > 0 ? sentenceCase(words.join(', ')) : view.id.replaceAll('-', ' ');
}

/**
 * Names by id. Views that would share a name are told apart by the day of their sitting, then
 * by what their ids have beside their light.
 */
export function nameViews(
  views: readonly NamedView[],
  sittings: readonly NamedSitting[],
  language: string,
  words: StageWords,
): ReadonlyMap<string, string> {
  const day = new Intl.DateTimeFormat(localeOf(language), { dateStyle: 'long', timeZone: 'UTC' });
  const names = new Map(views.map((view) => [view.id, nameView(view, sittings, words)]));
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
      const found = add(view);
      if (found) names.set(view.id, `${names.get(view.id)}, ${found}`);
    }
  }
  return names;
}
