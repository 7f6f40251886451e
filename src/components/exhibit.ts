/**
 * The exhibit as the pages see it: the words and the results of each plate joined by slug, in
 * the order of a catalogue. A plate without a result (it failed, or is being written) has no page.
 */
import { getCollection, type CollectionEntry } from 'astro:content';
import type { CollectionRecord } from '../records/collection.ts';
import { compareEdtf, parseEdtf } from '../records/edtf.ts';
import type { PlateRecord } from '../records/plate.ts';
import type { PlateResult, ViewResult } from '../records/result.ts';
import { veiledParts, withoutVeiled } from '../records/veiled-parts.ts';
import type { Reading } from '../records/vocabulary.ts';
import { captureKind } from './view-names.ts';

export interface PublishedPlate {
  readonly slug: string;
  readonly record: PlateRecord;
  readonly result: PlateResult;
  readonly entry: CollectionEntry<'plates'>;
  /** Names of the texts that are in the page's language and not in the original's. */
  readonly translated: ReadonlySet<string>;
  /** Where the text itself is. */
  readonly translation?: CollectionEntry<'plateTexts'>;
}

export interface Exhibit {
  readonly record: CollectionRecord;
  readonly entry: CollectionEntry<'collection'>;
  /** Language of the words. */
  readonly language: string;
}

export async function exhibit(): Promise<Exhibit> {
  const [entry] = await getCollection('collection');
  if (!entry) throw new Error('There is no collection.md in the content folder. Write one first.');
  return { record: entry.data, entry, language: entry.data.languages[0] };
}

export async function publishedPlates(): Promise<readonly PublishedPlate[]> {
  const records = new Map((await getCollection('records')).map(({ id, data }) => [id, data]));
  const plates: PublishedPlate[] = [];
  for (const entry of await getCollection('plates')) {
    const result = records.get(entry.id);
    if (!result) continue;
    plates.push({
      slug: entry.id,
      record: withoutVeiled(entry.data, veiledParts(entry.data)),
      result: withoutWithheld(result, entry.data),
      entry,
      translated: new Set(),
    });
  }
  return plates.sort(inCatalogueOrder);
}

/** The result without the views of captures that are kept but not published. */
function withoutWithheld(result: PlateResult, { withheld }: PlateRecord): PlateResult {
  const views = result.views.filter(
    ({ captures }) => !captures.some((capture) => withheld.includes(capture)),
  );
  const { pair } = result;
  const whole =
    pair && [pair.positive, pair.negative].every((id) => views.some((v) => v.id === id));
  return { ...result, views, pair: whole ? pair : null };
}

const natural = new Intl.Collator('en', { numeric: true });

/** By date, undated last; within a date by object number. */
function inCatalogueOrder(a: PublishedPlate, b: PublishedPlate): number {
  const [first, second] = [a, b].map((plate) => parseEdtf(plate.record.date ?? ''));
  if (first && second && first.first !== second.first) return compareEdtf(first, second);
  if (!first !== !second) return first ? -1 : 1;
  return natural.compare(a.record.objectNumber ?? a.slug, b.record.objectNumber ?? b.slug);
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

/** Entries of techniques or lessons, in the order their writer gave them. */
export function inReadingOrder<T extends { id: string; data: { order?: number | undefined } }>(
  entries: readonly T[],
): T[] {
  return [...entries].sort(
    (a, b) =>
      (a.data.order ?? Infinity) - (b.data.order ?? Infinity) || natural.compare(a.id, b.id),
  );
}
