/**
 * Which plates each plate's page shows as related. Judging ten thousand plates by one another
 * takes longer than all else that a build with one change does, and mostly gives what it gave.
 */
import { createHash } from 'node:crypto';
import type { KeptReadings } from '../pipeline/kept-readings.ts';
import type { PublishedPlate } from '../publish/published-plates.ts';
import { likenessOf, relatedPlates } from '../publish/related.ts';
import { wordsIn } from '../words/words.ts';

/** @param everywhere Digest of the program among others. */
export function alikePlates(
  everywhere: string,
  plates: readonly PublishedPlate[],
  languages: readonly string[],
  readings: KeptReadings,
): Promise<Readonly<Record<string, readonly string[]>>> {
  const tongues = [...new Set(languages.map((language) => wordsIn(language)))];
  const judge = () =>
    Object.fromEntries(
      plates.map((one) => [
        one.slug,
        tongues
          .flatMap((words) => relatedPlates(one, plates, words))
          .map(({ plate }) => plate.slug),
      ]),
    );
  const print = createHash('sha256')
    .update(JSON.stringify([everywhere, languages]))
    .update(likenessOf(plates))
    .digest('hex');
  return readings.of('alike', 'all', print, () => Promise.resolve(judge()));
}
