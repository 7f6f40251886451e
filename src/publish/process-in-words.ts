/** What a photograph's process is called. */
import type { PlateRecord } from '../records/plate.ts';
import type { Words } from '../words/words.ts';

/** Name of the process as a label says it. */
export function processInWords({ process }: PlateRecord, words: Words): string {
  if (typeof process === 'string') return words.process[process];
  return process.text ?? words.process[process.name];
}
