/**
 * The words and numbers of the page's language, for everything that runs in the browser. One
 * language is loaded, as a file of its own; elements are defined when it is there, so that the
 * code that speaks never waits. Use `words` inside functions, not while a module loads.
 */
import { interfaceLanguage, isPseudo, type InterfaceLanguage } from '../words/locale.ts';
import { measuresIn, type Measures } from '../words/measures.ts';
import type { ViewerWords } from '../words/en/viewer.ts';

export let words: ViewerWords;
export let measures: Measures;

const files: Readonly<Record<InterfaceLanguage, () => Promise<{ viewer: ViewerWords }>>> = {
  en: () => import('../words/en/viewer.ts'),
  fr: () => import('../words/fr/viewer.ts'),
  de: () => import('../words/de/viewer.ts'),
  es: () => import('../words/es/viewer.ts'),
};

/** Load the words for a BCP 47 tag. */
export async function speak(language: string): Promise<void> {
  const loading = files[interfaceLanguage(language)]();
  measures = measuresIn(language);
  words = (await loading).viewer;
  if (isPseudo(language)) words = (await import('../words/pseudo.ts')).marked(words);
}

/**
 * Define an element as soon as the page's words are there. What a reader presses in it before,
 * on a slow connection, is done then.
 */
export function defineSpoken(name: string, element: CustomElementConstructor): void {
  // Pressed again in impatience counts once.
  const pressed = new Set<HTMLElement>();
  const keep = ({ target }: Event): void => {
    const asked = (target as Element).closest<HTMLElement>(`${name} [data-do]`);
    if (asked) pressed.add(asked);
  };
  document.addEventListener('click', keep);
  spoken ??= speak(document.documentElement.lang);
  void spoken.then(() => {
    document.removeEventListener('click', keep);
    if (!customElements.get(name)) customElements.define(name, element);
    for (const asked of pressed) asked.click();
  });
}

let spoken: Promise<void> | undefined;
