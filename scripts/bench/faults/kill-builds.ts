/**
 * Builds killed at random moments. The moment is uniform over the work of the plates, or over
 * that of the pages. One that falls among the plates is met by a build of the plates, which
 * begins from what the kills before have left, or from nothing when that was completed; one that
 * falls among the pages by a build whose plates are ready. After each kill everything with a name
 * must be whole, the exhibit whole or not there, and the captures as they were.
 *
 * A long build of the plates is killed within its first `reach` of work each time: since it goes
 * on from where the kill before left it, the kills still fall into all its stages.
 */
import { cp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { seeded } from '../../../tests/raster/test-pictures.ts';
import { killBuild, wholeBuild, type BuildFolders } from './build-process.ts';
import {
  differences,
  digestsBelow,
  namedResults,
  strangers,
  type Digests,
} from '../../../tests/pipeline/named-results.ts';

export interface KillOrder {
  readonly content: string;
  /** A folder for everything that is made. */
  readonly folder: string;
  readonly kills: number;
  readonly seed: number;
  /** The most work that a build of the plates is allowed, milliseconds. */
  readonly reach: number;
  /** The share of kills that fall among the pages; as much as of the work where null. */
  readonly pagesShare: number | null;
  /** After so many kills both caches are completed and looked at, and the times taken again. */
  readonly part: number;
  readonly log: (line: string) => void;
}

export interface KillCount {
  plates: number;
  pages: number;
  corrupt: number;
  lost: number;
  halfPublished: number;
  differing: number;
}

interface Whole {
  readonly results: Digests;
  readonly exhibit: Digests;
}

export async function killBuilds(order: KillOrder): Promise<KillCount> {
  const { folder, content, log, reach } = order;
  const at = (name: string): BuildFolders => {
    return { content, cache: join(folder, name), compiled: join(folder, 'compiled') };
  };
  const [whole, plates, pages] = [at('whole'), at('plates'), at('pages')];
  const captures = await digestsBelow(content);
  // Begun before it counts, so that the modules are compiled.
  await killBuild('plates.ts', whole, 2000);
  let times = await undisturbed(whole);
  const expected = await wholeOf(whole.cache);
  await cp(whole.cache, pages.cache, { recursive: true, preserveTimestamps: true });
  await withoutPages(pages.cache);

  const random = seeded(order.seed);
  const count: KillCount = {
    plates: 0,
    pages: 0,
    corrupt: 0,
    lost: 0,
    halfPublished: 0,
    differing: 0,
  };
  for (let killed = 0; killed < order.kills;) {
    const share = order.pagesShare ?? times.pages / (times.plates + times.pages);
    const among = random() < share ? 'pages' : 'plates';
    const { cache } = among === 'plates' ? plates : pages;
    const { struck } =
      among === 'plates'
        ? await killBuild('plates.ts', plates, random() * Math.min(times.plates, reach))
        : await killBuild('build.ts', pages, random() * times.pages);
    await look(cache, expected, count, log);
    if (differences(await digestsBelow(content), captures).length > 0) count.lost += 1;
    if (struck) {
      killed += 1;
      count[among] += 1;
    } else if (among === 'plates') await rm(cache, { recursive: true, force: true });
    else await withoutPages(cache);
    if (struck && killed % 10 === 0) log(`${killed} kills: ${JSON.stringify(count)}`);
    if (!struck || (killed % order.part !== 0 && killed !== order.kills)) continue;
    for (const folders of [plates, pages]) {
      await wholeBuild('build.ts', folders);
      const last = await wholeOf(folders.cache);
      count.differing += differences(last.exhibit, expected.exhibit).length;
      count.corrupt += differences(last.results, expected.results).length;
    }
    log(`completed after ${killed} kills: ${JSON.stringify(count)}`);
    if (killed === order.kills) break;
    await rm(plates.cache, { recursive: true, force: true });
    await withoutPages(pages.cache);
    times = await undisturbed(whole);
  }
  return count;
}

/** Work of the plates from nothing, and of the pages from nothing with the plates ready. */
async function undisturbed(whole: BuildFolders) {
  await rm(whole.cache, { recursive: true, force: true });
  const plates = await wholeBuild('plates.ts', whole);
  return { plates, pages: await wholeBuild('build.ts', whole) };
}

async function wholeOf(cache: string): Promise<Whole> {
  return {
    results: await namedResults(cache),
    exhibit: await digestsBelow(join(cache, 'exhibit')),
  };
}

async function withoutPages(cache: string): Promise<void> {
  for (const name of ['pages', 'previews', 'exhibit']) {
    await rm(join(cache, name), { recursive: true, force: true });
  }
}

async function look(
  cache: string,
  expected: Whole,
  count: KillCount,
  log: KillOrder['log'],
): Promise<void> {
  const now = await wholeOf(cache);
  const corrupt = strangers(now.results, expected.results);
  if (corrupt.length > 0) log(`not whole: ${corrupt.join(', ')}`);
  count.corrupt += corrupt.length;
  if (Object.keys(now.exhibit).length === 0) return;
  const wrong = differences(now.exhibit, expected.exhibit);
  if (wrong.length > 0) log(`half published: ${wrong.slice(0, 5).join(', ')}`);
  count.halfPublished += wrong.length > 0 ? 1 : 0;
}
