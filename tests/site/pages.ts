/** The pages of the built exhibit, and one of each kind for tests that take their time. */
import { readFileSync, readdirSync } from 'node:fs';
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

const kinds: Readonly<Record<string, RegExp>> = {
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
};

const isCovered = (folder: string, page: string) =>
  htmlOf(folder, page).includes('<details class="cover"');

/**
 * The first page of each kind, a covered plate as a kind of its own.
 * @throws If a kind has no page: the demonstration is there to have them all.
 */
export function pageOfEachKind(folder: string): Readonly<Record<string, string>> {
  const pages = allPages(folder);
  const found: Record<string, string> = {};
  for (const [kind, pattern] of Object.entries(kinds)) {
    const open = pages.find((page) => pattern.test(page) && !isCovered(folder, page));
    if (open === undefined) throw new Error(`The built exhibit has no page of the kind "${kind}".`);
    found[kind] = open;
  }
  const covered = pages.find((page) => kinds['plate'].test(page) && isCovered(folder, page));
  if (covered === undefined) throw new Error('The built exhibit has no plate with an advisory.');
  return { ...found, covered };
}
