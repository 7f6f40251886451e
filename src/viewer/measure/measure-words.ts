/** What Measure asks for next. */
import { words } from '../words.ts';

export type MeasureKind = 'length' | 'angle' | 'area' | 'profile';

export function beginWords(kind: MeasureKind, scaleKnown: boolean): string {
  const { begin, inPixels } = words.measure;
  return scaleKnown || kind === 'angle' ? begin[kind] : `${begin[kind]} ${inPixels}`;
}

export function nextWords(kind: MeasureKind, set: number): string {
  const said = words.measure;
  if (kind === 'area') return said.corners(set);
  if (kind === 'angle') return set === 1 ? said.corner : said.otherEnd;
  return said.secondEnd;
}
