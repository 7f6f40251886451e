/**
 * One index of words from finished pages, by the library's own process. Only pages that say what
 * kind of page they are (`data-pagefind-body` in Page.astro) are in it: covered plates and plates
 * that keep out of lists do not say so.
 */
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { createIndex, type PagefindIndex } from 'pagefind';

export interface WordPage {
  /** Within the exhibit. */
  readonly path: string;
  readonly file: string;
}

/** Parts of the library's own page furniture: 300 kB that no page of ours asks for. */
const furniture = [
  'pagefind-ui.js',
  'pagefind-ui.css',
  'pagefind-modular-ui.js',
  'pagefind-modular-ui.css',
  'pagefind-component-ui.js',
  'pagefind-component-ui.css',
  'pagefind-highlight.js',
];

/** Pages on their way to the library's own process, which takes them one after another. */
const pagesAhead = 8;

/**
 * Writes the index into `folder`, in the order of the pages' addresses, which the index keeps:
 * the same pages, the same bytes. Close the library when the last index is written.
 *
 * @param read Gives the text of a page's file.
 * @throws If the index cannot be made, with the library's own sentences.
 */
export async function writeWords(
  folder: string,
  pages: readonly WordPage[],
  read: (file: string) => string | Promise<string>,
): Promise<void> {
  const { index, errors } = await createIndex({ excludeSelectors: ['.away', 'script', 'style'] });
  if (!index) throw new Error(`The index of words could not be begun: ${errors.join(' ')}`);
  const adding: Promise<void>[] = [];
  for (const { path, file } of [...pages].sort((a, b) => (a.path < b.path ? -1 : 1))) {
    const content = await read(file);
    if (adding.length >= pagesAhead) await adding.shift();
    const added = addPage(index, path, content);
    // Heard when its turn comes.
    added.catch(() => undefined);
    adding.push(added);
  }
  await Promise.all(adding);
  const written = await index.writeFiles({ outputPath: folder });
  told(written.errors);
  await index.deleteIndex();
  await Promise.all(furniture.map((name) => rm(join(folder, name), { force: true })));
}

async function addPage(index: PagefindIndex, path: string, content: string): Promise<void> {
  const searched = searchedPart(content);
  if (searched === null) return;
  told((await index.addHTMLFile({ sourcePath: path, content: searched })).errors);
}

/**
 * The page's language and its main part, null where that is not to be searched: the library comes
 * to the same words from the whole page, in a quarter more time (measured).
 */
export function searchedPart(page: string): string | null {
  const main = /<main\b[^>]*data-pagefind-body.*<\/main>/s.exec(page);
  if (!main) return null;
  const html = /<html\b[^>]*>/.exec(page)?.[0] ?? '<html>';
  return `<!doctype html>${html}<body>${main[0]}</body></html>`;
}

function told(errors: readonly string[]): void {
  if (errors.length === 0) return;
  throw new Error(`The index of words could not be written: ${errors.join(' ')}`);
}
