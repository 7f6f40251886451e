/**
 * Ways to narrow the index of plates. Each group asks one question and each answer is a class on
 * the plates it keeps; rules made for the page hide the others when a native radio button or
 * option is chosen, so groups can be combined and no script is needed.
 */
import { decadesOf } from '../records/decades.ts';
import { sizeName } from '../records/plate-sizes.ts';
import type { PublishedPlate } from './exhibit.ts';
import { makerNames, placeSaid, processSaid, saidParts } from './label-words.ts';
import type { Said } from './speech.ts';
import type { Words } from '../words/words.ts';

export interface Facet {
  /** Class of the plates it keeps, and id of its button. */
  readonly id: string;
  readonly name: string;
  /** Language of the name where it is not the page's. */
  readonly lang?: string | undefined;
  readonly slugs: readonly string[];
}

export interface FacetGroup {
  /** Prefix of its facets' ids, and its name in the page's address. */
  readonly key: string;
  readonly name: string;
  readonly facets: readonly Facet[];
}

const natural = new Intl.Collator('en', { numeric: true });

function group(
  key: string,
  name: string,
  plates: readonly PublishedPlate[],
  names: (plate: PublishedPlate) => readonly (Said | string | undefined)[],
): FacetGroup {
  const kept = new Map<string, { readonly lang: string | undefined; readonly slugs: string[] }>();
  for (const plate of plates) {
    const own = new Map(saidParts(names(plate)).map(({ text, lang }) => [text, lang]));
    for (const [text, lang] of own) {
      const facet = kept.get(text) ?? { lang, slugs: [] };
      facet.slugs.push(plate.slug);
      kept.set(text, facet);
    }
  }
  const facets = [...kept]
    .sort(([a], [b]) => natural.compare(a, b))
    .map(([text, facet], index) => ({ id: `${key}-${index + 1}`, name: text, ...facet }));
  return { key, name, facets };
}

/** From and to: every decade that the plates span keeps those that reach to it from one side. */
function spanGroups(plates: readonly PublishedPlate[], words: Words): FacetGroup[] {
  const dated = plates.map(({ slug, record }) => ({ slug, decades: decadesOf(record.date) }));
  const known = [...new Set(dated.flatMap(({ decades }) => decades))].sort((a, b) => a - b);
  const side = (key: string, name: string, keeps: (decades: number[], at: number) => boolean) => ({
    key,
    name,
    facets: known.map((at) => ({
      id: `${key}-${at}`,
      name: words.index.decade(at),
      slugs: dated.filter(({ decades }) => keeps(decades, at)).map(({ slug }) => slug),
    })),
  });
  return [
    side('from', words.index.from, (decades, at) => decades.some((decade) => decade >= at)),
    side('to', words.index.to, (decades, at) => decades.some((decade) => decade <= at)),
  ];
}

function tellsApart(plates: readonly PublishedPlate[]) {
  return ({ facets }: FacetGroup) => facets.some(({ slugs }) => slugs.length < plates.length);
}

/**
 * Groups that tell the plates apart: one that keeps every plate in every choice is left out.
 *
 * @param original The museum's language where the page has another one.
 */
export function facetGroups(
  plates: readonly PublishedPlate[],
  words: Words,
  original?: string,
): readonly FacetGroup[] {
  const { index } = words;
  return [
    group('process', index.process, plates, (plate) => [processSaid(plate, words, original)]),
    group('size', index.size, plates, ({ record }) => {
      const name = sizeName(record.size);
      return name === null ? [] : [words.label.namedSize(words.sizes[name] ?? name)];
    }),
    group('colour', words.label.colour, plates, ({ record }) =>
      record.handColouring === false ? [] : [words.label.coloured],
    ),
    group('maker', index.maker, plates, (plate) => makerNames(plate, original)),
    group('place', index.place, plates, (plate) => [placeSaid(plate, original)]),
    group('light', index.photographed, plates, ({ result }) =>
      result.views.map(({ setupKind }) => words.setup[setupKind]),
    ),
    group('reading', index.reading, plates, ({ result }) =>
      result.views.map(({ reading }) => words.reading[reading]),
    ),
    group('condition', index.condition, plates, ({ record }) =>
      record.condition.map(({ term }) => words.conditions[term]),
    ),
  ].filter(tellsApart(plates));
}

/** The two ends of a span of dates; none where all plates are of one decade. */
export function dateSpan(plates: readonly PublishedPlate[], words: Words): readonly FacetGroup[] {
  return spanGroups(plates, words).filter(tellsApart(plates));
}

/**
 * The rules that hide what a choice does not keep. What is asked for the choice is the form, a
 * sibling of the list, and not what holds both: a browser would look through the whole list for
 * each plate and each rule (25 s for 1,000 plates and 69 rules).
 */
export function facetCss(groups: readonly FacetGroup[]): string {
  return groups
    .flatMap(({ facets }) => facets)
    .map(({ id }) => `.ways:has(#${id}:checked)~.plates>:not(.${id}){display:none}`)
    .join('');
}
