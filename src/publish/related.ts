/**
 * Plates that a reader of one plate may want next, each with the reason in words: the same named
 * maker, then the same kind of light beyond the two readings, the same place, the same time.
 */
import type { PublishedPlate } from './published-plates.ts';
import { decadesOf } from '../records/decades.ts';
import { processInWords } from './process-in-words.ts';
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

/** What two plates can share, with what each counts, the strongest kind first. */
interface Traits {
  readonly kinds: readonly {
    readonly weight: number;
    readonly shared: readonly string[];
    readonly say: (shared: string) => string;
  }[];
}

const asItIs = (shared: string): string => shared;

function traitsOf(plate: PublishedPlate, words: Words): Traits {
  const { record } = plate;
  const kind = (weight: number, shared: readonly string[], say = asItIs) => ({
    ...{ weight, shared: [...new Set(shared)], say },
  });
  return {
    kinds: [
      kind(8, makers(plate), words.plate.sameMaker),
      kind(4, lights(plate, words), (light) => words.plate.sameLight(words.within(light))),
      kind(3, terms(plate, words), words.plate.sameCondition),
      kind(2, [processInWords(record, words)]),
      kind(1, decadesOf(record.date).map(String), (decade) => words.index.decade(Number(decade))),
      kind(1, record.place ? [record.place] : []),
    ],
  };
}

/** All of the plates that likeness is judged by: the same text, the same neighbours. */
export function likenessOf(plates: readonly PublishedPlate[]): string {
  const parts = plates.map(({ slug, record, result }) => [
    slug,
    record.maker.map(({ name }) => name),
    result.views.map(({ setupKind }) => setupKind),
    record.condition.map(({ term }) => term),
    record.process,
    record.date,
    record.place,
  ]);
  return JSON.stringify(parts);
}

type Finder = (slug: string, most: number) => readonly Related[];
const finders = new WeakMap<readonly PublishedPlate[], Map<Words, Finder>>();

/** The nearest plates, at most `most`; none that shares nothing but its process or its decade. */
export function relatedPlates(
  { slug }: PublishedPlate,
  plates: readonly PublishedPlate[],
  words: Words,
  most = 3,
): readonly Related[] {
  const known = finders.get(plates) ?? new Map<Words, Finder>();
  const finder = known.get(words) ?? relatedFinder(plates, words);
  finders.set(plates, known.set(words, finder));
  return finder(slug, most);
}

/**
 * Scores are summed over lists of who shares what, so that ten thousand plates can be asked one
 * after another.
 */
function relatedFinder(plates: readonly PublishedPlate[], words: Words): Finder {
  const traits = plates.map((plate) => traitsOf(plate, words));
  const index = new Map(plates.map(({ slug }, at) => [slug, at]));
  const holders = traits[0]?.kinds.map((_, k) => holdersOf(traits, k)) ?? [];
  const score = new Uint16Array(plates.length);
  const times = new Uint8Array(plates.length);
  return (slug, most) => {
    const at = index.get(slug);
    if (at === undefined) return [];
    score.fill(0);
    for (const [k, { weight, shared }] of traits[at].kinds.entries()) {
      times.fill(0);
      for (const one of shared) {
        // Of one kind two things count, not more.
        for (const other of holders[k].get(one) ?? []) {
          if (times[other] === 2) continue;
          times[other] += 1;
          score[other] += weight;
        }
      }
    }
    score[at] = 0;
    return highest(score, most).map((other) => ({
      plate: plates[other],
      reasons: reasonsFor(traits[at], traits[other]).slice(0, 2),
    }));
  };
}

/** Who has what of one kind. */
function holdersOf(traits: readonly Traits[], kind: number): Map<string, number[]> {
  const holders = new Map<string, number[]>();
  for (const [at, { kinds }] of traits.entries()) {
    for (const one of kinds[kind].shared) {
      const list = holders.get(one);
      if (list) list.push(at);
      else holders.set(one, [at]);
    }
  }
  return holders;
}

/** Indices of the highest scores above 3, the earlier plate first among equals. */
function highest(score: Uint16Array, most: number): number[] {
  const found: number[] = [];
  for (const [at, value] of score.entries()) {
    if (value <= 3 || (found.length === most && value <= score[found[most - 1]])) continue;
    const place = found.findIndex((other) => score[other] < value);
    found.splice(place < 0 ? found.length : place, 0, at);
    found.length = Math.min(found.length, most);
  }
  return found;
}

function reasonsFor(a: Traits, b: Traits): string[] {
  return a.kinds.flatMap(({ shared, say }, k) => common(shared, b.kinds[k].shared).map(say));
}
