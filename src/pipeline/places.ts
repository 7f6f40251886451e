/** Where things lie: content, results, output. The only place that knows these paths. */
import { createHash } from 'node:crypto';
import { join, resolve } from 'node:path';

export interface Places {
  /** The folder that the museum writes: collection.md, plates/, techniques/ ... */
  readonly content: string;
  /** Results of all content folders, safe to delete. */
  readonly cache: string;
  /** `records/<slug>/record.json` of this content folder. */
  readonly records: string;
  /** What was read of the files of this content folder, and of its results. */
  readonly readings: string;
  /** What Astro keeps of the pages of this content folder. */
  readonly pages: string;
  /** Tile folders by digest, shared by all content folders. */
  readonly tiles: string;
  /** Folders of data planes by digest, likewise. */
  readonly layers: string;
  /** Private folders of running builds, on the same file system as the results. */
  readonly scratch: string;
  /** The exhibit. */
  readonly out: string;
}

const project = resolve(import.meta.dirname, '..', '..');

export interface PlaceOptions {
  readonly content?: string | undefined;
  readonly cache?: string | undefined;
  readonly out?: string | undefined;
}

/** Paths from options, then from the environment, then the project's own folders. */
export function findPlaces(
  options: PlaceOptions = {},
  env: NodeJS.ProcessEnv = process.env,
): Places {
  const content = resolve(options.content ?? env['MIRRORLEAF_CONTENT'] ?? join(project, 'content'));
  const cache = resolve(
    options.cache ?? env['MIRRORLEAF_CACHE'] ?? join(project, '.cache', 'mirrorleaf'),
  );
  const out = resolve(options.out ?? env['MIRRORLEAF_OUT'] ?? join(project, 'dist'));
  const contentId = createHash('sha256').update(content).digest('hex').slice(0, 12);
  return {
    content,
    cache,
    records: join(cache, 'records', contentId),
    readings: join(cache, 'readings', contentId),
    pages: join(cache, 'pages', contentId),
    tiles: join(cache, 'tiles'),
    layers: join(cache, 'layers'),
    scratch: join(cache, 'scratch'),
    out,
  };
}

/** Path of the exhibit on its host, with both slashes; `/` where nothing is said. */
export function exhibitBase(env: NodeJS.ProcessEnv = process.env): string {
  return `${(env['MIRRORLEAF_BASE'] ?? '/').replace(/\/+$/, '')}/`;
}
