/**
 * The index of words for the exhibit's own search, made from the finished pages: only those that
 * say what kind of page they are (`data-pagefind-body` in Page.astro) are in it. Covered plates
 * and plates that keep out of lists do not say so.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { close, createIndex, type PagefindIndex } from 'pagefind';
import { mapInTurn } from '../pipeline/content/map-in-turn.ts';
import { wordPartFolder, wordPartOf, wordParts } from '../publish/word-parts.ts';
import { plateFolders, type PagesToMake } from './pages-to-make.ts';

/** Folder of the index within the exhibit. */
const wordIndexFolder = 'search/words';

/**
 * Parts of the library's own page furniture: 300 kB that no page of ours asks for.
 */
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

/** A part of the index that stands already, or has just been written, with the key of its pages. */
export interface WordPart {
  readonly path: string;
  readonly key: string;
  readonly stays: boolean;
}

/**
 * Writes the index into `out`, and of its parts those that do not stand in the exhibit.
 * @throws If the index cannot be made, with the library's own sentences.
 */
export async function writeWordIndex(out: string, making: PagesToMake): Promise<WordPart[]> {
  const { plates, made, exhibit, wordKeys, standing, content } = making;
  const languages = content.collection?.languages ?? [];
  const slugs = new Set(made.map(({ slug }) => slug));
  const count = wordParts(plates.length);
  const parts = Array.from({ length: Math.max(1, count) }, () => [] as PlatePages[]);
  for (const { slug } of plates) {
    const root = slugs.has(slug) ? out : exhibit;
    const pages = parts[count === 0 ? 0 : wordPartOf(slug, count)];
    for (const path of plateFolders(slug, languages))
      pages.push({ root, path, key: wordKeys.get(slug)! });
  }
  const others = await otherPages(out, new Set(parts.flat().map(({ path }) => path)));
  try {
    await writeIndex(out, wordIndexFolder, others, count === 0 ? parts[0] : []);
    if (count === 0) return [];
    const written: WordPart[] = [];
    for (const [k, pages] of parts.entries()) {
      const path = `${wordIndexFolder}/${wordPartFolder(k)}`;
      const lines = pages.map((page) => `${page.path} ${page.key}`).sort();
      const key = createHash('sha256').update(lines.join('\n')).digest('hex');
      const stays = standing.get(path) === key;
      if (!stays) await writeIndex(out, path, [], pages);
      written.push({ path, key, stays });
    }
    return written;
  } finally {
    await close();
  }
}

/** A folder of a plate's pages. */
interface PlatePages {
  /** The exhibit that it stands in, or the one that is being made. */
  readonly root: string;
  readonly path: string;
  /** Of the words on it. */
  readonly key: string;
}

/** Paths of the pages of `out` that are in no plate's folder. */
async function otherPages(out: string, plates: ReadonlySet<string>): Promise<string[]> {
  const found: string[] = [];
  const look = async (within: string): Promise<void> => {
    for (const entry of await readdir(join(out, within), { withFileTypes: true })) {
      const path = within === '' ? entry.name : `${within}/${entry.name}`;
      if (entry.isDirectory() && !plates.has(path)) await look(path);
      else if (entry.name === 'index.html') found.push(path);
    }
  };
  await look('');
  return found;
}

/** In the order of their addresses, which the index keeps: the same pages, the same bytes. */
async function writeIndex(
  out: string,
  folder: string,
  paths: readonly string[],
  plates: readonly PlatePages[],
): Promise<void> {
  const { index, errors } = await createIndex({ excludeSelectors: ['.away', 'script', 'style'] });
  if (!index) throw new Error(`The index of words could not be begun: ${errors.join(' ')}`);
  const pages = [
    ...paths.map((path) => ({ path, file: join(out, path) })),
    ...plates.map(({ root, path }) => ({
      path: `${path}/index.html`,
      file: join(root, path, 'index.html'),
    })),
  ].sort((a, b) => (a.path < b.path ? -1 : 1));
  await mapInTurn(pages, pagesAhead, ({ path, file }) =>
    addPage(index, path, readFileSync(file, 'utf8')),
  );
  const outputPath = join(out, folder);
  const written = await index.writeFiles({ outputPath });
  told(written.errors);
  await index.deleteIndex();
  await Promise.all(furniture.map((name) => rm(join(outputPath, name), { force: true })));
}

async function addPage(index: PagefindIndex, path: string, content: string): Promise<void> {
  if (!content.includes('data-pagefind-body')) return;
  told((await index.addHTMLFile({ sourcePath: path, content })).errors);
}

function told(errors: readonly string[]): void {
  if (errors.length === 0) return;
  throw new Error(`The index of words could not be written: ${errors.join(' ')}`);
}
