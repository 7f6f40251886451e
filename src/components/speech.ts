/**
 * How a page speaks: its language, the words and numbers of it, and the addresses of the pages
 * in it. The first language of the exhibit stands at the root, each other one in a folder named
 * after its tag; pages take it from their address (`[...language]` in `src/pages`).
 */
import { directionOf } from '../words/locale.ts';
import { measuresIn, type Measures } from '../words/measures.ts';
import { wordsIn, type Words } from '../words/words.ts';
import { addressesUnder, base, type Addresses } from './addresses.ts';
import { exhibit } from './exhibit.ts';

export interface Speech {
  /** BCP 47. */
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  readonly words: Words;
  readonly measures: Measures;
  readonly at: Addresses;
}

const made = new Map<string, Speech>();

/** @param main The first language of the exhibit, which stands at the root. */
export function speechIn(language: string, main: string): Speech {
  const key = `${language} ${main}`;
  const speech = made.get(key) ?? {
    language,
    direction: directionOf(language),
    words: wordsIn(language),
    measures: measuresIn(language),
    at: addressesUnder(language === main ? base : `${base}${language}/`),
  };
  made.set(key, speech);
  return speech;
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
