/**
 * Plates that a reader of one plate may want next, each with the reason in words: the same named
 * maker, then the same kind of light beyond the two readings, the same place, the same time.
 */
import type { PublishedPlate } from './exhibit.ts';
import { decadesOf } from './facets.ts';
import { processInWords } from './label-words.ts';
import type { Words } from '../words/words.ts';

export interface Related {
  readonly plate: PublishedPlate;
  /** Why it is here, strongest first. */
  readonly reasons: readonly string[];
}

/** Makers that are no one: they join nothing. */
const unnamed = /unknown|unidentified|anonym|inconnu|unbekannt|desconocid/i;

const common = (a: readonly string[], b: readonly string[]) => a.filter((one) => b.includes(one));
const makers = ({ record }: PublishedPlate) =>
  record.maker.map(({ name }) => name).filter((name) => !unnamed.test(name));
const lights = ({ result }: PublishedPlate, words: Words): string[] =>
  result.views
    .filter(({ setupKind }) => setupKind !== 'normal' && setupKind !== 'axial')
    .map(({ setupKind }) => words.setup[setupKind]);
const terms = ({ record }: PublishedPlate, words: Words): string[] =>
  record.condition.map(({ term }) => words.conditions[term]);

function likeness(
  a: PublishedPlate,
  b: PublishedPlate,
  words: Words,
): { score: number; reasons: string[] } {
  const process = processInWords(a.record, words);
  const decades = common(
    decadesOf(a.record.date).map(String),
    decadesOf(b.record.date).map(String),
  );
  const found: readonly (readonly [number, readonly string[]])[] = [
    [8, common(makers(a), makers(b)).map(words.plate.sameMaker)],
    [
      4,
      common([...new Set(lights(a, words))], lights(b, words)).map((light) =>
        words.plate.sameLight(words.within(light)),
      ),
    ],
    [3, common([...new Set(terms(a, words))], terms(b, words)).map(words.plate.sameCondition)],
    [2, process === processInWords(b.record, words) ? [process] : []],
    [1, decades.map((decade) => words.index.decade(Number(decade)))],
    [1, a.record.place && a.record.place === b.record.place ? [a.record.place] : []],
  ];
  return {
    score: found.reduce((sum, [weight, reasons]) => sum + weight * Math.min(2, reasons.length), 0),
    reasons: found.flatMap(([, reasons]) => reasons),
  };
}

/** The nearest plates, at most `most`; none that shares nothing but its process or its decade. */
export function relatedPlates(
  plate: PublishedPlate,
  plates: readonly PublishedPlate[],
  words: Words,
  most = 3,
): readonly Related[] {
  return plates
    .filter(({ slug }) => slug !== plate.slug)
    .map((other) => ({ plate: other, ...likeness(plate, other, words) }))
    .filter(({ score }) => score > 3)
    .sort((a, b) => b.score - a.score)
    .slice(0, most)
    .map(({ plate: other, reasons }) => ({ plate: other, reasons: reasons.slice(0, 2) }));
}
