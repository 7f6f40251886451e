/**
 * Texts of named files into Astro's store, made into HTML by its own Markdown processor. Astro's
 * loader by patterns asks every file of the folder about every pattern, which for ten thousand
 * plates takes longer than all pages (measured).
 */
import { readFile } from 'node:fs/promises';
import { relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Loader, LoaderContext } from 'astro/loaders';
import { mapInTurn } from '../pipeline/content/map-in-turn.ts';

/** Texts that are made at the same time. */
const width = 8;

/** @param files Paths by the id that an entry gets. Their fields are left out: only text is kept. */
export function textLoader(files: ReadonlyMap<string, string>): Loader {
  return {
    name: 'texts',
    load: async (context) => {
      context.store.clear();
      await mapInTurn([...files], width, ([id, path]) => loadText(context, id, path));
      const ids = new Map([...files].map(([id, path]) => [path, id]));
      context.watcher?.on('change', (path) => {
        const id = ids.get(path);
        if (id !== undefined) void loadText(context, id, path);
      });
    },
  };
}

async function loadText(context: LoaderContext, id: string, path: string): Promise<void> {
  const text = await readFile(path, 'utf8');
  const rendered = await context.renderMarkdown(text, { fileURL: pathToFileURL(path) });
  context.store.set({
    id,
    data: await context.parseData({ id, data: {} }),
    filePath: relative(fileURLToPath(context.config.root), path).replaceAll('\\', '/'),
    digest: context.generateDigest(text),
    rendered,
    ...(rendered.metadata?.imagePaths && { assetImports: rendered.metadata.imagePaths }),
  });
}
