/**
 * What the exhibit needs of Astro: a build fails when a plate's results are missing, stale or
 * refer to nothing (Astro itself would only log it and publish an incomplete site), tiles are
 * served at their final addresses in development, and linked into the finished folder.
 */
import { realpath } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { readCollection } from '../pipeline/content/read-collection.ts';
import { checkFreshness, faultLines } from '../pipeline/freshness.ts';
import { findPlaces } from '../pipeline/places.ts';
import { furnish } from './furnish.ts';
import { madeFirst } from './made-first.ts';
import { pagesToMake, type PagesToMake } from './pages-to-make.ts';
import { serveTiles } from './serve-tiles.ts';
import { showPlates } from './show-plates.ts';
import { themeModule } from './theme-module.ts';
import { beginWordIndex, type WordIndex } from './word-index.ts';

export default function exhibit(): AstroIntegration {
  const places = findPlaces();
  let address: URL | undefined;
  let base = '/';
  let making: PagesToMake | undefined;
  let words: WordIndex | undefined;
  const readLooks = async () => {
    const root = await realpath(places.content);
    return (await readCollection(places.content, root)).theme;
  };

  return {
    name: 'mirrorleaf',
    hooks: {
      'astro:config:setup': async ({ command, logger, updateConfig }) => {
        updateConfig({ vite: { plugins: [themeModule(places.content, readLooks)] } });
        if (command === 'build') {
          making = await pagesToMake(places);
          words = beginWordIndex(places.out, making);
          return;
        }
        await showPlates(places);
        if (command !== 'dev') return;
        for (const line of faultLines(await checkFreshness(places))) logger.warn(line);
      },
      'astro:config:done': ({ config }) => {
        base = config.base.endsWith('/') ? config.base : `${config.base}/`;
        address = config.site ? new URL(config.site) : undefined;
      },
      'astro:server:setup': ({ server }) => {
        server.middlewares.use(serveTiles(places, base));
      },
      'astro:build:start': ({ setPrerenderer }) => {
        if (words) setPrerenderer(madeFirst(words.awaited));
      },
      'astro:build:done': async ({ dir, pages, logger }) => {
        if (!making || !words) throw new Error('Astro ended a build that it had not begun.');
        const started = performance.now();
        const made = new Set(pages.map((page) => page.pathname));
        const missing = making.made.filter(({ slug }) => !made.has(`plates/${slug}/`));
        if (missing.length > 0) {
          const names = missing.map(({ slug }) => `"${slug}"`).join(', ');
          throw new Error(`Astro made no page for ${names}, and did not say why.`);
        }
        const out = fileURLToPath(dir);
        const count = await furnish(places, making, out, { base, address }, words);
        const seconds = ((performance.now() - started) / 1000).toFixed(1);
        logger.info(`${count} tiles of ${making.made.length} plates in place (${seconds} s)`);
      },
    },
  };
}
