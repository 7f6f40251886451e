/**
 * The exhibit as the pages see it: the words and the results of each plate joined by slug, in
 * the order of a catalogue. A plate without a result (it failed, or is being written) has no page.
 */
import { getCollection, type CollectionEntry } from 'astro:content';
import type { CollectionRecord } from '../records/collection.ts';
import { compareEdtf, parseEdtf } from '../records/edtf.ts';
import { edtfLanguage, formatEdtf } from '../records/edtf-words.ts';
import type { PlateRecord } from '../records/plate.ts';
import type { PlateResult, ViewResult } from '../records/result.ts';
import type { Reading } from '../records/vocabulary.ts';

export interface PublishedPlate {
  readonly slug: string;
  readonly record: PlateRecord;
  readonly result: PlateResult;
  readonly entry: CollectionEntry<'plates'>;
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
    if (result) plates.push({ slug: entry.id, record: entry.data, result, entry });
  }
  return plates.sort(inCatalogueOrder);
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

export function dateInWords(date: string | undefined, language: string): string | undefined {
  const parsed = date === undefined ? null : parseEdtf(date);
  return parsed ? formatEdtf(parsed, edtfLanguage(language)) : undefined;
}

/** Name of the process as a label says it. */
export function processInWords({ process }: PlateRecord): string {
  if (typeof process === 'string') return process;
  return process.text ?? process.name;
}

export function makersInWords({ maker }: PlateRecord): string | undefined {
  const makers = maker.map(({ name, role, place }) =>
    [name, role, place].filter(Boolean).join(', '),
  );
  return makers.length > 0 ? makers.join('; ') : undefined;
}

/** Techniques that a set-up kind belongs to, by id: the page that says what that light shows. */
export async function techniqueIds(): Promise<ReadonlySet<string>> {
  return new Set((await getCollection('techniques')).map(({ id }) => id));
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
