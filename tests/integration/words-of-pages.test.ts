import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { close, createIndex } from 'pagefind';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeWords } from '../../src/integration/words-of-pages.ts';
import { folderDigests } from '../pipeline/folder-digests.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-words-'));
});
afterAll(async () => {
  await close();
  await rm(folder, { recursive: true, force: true });
});

const page = (title: string, main = 'data-pagefind-body data-pagefind-meta="kind:Plate"') =>
  `<!doctype html><html lang="fr"><head><title>${title}</title><style>p { color: red }</style></head>
  <body><header><a href="/">Every plate of the museum</a></header>
  <main id="main" ${main}><h1>${title}</h1><p>Une plaque <script>let unseen;</script> de ${title}</p>
  <img src="x.jpg" alt="${title}, en négatif"><nav data-pagefind-ignore>Voisins</nav></main>
  <footer>Printed in the footer</footer></body></html>`;
const pages: Readonly<Record<string, string>> = {
  'plates/quai/index.html': page('Le quai'),
  'plates/bassin/index.html': page('Le bassin'),
  'about/index.html': page('À propos', ''),
};

test('the index of the parts that are searched is that of whole pages, whatever their order', async () => {
  const { index } = await createIndex({ excludeSelectors: ['.away', 'script', 'style'] });
  for (const sourcePath of Object.keys(pages).sort()) {
    const content = pages[sourcePath];
    // The library takes a page without the mark for one that is searched whole.
    if (content.includes('data-pagefind-body')) await index!.addHTMLFile({ sourcePath, content });
  }
  await index!.writeFiles({ outputPath: join(folder, 'whole') });
  await index!.deleteIndex();

  const listed = Object.keys(pages).map((path) => ({ path, file: path }));
  await writeWords(join(folder, 'parts'), listed, (file) => pages[file]);
  const parts = await folderDigests(join(folder, 'parts'));
  const whole = Object.entries(await folderDigests(join(folder, 'whole')));
  const furniture = /-ui\.|-highlight\./;
  expect(parts).toEqual(Object.fromEntries(whole.filter(([name]) => !furniture.test(name))));
  expect(Object.keys(parts).filter((name) => name.includes('fragment'))).toHaveLength(2);
});
