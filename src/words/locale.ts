/**
 * Which of our languages serves a BCP 47 tag, and what follows from the tag alone. Small, for a
 * browser loads it too.
 */

export const interfaceLanguages = ['en', 'fr', 'de', 'es'] as const;
export type InterfaceLanguage = (typeof interfaceLanguages)[number];

/** The last part of a tag for tests: the interface in marked words, such as `en-x-pseudo`. */
const pseudo = /-x-pseudo$/i;

export function isPseudo(tag: string): boolean {
  return pseudo.test(tag);
}

/** The language whose words serve a tag: `fr-CA` is French; English where we have none. */
export function interfaceLanguage(tag: string): InterfaceLanguage {
  const primary = tag.toLowerCase().split('-')[0];
  return interfaceLanguages.find((language) => language === primary) ?? 'en';
}

/** Whether we have words for a tag at all. */
export function isSpoken(tag: string): boolean {
  return isPseudo(tag) || interfaceLanguage(tag) === tag.toLowerCase().split('-')[0];
}

/** The tag for the engine's tables: the region decides how numbers are written, where it is said. */
export function localeOf(tag: string): string {
  const language = interfaceLanguage(tag);
  if (language !== 'en') return tag.replace(pseudo, '');
  return /^en-/i.test(tag) && !isPseudo(tag) ? tag : 'en-GB';
}

/** Scripts that are written from right to left, by the language's usual script. */
const rightToLeft = ['ar', 'dv', 'fa', 'he', 'ku', 'ps', 'sd', 'ug', 'ur', 'yi'];

export function directionOf(tag: string): 'ltr' | 'rtl' {
  if (/-(arab|hebr|nkoo|thaa|syrc|adlm)\b/i.test(tag)) return 'rtl';
  if (/-latn\b/i.test(tag)) return 'ltr';
  return rightToLeft.includes(tag.toLowerCase().split('-')[0]) ? 'rtl' : 'ltr';
}

/** A choice of words by number, by the language's own rules. */
export function plural(language: string): (count: number, words: PluralWords) => string {
  const rules = new Intl.PluralRules(localeOf(language));
  return (count, words) => (rules.select(count) === 'one' ? words.one : words.other);
}

/** Our languages tell one from several; "many" (millions, in French and Spanish) is several. */
export interface PluralWords {
  readonly one: string;
  readonly other: string;
}
