/** The exhibit as the pages see it. */
import { getCollection, getEntry, type CollectionEntry } from 'astro:content';
import { handedOver, type PublishedPlate } from '../publish/published-plates.ts';
import type { CollectionRecord } from '../records/collection.ts';
import type { PlateResult, ViewResult } from '../records/result.ts';
import type { Reading } from '../records/vocabulary.ts';
import { captureKind } from './view-names.ts';

export type { PublishedPlate } from '../publish/published-plates.ts';

export interface Exhibit {
  readonly record: CollectionRecord;
  readonly entry: CollectionEntry<'collection'>;
  /** Language of the words. */
  readonly language: string;
}

/** Asked for by every component, and the same for all of one build. */
let ofThisBuild: Promise<Exhibit> | undefined;

export function exhibit(): Promise<Exhibit> {
  if (import.meta.env.DEV) return readExhibit();
  ofThisBuild ??= readExhibit();
  return ofThisBuild;
}

async function readExhibit(): Promise<Exhibit> {
  const [entry] = await getCollection('collection');
  if (!entry) throw new Error('There is no collection.md in the content folder. Write one first.');
  return { record: entry.data, entry, language: entry.data.languages[0] };
}

export function publishedPlates(): Promise<readonly PublishedPlate[]> {
  return handedOver().plates();
}

/** The text of a plate, in the language that `platesIn` found it in. */
export async function plateText({ slug, translation }: PublishedPlate) {
  const entry =
    translation === undefined
      ? await getEntry('plates', slug)
      : await getEntry('plateTexts', `${slug}/${translation}`);
  if (!entry) throw new Error(`The text of "${slug}" is not among those of this build.`);
  return entry;
}

/** The view of a reading: the half of the pair, or the first one that reads so. */
export function viewOf(
  { result }: PublishedPlate,
  reading: Extract<Reading, 'positive' | 'negative'>,
): ViewResult | undefined {
  const paired = result.pair?.[reading];
  return (
    result.views.find((view) => view.id === paired) ??
    result.views.find((view) => view.reading === reading)
  );
}

/** Kinds of capture that are a technique of their own, whatever light they were made in. */
const kindsWithPage = ['bracket', 'lights', 'mosaic'];

/**
 * Id of the technique that made a view: of its kind of capture where that has a page of the
 * same name, else of its light.
 */
export async function techniqueOf(
  result: PlateResult,
  view: ViewResult,
): Promise<string | undefined> {
  const techniques = inReadingOrder(await getCollection('techniques'));
  const kind = captureKind(result, view);
  const own = techniques.find(({ id }) => kindsWithPage.includes(id) && id === kind);
  const byLight = techniques.find(({ data }) => data.setup === view.setupKind);
  return (own ?? byLight)?.id;
}

const natural = new Intl.Collator('en', { numeric: true });

/** Entries of techniques or lessons, in the order their writer gave them. */
export function inReadingOrder<T extends { id: string; data: { order?: number | undefined } }>(
  entries: readonly T[],
): T[] {
  return [...entries].sort(
    (a, b) =>
      (a.data.order ?? Infinity) - (b.data.order ?? Infinity) || natural.compare(a.id, b.id),
  );
}
