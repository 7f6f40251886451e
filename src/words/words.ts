/**
 * The words of every language, for the pages. A browser never loads this: it gets the words of
 * the page's language alone (`src/viewer/words.ts`).
 */
import { de } from './de/all.ts';
import { en, type Words } from './en/all.ts';
import { es } from './es/all.ts';
import { fr } from './fr/all.ts';
import { interfaceLanguage, isPseudo, type InterfaceLanguage } from './locale.ts';
import { marked } from './pseudo.ts';

export type { Words };

const all: Readonly<Record<InterfaceLanguage, Words>> = { en, fr, de, es };

/** The words for a BCP 47 tag. */
export function wordsIn(tag: string): Words {
  const words = all[interfaceLanguage(tag)];
  return isPseudo(tag) ? marked(words) : words;
}
