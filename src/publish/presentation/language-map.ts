/** A text in the languages of the exhibit, as IIIF wants it. */
import type { Json } from './view-body.ts';

/**
 * What is said as in the first language stands once, under that one: most often it has not been
 * translated, and a program falls back on it.
 *
 * References
 * - IIIF Presentation API 3.0, section 4.1, "Language of property values".
 */
export function languageMap<Telling extends { readonly language: string }>(
  tellings: readonly Telling[],
  say: (telling: Telling) => string,
): Json {
  const original = say(tellings[0]);
  const all = tellings.map((telling) => [telling.language, say(telling)] as const);
  return Object.fromEntries(
    all.flatMap(([language, text], n) =>
      n === 0 || text !== original ? [[language, [text]] as const] : [],
    ),
  );
}
