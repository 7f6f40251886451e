/** A plate's record in the few words of a label. */
import { parseEdtf } from '../records/edtf.ts';
import { edtfLanguage, formatEdtf } from '../records/edtf-words.ts';
import type { PlateRecord } from '../records/plate.ts';

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
