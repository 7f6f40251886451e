/** What is needed to say the words and lengths of a drawing in one language. */
import type { DrawingWords } from '../../words/en/drawings.ts';
import type { Measures } from '../../words/measures.ts';

export interface DrawingSpeech {
  readonly words: DrawingWords;
  readonly measures: Measures;
}

/** Millimetres in words; null stays null, for what is not recorded. */
export function lengthWords(
  millimetres: number | null,
  { measures }: DrawingSpeech,
): string | null {
  return millimetres === null ? null : measures.millimetres(millimetres);
}
