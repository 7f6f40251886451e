/** A figure of a plan with its unit, in the reader's language. */
import type { PlanUnit } from '../../optics/plan/plan.ts';
import type { PlannerWords } from '../../words/en/planner.ts';
import type { Measures } from '../../words/measures.ts';

/** What is needed to say a plan in one language. */
export interface PlanSpeech {
  readonly words: PlannerWords;
  readonly measures: Measures;
}

const thin = '\u202f';

function unitText(unit: PlanUnit, { units }: PlannerWords): string {
  if (unit === '°') return unit;
  if (unit === 'f/' || unit === '') return '';
  if (unit === 'stops') return ` ${units.stops}`;
  if (unit === 'px/mm') return `${thin}${units.pixelsPerMillimetre}`;
  return unit === 'lp/mm' ? ` ${units.linePairs}` : `${thin}${unit}`;
}

/** Three figures that count, no exponent; exposure times as a camera shows them. */
export function planValue(
  value: number | readonly number[],
  unit: PlanUnit,
  { words, measures }: PlanSpeech,
): string {
  const list = typeof value === 'number' ? [value] : value;
  const time = (seconds: number) =>
    seconds < 0.3 ? `1/${measures.figure(1 / seconds)}` : measures.figure(seconds);
  const said = list.map((n) => (unit === 's' ? time(n) : measures.figure(n)));
  const joined = unit === 'mm' && list.length === 2 ? said.join(' × ') : said.join(', ');
  return `${unit === 'f/' ? 'f/' : ''}${joined}${unitText(unit, words)}`;
}
