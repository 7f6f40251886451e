/**
 * The index of words for the exhibit's own search, made from the finished pages: only those that
 * say what kind of page they are (`data-pagefind-body` in Page.astro) are in it. Covered plates
 * and plates that keep out of lists do not say so.
 */
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { close, createIndex } from 'pagefind';

/** Folder of the index within the exhibit. */
export const wordIndexFolder = join('search', 'words');

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

/**
 * The number of pages in the index.
 * @throws If the index cannot be made, with the library's own sentences.
 */
export async function writeWordIndex(exhibit: string): Promise<number> {
  try {
    const { index, errors } = await createIndex({ excludeSelectors: ['.away', 'script', 'style'] });
    if (!index) throw new Error(`The index of words could not be begun: ${errors.join(' ')}`);
    const added = await index.addDirectory({ path: exhibit, glob: '**/index.html' });
    const outputPath = join(exhibit, wordIndexFolder);
    const written = await index.writeFiles({ outputPath });
    const faults = [...added.errors, ...written.errors];
    if (faults.length > 0) {
      throw new Error(`The index of words could not be written: ${faults.join(' ')}`);
    }
    await Promise.all(furniture.map((name) => rm(join(outputPath, name), { force: true })));
    return added.page_count;
  } finally {
    await close();
  }
}
