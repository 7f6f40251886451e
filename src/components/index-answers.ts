/** The questions of the index and which answers each plate is among: the same in every order. */
import type { PublishedPlate } from './exhibit.ts';
import { dateSpan, facetGroups, type FacetGroup } from './facets.ts';
import type { Speech } from './speech.ts';

export interface IndexAnswers {
  readonly groups: readonly FacetGroup[];
  readonly span: readonly FacetGroup[];
  /** The classes of each plate, by slug. */
  readonly classes: ReadonlyMap<string, string>;
}

const found = new WeakMap<readonly PublishedPlate[], IndexAnswers>();

/** @param plates The list of a language (`platesIn`), which is one for all pages of a build. */
export function indexAnswers(
  plates: readonly PublishedPlate[],
  { words, original }: Pick<Speech, 'words' | 'original'>,
): IndexAnswers {
  const before = found.get(plates);
  if (before) return before;
  const groups = facetGroups(plates, words, original);
  const span = dateSpan(plates, words);
  const classes = new Map(plates.map(({ slug }) => [slug, [] as string[]]));
  for (const { id, slugs } of [...groups, ...span].flatMap(({ facets }) => facets)) {
    for (const slug of new Set(slugs)) classes.get(slug)?.push(id);
  }
  const joined = new Map([...classes].map(([slug, ids]) => [slug, ids.join(' ')]));
  const answers = { groups, span, classes: joined };
  found.set(plates, answers);
  return answers;
}
