/** The demonstration's records in the further languages: no sentence on a plate's page is left in English. */
import { expect, test } from 'vitest';
import { findPlaces } from '../../src/pipeline/places.ts';
import { readResults } from '../../src/pipeline/results.ts';
import { recordedIn } from '../../src/words/recorded.ts';

const results = await readResults(findPlaces());

test.each(['fr', 'de', 'es'])(
  'how each view was made, and its figures, are said in %s',
  (language) => {
    const say = recordedIn(language);
    const texts = results.flatMap(({ views, frame, sittings }) => [
      frame.scaleFrom,
      ...views.flatMap(({ made, caution, figures }) => [
        ...[made, caution],
        ...figures.map(({ label }) => label),
      ]),
      ...sittings.flatMap(({ captures }) =>
        captures.flatMap(({ inspection, registration }) => [
          'method' in registration ? registration.method : null,
          ...(inspection?.measurements ?? []).flatMap(({ label, from }) => [label, from]),
        ]),
      ),
    ]);
    const known = new Set(texts.filter((text) => text !== null));
    expect(known.size).toBeGreaterThan(80);
    expect([...known].filter((text) => say(text) === null)).toEqual([]);
  },
);
