/** A plate's record in the few words of a label. */
import type { PublishedPlate } from './exhibit.ts';
import type { Said } from './speech.ts';
import { parseEdtf } from '../records/edtf.ts';
import { edtfLanguage, formatEdtf } from '../records/edtf-words.ts';
import type { PlateRecord } from '../records/plate.ts';
import { rightsLabel } from '../records/vocabulary.ts';
import { processInWords } from '../publish/process-in-words.ts';
import type { Words } from '../words/words.ts';

export function dateInWords(date: string | undefined, language: string): string | undefined {
  const parsed = date === undefined ? null : parseEdtf(date);
  return parsed ? formatEdtf(parsed, edtfLanguage(language)) : undefined;
}

export { processInWords };

export function makersInWords({ maker }: PlateRecord): string | undefined {
  const makers = maker.map(({ name, role, place }) =>
    [name, role, place].filter(Boolean).join(', '),
  );
  return makers.length > 0 ? makers.join('; ') : undefined;
}

/** The parts that there are, those of the museum in their own language. */
export function saidParts(parts: readonly (Said | string | undefined | false)[]): Said[] {
  return parts.flatMap((part) => {
    if (part === undefined || part === false || part === '') return [];
    return typeof part === 'string' ? { text: part } : part;
  });
}

/** @param original The museum's language where the page has another one. */
export function makersSaid(
  { record, translated }: PublishedPlate,
  original: string | undefined,
): Said | undefined {
  const text = makersInWords(record);
  const own = [...translated].some((name) => name.startsWith('maker.'));
  return text === undefined ? undefined : { text, lang: own ? undefined : original };
}

/** Each maker by name alone. */
export function makerNames(
  { record, translated }: PublishedPlate,
  original: string | undefined,
): Said[] {
  return record.maker.map(({ name }, k) => ({
    text: name,
    lang: translated.has(`maker.${k}.name`) ? undefined : original,
  }));
}

/** Where it was made. */
export function placeSaid(
  { record, translated }: PublishedPlate,
  original: string | undefined,
): Said | undefined {
  if (record.place === undefined) return undefined;
  return { text: record.place, lang: translated.has('place') ? undefined : original };
}

/** A process has a word in every language, or the museum's own one. */
export function processSaid(
  { record, translated }: PublishedPlate,
  words: Words,
  original: string | undefined,
): Said {
  const { process } = record;
  const own = typeof process !== 'string' && process.text !== undefined;
  const lang = own && !translated.has('process.text') ? original : undefined;
  return { text: processInWords(record, words), lang };
}

/** What a rights URI is called; licences of Creative Commons have one name in all languages. */
export function rightsInWords(uri: string, words: Words): string {
  const statement = /rightsstatements\.org\/vocab\/([^/]+)\//.exec(uri)?.[1];
  return words.rightsStatements[statement ?? ''] ?? rightsLabel(uri) ?? uri;
}
