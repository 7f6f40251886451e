/**
 * Which pages a build makes: those of plates whose key is not the key of what stands in the
 * finished folder. All content is read here, once, and handed to the pages.
 */
import { randomUUID } from 'node:crypto';
import { BuildStopped } from '../pipeline/build-stopped.ts';
import { textsDigest } from '../pipeline/check-texts.ts';
import { openReadings } from '../pipeline/kept-readings.ts';
import type { Places } from '../pipeline/places.ts';
import { readStanding } from '../pipeline/standing.ts';
import { faultLines, freshnessOf } from '../pipeline/freshness.ts';
import { handOver, type PublishedPlate } from '../publish/published-plates.ts';
import { alikePlates } from './alike-plates.ts';
import { exhibitPlates, plateDigests, type ExhibitPlates } from './exhibit-plates.ts';
import { handContent } from './handed-content.ts';
import { openKeptCells, type KeptCells } from './kept-cells.ts';
import { pageKeys } from './page-keys.ts';

export interface PagesToMake extends ExhibitPlates {
  /** Plates whose pages are made; the pages of the others stand already. */
  readonly made: readonly PublishedPlate[];
  /** Where the exhibit stands, which the new pages are to go into. */
  readonly exhibit: string;
  /** Keys of the folders that stand there. */
  readonly standing: ReadonlyMap<string, string>;
  /** The key of each folder that a build may leave as it is, by its path. */
  readonly keys: ReadonlyMap<string, string>;
  /** The key of what a search finds on a plate's pages, by slug. */
  readonly wordKeys: ReadonlyMap<string, string>;
  /** Cells of the index. */
  readonly cells: KeptCells;
}

/** Folders of a plate's pages, one for each language. */
export function plateFolders(slug: string, languages: readonly string[]): string[] {
  return languages.map((language, at) => `${at === 0 ? '' : `${language}/`}plates/${slug}`);
}

/**
 * @throws BuildStopped when results are missing, old or of no plate, or texts are not those that were
 *   checked: a page from them would be wrong.
 */
export async function pagesToMake(places: Places): Promise<PagesToMake> {
  const readings = await openReadings(places);
  const found = await exhibitPlates(places, readings);
  const faults = faultLines(await freshnessOf(places, found.content, found.results, readings));
  if (faults.length > 0) throw new BuildStopped(faults.join('\n'));
  const checked = process.env['MIRRORLEAF_TEXTS'];
  if (checked !== undefined && checked !== textsDigest(found.content)) {
    throw new BuildStopped(
      `A text of the content folder ${places.content} was changed while the exhibit was being made. Run the same command again.`,
    );
  }
  // Not told where Astro is run by hand: then no key is that of something kept.
  const inputs = process.env['MIRRORLEAF_INPUTS'] ?? randomUUID();
  const languages = found.content.collection?.languages ?? [];
  const alike = await alikePlates(inputs, found.plates, languages, readings);
  const digests = await plateDigests(found, readings);
  await readings.save();
  const { pages, words: wordKeys } = pageKeys(inputs, found.plates, digests, alike);
  const exhibit = process.env['MIRRORLEAF_STANDING'] ?? places.out;
  const standing = await readStanding(places, exhibit);
  const keys = new Map(
    [...pages].flatMap(([slug, key]) =>
      plateFolders(slug, languages).map((path): [string, string] => [path, key]),
    ),
  );
  const stands = ({ slug }: PublishedPlate) =>
    plateFolders(slug, languages).every((path) => standing.get(path) === keys.get(path));
  const made = found.plates.filter((plate) => !stands(plate));
  const slugs = new Set(made.map(({ slug }) => slug));
  const cells = await openKeptCells(places, wordKeys);
  handContent(found.content);
  handOver({
    plates: () => Promise.resolve(found.plates),
    isMade: (slug) => slugs.has(slug),
    cellOf: cells.cellOf,
  });
  return { ...found, made, exhibit, standing, keys, wordKeys, cells };
}
