/**
 * What the exhibit needs of Astro: a build fails when a plate's results are missing, stale or
 * refer to nothing (Astro itself would only log it and publish an incomplete site), tiles are
 * served at their final addresses in development, and linked into the finished folder.
 */
import { realpath } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { checkFreshness } from '../pipeline/freshness.ts';
import { readCollection } from '../pipeline/content/read-collection.ts';
import { findPlaces } from '../pipeline/places.ts';
import { readResults } from '../pipeline/results.ts';
import { linkPreviews } from './link-previews.ts';
import { linkTiles } from './link-tiles.ts';
import { serveTiles } from './serve-tiles.ts';
import { themeModule } from './theme-module.ts';
import { writeHostFiles } from './write-host-files.ts';
import { writeLicences } from './write-licences.ts';
import { writeWordIndex } from './write-word-index.ts';

/** Faults that are told one by one; a thousand old plates are one cause. */
const mostFaults = 10;

export default function exhibit(): AstroIntegration {
  const places = findPlaces();
  let address: URL | undefined;
  let base = '/';
  const readLooks = async () => {
    const root = await realpath(places.content);
    return (await readCollection(places.content, root)).theme;
  };

  return {
    name: 'mirrorleaf',
    hooks: {
      'astro:config:setup': async ({ command, logger, updateConfig }) => {
        updateConfig({ vite: { plugins: [themeModule(places.content, readLooks)] } });
        if (command !== 'build' && command !== 'dev') return;
        const faults = await checkFreshness(places);
        if (faults.length === 0) return;
        const rest = faults.length - mostFaults;
        const sentence = [
          ...faults.slice(0, mostFaults),
          ...(rest > 0 ? [`And ${rest} more.`] : []),
          'Run `npm run plates` first, or `npm run build`, which does.',
        ];
        if (command === 'build') throw new Error(sentence.join('\n'));
        for (const line of sentence) logger.warn(line);
      },
      'astro:config:done': ({ config }) => {
        base = config.base.endsWith('/') ? config.base : `${config.base}/`;
        address = config.site ? new URL(config.site) : undefined;
      },
      'astro:server:setup': ({ server }) => {
        server.middlewares.use(serveTiles(places, base));
      },
      'astro:build:done': async ({ dir, pages, logger }) => {
        const started = performance.now();
        const results = await readResults(places);
        const made = new Set(pages.map((page) => page.pathname));
        const missing = results.filter(({ slug }) => !made.has(`plates/${slug}/`));
        if (missing.length > 0) {
          const names = missing.map(({ slug }) => `"${slug}"`).join(', ');
          throw new Error(`Astro made no page for ${names}, and did not say why.`);
        }
        // Before the tiles: the index looks through every folder for pages.
        await writeWordIndex(fileURLToPath(dir));
        const count = await linkTiles(places, results, fileURLToPath(dir), { base, address });
        const published = new Set(results.map(({ slug }) => slug));
        await linkPreviews(places, published, fileURLToPath(dir));
        await writeLicences(fileURLToPath(dir));
        await writeHostFiles(places, published, fileURLToPath(dir), base);
        const seconds = ((performance.now() - started) / 1000).toFixed(1);
        logger.info(`${count} tiles of ${results.length} plates in place (${seconds} s)`);
      },
    },
  };
}
