/** A plate's record in the few words of a label. */
import { parseEdtf } from '../records/edtf.ts';
import { edtfLanguage, formatEdtf } from '../records/edtf-words.ts';
import type { PlateRecord } from '../records/plate.ts';
import { rightsLabel } from '../records/vocabulary.ts';
import type { Words } from '../words/words.ts';

export function dateInWords(date: string | undefined, language: string): string | undefined {
  const parsed = date === undefined ? null : parseEdtf(date);
  return parsed ? formatEdtf(parsed, edtfLanguage(language)) : undefined;
}

/** Name of the process as a label says it. */
export function processInWords({ process }: PlateRecord, words: Words): string {
  if (typeof process === 'string') return words.process[process];
  return process.text ?? words.process[process.name];
}

export function makersInWords({ maker }: PlateRecord): string | undefined {
  const makers = maker.map(({ name, role, place }) =>
    [name, role, place].filter(Boolean).join(', '),
  );
  return makers.length > 0 ? makers.join('; ') : undefined;
}

/** What a rights URI is called; licences of Creative Commons have one name in all languages. */
export function rightsInWords(uri: string, words: Words): string {
  const statement = /rightsstatements\.org\/vocab\/([^/]+)\//.exec(uri)?.[1];
  return words.rightsStatements[statement ?? ''] ?? rightsLabel(uri) ?? uri;
}
