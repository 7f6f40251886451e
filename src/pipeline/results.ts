/** The results that are there: `record.json` of each plate, and the list of plates that failed. */
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { findingSchema } from '../records/finding.ts';
import { resultSchema, type PlateResult } from '../records/result.ts';
import { mapInTurn } from './content/map-in-turn.ts';
import { filePrint } from './file-print.ts';
import type { KeptReadings } from './kept-readings.ts';
import type { Places } from './places.ts';
import { readJson, writeWhole, type Store } from './store.ts';

const failureSchema = z.strictObject({
  slug: z.string(),
  /** Key of the input that failed: the same input need not be tried again to know. */
  key: z.string(),
  findings: z.array(findingSchema),
});
export type PlateFailure = z.output<typeof failureSchema>;

export function recordFile(places: Places, slug: string): string {
  return join(places.records, slug, 'record.json');
}

export function failureFile(places: Places, slug: string): string {
  return join(places.records, slug, 'failed.json');
}

/** The result of one plate, or null when there is none that can be read. */
export async function readResult(places: Places, slug: string): Promise<PlateResult | null> {
  const found = await readJson(recordFile(places, slug), (value) => resultSchema.parse(value));
  return found.ok ? found.value : null;
}

export async function readFailure(places: Places, slug: string): Promise<PlateFailure | null> {
  const found = await readJson(failureFile(places, slug), (value) => failureSchema.parse(value));
  return found.ok ? found.value : null;
}

/**
 * All results of this content folder, by slug.
 *
 * @param readings Files that have not changed are taken from here.
 */
export async function readResults(places: Places, readings?: KeptReadings): Promise<PlateResult[]> {
  const slugs = await listResults(places);
  const results = await mapInTurn(slugs, 16, async (slug) => {
    if (!readings) return readResult(places, slug);
    const print = filePrint(recordFile(places, slug));
    const read = () => readResult(places, slug);
    return readings.of('result', slug, print, read, (result) => result !== null);
  });
  return results.filter((result) => result !== null);
}

/** Slugs that have a folder of results, good or failed. */
export async function listResults(places: Places): Promise<string[]> {
  const entries = await readdir(places.records, { withFileTypes: true }).catch(() => []);
  return entries
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}

export async function writeResult(places: Places, store: Store, result: PlateResult) {
  await writeWhole(store, recordFile(places, result.slug), `${JSON.stringify(result, null, 1)}\n`);
}

export async function writeFailure(places: Places, store: Store, failure: PlateFailure) {
  await writeWhole(store, failureFile(places, failure.slug), `${JSON.stringify(failure)}\n`);
}
