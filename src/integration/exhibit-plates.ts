/** The plates of a content folder joined with their results, for pages that are made or shown. */
import { createHash } from 'node:crypto';
import { readContent, type ContentResult } from '../pipeline/content.ts';
import type { KeptReadings } from '../pipeline/kept-readings.ts';
import type { Places } from '../pipeline/places.ts';
import { readResults } from '../pipeline/results.ts';
import {
  inCatalogueOrder,
  type PlateSource,
  type PublishedPlate,
} from '../publish/published-plates.ts';
import type { PlateResult } from '../records/result.ts';
import type { PlateDigest } from './page-keys.ts';

export interface ExhibitPlates {
  readonly content: ContentResult;
  /** All that there are, also of plates that are not published. */
  readonly results: readonly PlateResult[];
  readonly plates: readonly PublishedPlate[];
}

/** @param readings Files that have not changed are taken from here. */
export async function exhibitPlates(
  places: Places,
  readings?: KeptReadings,
): Promise<ExhibitPlates> {
  const content = await readContent(places.content, readings);
  const results = await readResults(places, readings);
  const bySlug = new Map(results.map((result) => [result.slug, result]));
  const texts = Map.groupBy(content.overlays, ({ plate }) => plate);
  const sources = content.plates.flatMap(({ slug, record, sittings }): PlateSource[] => {
    const result = bySlug.get(slug);
    if (!record || !result) return [];
    return [
      {
        slug,
        record,
        result,
        sittings: new Map(sittings.map((sitting) => [sitting.id, sitting.record])),
        texts: (texts.get(slug) ?? []).map((text) => ({
          language: text.language,
          record: text.record,
          hasBody: text.body.trim() !== '',
        })),
      },
    ];
  });
  return { content, results, plates: inCatalogueOrder(sources) };
}

/**
 * Digest and text of each plate's own files and results.
 *
 * @param readings Where these were kept and have not changed, so may their digest be.
 */
export async function plateDigests(
  { content, plates }: ExhibitPlates,
  readings: KeptReadings,
): Promise<ReadonlyMap<string, PlateDigest>> {
  const bodies = new Map(content.plates.map(({ slug, body }) => [slug, body]));
  const texts = Map.groupBy(content.overlays, ({ plate }) => plate);
  const found = new Map<string, PlateDigest>();
  for (const { slug, record, result, sittings } of plates) {
    const body = bodies.get(slug) ?? '';
    const translated = texts.get(slug) ?? [];
    const work = () => {
      const parts = [record, result, [...sittings], body, translated];
      return Promise.resolve(createHash('sha256').update(JSON.stringify(parts)).digest('hex'));
    };
    const kinds = ['plate', 'overlays', 'result'] as const;
    const prints = kinds.map((kind) => readings.printOf(kind, slug));
    const print = prints.includes(null) ? null : prints.join('\n');
    const digest = await readings.of('digest', slug, print, work);
    found.set(slug, { digest, text: [body, ...translated.map((text) => text.body)].join('\n') });
  }
  return found;
}
