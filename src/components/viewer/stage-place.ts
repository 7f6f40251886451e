/** Where the viewer finds pictures and pages, and what its views are called. */
import type { StagePlace } from '../../viewer/stage-data.ts';
import { base } from '../addresses.ts';
import type { Speech } from '../speech.ts';
import type { Mark } from '../translated.ts';

/** @param mark Language of the plate's own texts, by their names. */
export function stagePlace(
  { language, words, at, recorded }: Pick<Speech, 'language' | 'words' | 'at' | 'recorded'>,
  mark: Mark,
): StagePlace {
  const said = (text: string) => recorded(text).text;
  return { base, pages: at.platesIndex, language, words: words.stage, mark, recorded: said };
}
