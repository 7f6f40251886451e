/**
 * Whether the results that are there belong to the content that is there. The pages are built
 * from results; a page from an old one would show a plate as it is no longer recorded.
 */
import type { PlateResult } from '../records/result.ts';
import { readContent, type ContentResult } from './content.ts';
import { mapInTurn } from './content/map-in-turn.ts';
import { openFileDigests } from './file-digests.ts';
import type { KeptReadings } from './kept-readings.ts';
import { missingFiles } from './missing-files.ts';
import type { Places } from './places.ts';
import { knownPlateKey } from './plate-key.ts';
import { listResults, readFailure, readResults } from './results.ts';

/** One sentence for each plate whose result is missing, stale, incomplete or of no plate. */
export async function checkFreshness(places: Places): Promise<string[]> {
  return freshnessOf(places, await readContent(places.content), await readResults(places));
}

/** The same of content and results that have been read, `readings` among them. */
export async function freshnessOf(
  places: Places,
  content: ContentResult,
  read: readonly PlateResult[],
  readings?: KeptReadings,
): Promise<string[]> {
  const results = new Map(read.map((result) => [result.slug, result]));
  const digests = await openFileDigests({ root: places.cache, scratch: places.scratch });
  const sentences = await mapInTurn(content.plates, 16, async (plate): Promise<string[]> => {
    const faults: string[] = [];
    const key = await knownPlateKey(plate, digests, content.collection, readings);
    const result = results.get(plate.slug);
    if (result?.key !== key) {
      const failure = await readFailure(places, plate.slug);
      if (failure?.key === key) return [];
    }
    if (!result) {
      faults.push(`Plate "${plate.slug}" has no result yet.`);
    } else if (result.key !== key) {
      faults.push(`The result of plate "${plate.slug}" is older than its content.`);
    } else {
      faults.push(...missingFiles(places, result));
    }
    return faults;
  });
  const faults = sentences.flat();
  const known = new Set(content.plates.map((plate) => plate.slug));
  for (const slug of await listResults(places)) {
    if (!known.has(slug)) faults.push(`There is a result for "${slug}", but no such plate.`);
  }
  return faults;
}

/** Faults that are told one by one; a thousand old plates are one cause. */
const mostFaults = 10;

/** The faults as a person reads them, with what to do; none where there are none. */
export function faultLines(faults: readonly string[]): string[] {
  if (faults.length === 0) return [];
  const rest = faults.length - mostFaults;
  return [
    ...faults.slice(0, mostFaults),
    ...(rest > 0 ? [`And ${rest} more.`] : []),
    'Run `npm run plates` first, or `npm run build`, which does.',
  ];
}
