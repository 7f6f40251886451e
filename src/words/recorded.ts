/**
 * Sentences of a record in the language of a page. The stages write them in English, once, for
 * the archive and for every page; here each is told again by its template (`en/record.ts`).
 */
import { record as german } from './de/record.ts';
import { record as english, type RecordWords } from './en/record.ts';
import { record as spanish } from './es/record.ts';
import { record as french } from './fr/record.ts';
import { interfaceLanguage, isPseudo } from './locale.ts';
import { measuresIn } from './measures.ts';

const others: Readonly<Record<string, RecordWords>> = { fr: french, de: german, es: spanish };

const place = /\{(\d)(!?)\}/g;
const signs = /[.*+?^${}()|[\]\\]/g;

interface Template {
  readonly key: keyof RecordWords;
  /** The whole of a text, else its beginning; one group a place, in their order. */
  readonly patterns: readonly RegExp[];
  readonly places: readonly { readonly name: string; readonly asItIs: boolean }[];
}

const templates = (Object.keys(english) as (keyof RecordWords)[]).map((key): Template => {
  const text = english[key];
  const places = [...text.matchAll(place)].map(([, name, asItIs]) => ({
    ...{ name, asItIs: asItIs !== '' },
  }));
  const literal = text.split(/\{\d!?\}/).map((part) => part.replace(signs, '\\$&'));
  const patterns = ['$', ' '].map((end) => new RegExp(`^${literal.join('(.+?)')}${end}`));
  return { key, places, patterns };
});

/** Every way in which a text, or its beginning, is one of the sentences. */
function* matches(text: string) {
  for (const { key, patterns, places } of templates) {
    for (const pattern of patterns) {
      const found = pattern.exec(text);
      if (found) yield { key, places, found };
    }
  }
}

/** Says a text of a record, one or more sentences; null where a part of it is not known. */
export function recordedIn(language: string): (text: string) => string | null {
  const words = isPseudo(language) ? undefined : others[interfaceLanguage(language)];
  if (!words) return (text) => (isPseudo(language) ? null : text);
  const { fixed } = measuresIn(language);
  const number = (text: string) =>
    /^-?\d+(\.\d+)?$/.test(text) ? fixed(Number(text), text.split('.')[1]?.length ?? 0) : null;

  const say = (text: string): string | null => {
    for (const { key, places, found } of matches(text)) {
      const parts = places.map(({ name, asItIs }, k) => {
        const part = found[k + 1];
        return [name, asItIs ? part : (number(part) ?? say(part))] as const;
      });
      const rest = text.slice(found[0].length);
      const more = rest === '' ? '' : say(rest);
      if (more === null || parts.some(([, part]) => part === null)) continue;
      const filled = new Map(parts);
      const said = words[key].replace(place, (_, name: string) => filled.get(name) ?? '');
      return more === '' ? said : `${said} ${more}`;
    }
    return null;
  };

  const known = new Map<string, string | null>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const said = say(text);
    known.set(text, said);
    return said;
  };
}
