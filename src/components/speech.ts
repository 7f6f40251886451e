/**
 * How a page speaks: its language, the words and numbers of it, and the addresses of the pages
 * in it. The first language of the exhibit stands at the root, each other one in a folder named
 * after its tag; pages take it from their address (`[...language]` in `src/pages`).
 */
import { directionOf, interfaceLanguage, isPseudo, localeOf } from '../words/locale.ts';
import { measuresIn, type Measures } from '../words/measures.ts';
import { recordedIn } from '../words/recorded.ts';
import { wordsIn, type Words } from '../words/words.ts';
import { addressesUnder, base, type Addresses } from './addresses.ts';
import { exhibit } from './exhibit.ts';

/** A part of a line, and its language where that is not the page's. */
export interface Said {
  readonly text: string;
  readonly lang?: string | undefined;
}

export interface Speech {
  /** BCP 47. */
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  /** Language of the museum's own texts where it is another one. */
  readonly original: string | undefined;
  /** `en` where the page is not in English: for sentences that the program keeps in English. */
  readonly english: string | undefined;
  readonly words: Words;
  readonly measures: Measures;
  /** A sentence of a record: in the page's language, or in English and marked so. */
  readonly recorded: (text: string) => Said;
  readonly at: Addresses;
}

const made = new Map<string, Speech>();

/** @param main The first language of the exhibit, which stands at the root. */
export function speechIn(language: string, main: string): Speech {
  const key = `${language} ${main}`;
  const speech = made.get(key) ?? newSpeech(language, main);
  made.set(key, speech);
  return speech;
}

function newSpeech(language: string, main: string): Speech {
  const english = interfaceLanguage(language) === 'en' && !isPseudo(language) ? undefined : 'en';
  const inWords = recordedIn(language);
  return {
    language,
    direction: directionOf(language),
    original: language === main ? undefined : main,
    english,
    words: wordsIn(language),
    measures: measuresIn(language),
    recorded(text) {
      const said = inWords(text);
      return said === null ? { text, lang: english } : { text: said };
    },
    at: addressesUnder(language === main ? base : `${base}${language}/`),
  };
}

/** How the page that is being made speaks. */
export async function speechOf({
  params,
}: {
  readonly params: Readonly<Record<string, string | undefined>>;
}): Promise<Speech> {
  const { languages } = (await exhibit()).record;
  return speechIn(params['language'] ?? languages[0], languages[0]);
}

/** The `[...language]` part of every page's address: none for the first language. */
export async function languageParams(): Promise<{ readonly language: string | undefined }[]> {
  const { languages } = (await exhibit()).record;
  return languages.map((language, n) => ({ language: n === 0 ? undefined : language }));
}

/** The paths of a page, for each language of the exhibit. */
export async function inEachLanguage<Path extends { readonly params: object }>(
  paths: readonly Path[],
) {
  const languages = await languageParams();
  return languages.flatMap((language) =>
    paths.map((path) => ({ ...path, params: { ...language, ...path.params } })),
  );
}

/** A language as another one calls it. */
export function languageName(tag: string, inLanguage: string): string {
  const names = new Intl.DisplayNames([localeOf(inLanguage)], { type: 'language' });
  return names.of(tag.replace(/-x-.*$/, '')) ?? tag;
}

export interface LanguageLink {
  readonly language: string;
  /** In that language itself, as it begins a line. */
  readonly name: string;
  readonly at: string;
}

/** The same page in every language of the exhibit, the first one first. */
export async function languageLinks(path: string, speech: Speech): Promise<LanguageLink[]> {
  const { languages } = (await exhibit()).record;
  const within = path.startsWith(speech.at.home) ? path.slice(speech.at.home.length) : '';
  return languages.map((language) => {
    const name = languageName(language, language);
    return {
      language,
      name: `${name.charAt(0).toLocaleUpperCase(localeOf(language))}${name.slice(1)}`,
      at: `${speechIn(language, languages[0]).at.home}${within}`,
    };
  });
}
