/**
 * Ways to narrow the index of plates, one at a time, so that no choice is ever empty. Each way
 * is a class on the plates it keeps; a rule made for the page hides the others when its native
 * radio button is chosen, so no script is needed.
 */
import { parseEdtf, yearOfDay } from '../records/edtf.ts';
import type { PublishedPlate } from './exhibit.ts';
import { processInWords } from './label-words.ts';
import { words } from './words.ts';

export interface Facet {
  /** Class of the plates it keeps, and id of its button. */
  readonly id: string;
  readonly name: string;
  readonly slugs: readonly string[];
}

export interface FacetGroup {
  readonly name: string;
  readonly facets: readonly Facet[];
}

/** The decade that a date begins in, such as 1850; null when it has no beginning. */
export function decadeOf(date: string | undefined): number | null {
  const first = date === undefined ? undefined : parseEdtf(date)?.first;
  return typeof first === 'number' ? Math.floor(yearOfDay(first) / 10) * 10 : null;
}

function group(
  name: string,
  prefix: string,
  plates: readonly PublishedPlate[],
  names: (plate: PublishedPlate) => readonly string[],
): FacetGroup {
  const kept = new Map<string, string[]>();
  for (const plate of plates) {
    for (const one of new Set(names(plate))) kept.set(one, [...(kept.get(one) ?? []), plate.slug]);
  }
  const facets = [...kept].map(([facet, slugs], index) => ({
    id: `${prefix}-${index + 1}`,
    name: facet,
    slugs,
  }));
  return { name, facets };
}

/** Groups that tell the plates apart: one that keeps every plate in every choice is left out. */
export function facetGroups(plates: readonly PublishedPlate[]): readonly FacetGroup[] {
  const decade = ({ record }: PublishedPlate) => {
    const found = decadeOf(record.date);
    return found === null ? words.index.undated : words.index.decade(found);
  };
  return [
    group(words.index.process, 'process', plates, (plate) => [processInWords(plate.record)]),
    group(words.index.made, 'made', plates, (plate) => [decade(plate)]),
    group(words.index.photographed, 'light', plates, ({ result }) =>
      result.views.map(({ setupKind }) => words.setup[setupKind]),
    ),
  ].filter(({ facets }) => facets.some(({ slugs }) => slugs.length < plates.length));
}

/** The rules that hide what a choice does not keep. */
export function facetCss(groups: readonly FacetGroup[]): string {
  return groups
    .flatMap(({ facets }) => facets)
    .map(({ id }) => `.index:has(#${id}:checked) .plates>:not(.${id}){display:none}`)
    .join('');
}
