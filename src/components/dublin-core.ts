/**
 * A plate's record as Dublin Core for the head of its page: catalogues and reference managers
 * read it there.
 *
 * References
 * - DCMI (2008). Expressing Dublin Core metadata using HTML/XHTML meta and link elements.
 */
import type { CollectionRecord } from '../records/collection.ts';
import type { PublishedPlate } from './exhibit.ts';
import type { Speech } from './speech.ts';
import { makersInWords, processInWords } from './label-words.ts';

/** Name without its prefix, and value, in the order of the elements. */
export function plateCore(
  { record }: PublishedPlate,
  collection: CollectionRecord,
  identifier: string,
  { language, words }: Pick<Speech, 'language' | 'words'>,
): readonly (readonly [name: string, value: string])[] {
  const all: readonly (readonly [string, string | undefined])[] = [
    ['title', record.title],
    ['creator', makersInWords(record)],
    ['date', record.date],
    ['coverage', record.place],
    ['description', record.description.positive],
    ['type', 'PhysicalObject'],
    ['format', processInWords(record, words)],
    ['identifier', identifier],
    ['identifier', record.objectNumber],
    ['publisher', collection.institution.name],
    ['relation', collection.title],
    ['rights', record.rights],
    ['language', language],
  ];
  return all.filter((pair): pair is [string, string] => pair[1] !== undefined);
}
