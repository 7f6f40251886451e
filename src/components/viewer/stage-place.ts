/** Where the viewer finds pictures and pages, and what its views are called. */
import type { StagePlace } from '../../viewer/stage-data.ts';
import { base } from '../addresses.ts';
import type { Speech } from '../speech.ts';

export function stagePlace({
  language,
  words,
  at,
}: Pick<Speech, 'language' | 'words' | 'at'>): StagePlace {
  return { base, pages: at.platesIndex, language, words: words.stage };
}
