/** The pages of the built exhibit, and one of each kind for tests that take their time. */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** Addresses relative to the base path, `plates/inner-basin/`; the beginning is the empty one. */
export function allPages(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => name.endsWith('.html'))
    .map((name) => name.replace(/(^|\/)index\.html$/, '$1'))
    .sort();
}

export function fileOf(folder: string, page: string): string {
  return join(folder, page.endsWith('.html') ? page : join(page, 'index.html'));
}

export function htmlOf(folder: string, page: string): string {
  return readFileSync(fileOf(folder, page), 'utf8');
}

const kinds = {
  home: /^$/,
  plates: /^plates\/$/,
  order: /^plates-by\/[^/]+\/$/,
  search: /^search\/$/,
  plate: /^plates\/[^/]+\/$/,
  captures: /^plates\/[^/]+\/captures\/$/,
  embed: /^plates\/[^/]+\/embed\/$/,
  techniques: /^techniques\/$/,
  technique: /^techniques\/[^/]+\/$/,
  lessons: /^lessons\/$/,
  lesson: /^lessons\/[^/]+\/$/,
  glossary: /^glossary\/$/,
  about: /^about\/$/,
  planner: /^planner\/$/,
  missing: /^404\.html$/,
} as const satisfies Readonly<Record<string, RegExp>>;

type Kind = keyof typeof kinds;

const isCovered = (folder: string, page: string) =>
  htmlOf(folder, page).includes('<details class="cover"');

/**
 * The first page of each kind, a covered plate as a kind of its own.
 * @throws If a kind has no page: the demonstration is there to have them all.
 */
export function pageOfEachKind(folder: string): Readonly<Record<string, string>> {
  const pages = allPages(folder);
  const found: Record<string, string> = {};
  for (const [kind, pattern] of Object.entries<RegExp>(kinds)) {
    const open = pages.find((page) => pattern.test(page) && !isCovered(folder, page));
    if (open === undefined) throw new Error(`The built exhibit has no page of the kind "${kind}".`);
    found[kind] = open;
  }
  const covered = pages.find((page) => kinds['plate'].test(page) && isCovered(folder, page));
  if (covered === undefined) throw new Error('The built exhibit has no plate with an advisory.');
  return { ...found, covered };
}

/** Languages of the exhibit beyond its first, whose pages lie in folders of their names. */
function furtherLanguages(folder: string): string[] {
  return readdirSync(folder).filter((name) => existsSync(join(folder, name, 'plates/index.html')));
}

/**
 * Every page of the first language, and of each further one the first page of some kinds: for
 * tests that take their time with a page, and find the same faults in all languages.
 */
export function pagesToWalk(folder: string, some = Object.keys(kinds) as Kind[]): string[] {
  const pages = allPages(folder);
  const languages = furtherLanguages(folder);
  const own = pages.filter((page) => !languages.includes(page.split('/')[0]));
  const others = languages.flatMap((language) =>
    some.flatMap((kind) => {
      const within = pages.filter((page) => page.startsWith(`${language}/`));
      return within.find((page) => kinds[kind].test(page.slice(language.length + 1))) ?? [];
    }),
  );
  return [...own, ...others];
}
