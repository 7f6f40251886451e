/** The sentence under the figure: how well the two readings lie on each other. */
import type { PlateResult } from '../records/result.ts';
import type { StageWords } from '../words/en/stage.ts';
import type { Measures } from '../words/measures.ts';
import type { StageData } from './stage-data.ts';

export function registerWords(
  result: PlateResult,
  data: StageData,
  { register }: StageWords,
  measures: Measures,
): string {
  if (data.pair === null) return data.views.length > 1 ? register.none : register.one;
  const bounds = [data.pair.positive, data.pair.negative].map((id) => {
    const view = result.views.find((v) => v.id === id);
    const sitting = result.sittings.find((s) => s.id === view?.sitting);
    const alignment = sitting?.captures.find((c) => c.id === view?.captures[0])?.registration;
    return alignment?.state === 'registered' ? alignment : null;
  });
  const worst = bounds
    .filter((b) => b !== null)
    .toSorted((a, b) => b.boundPixels - a.boundPixels)[0];
  if (worst === undefined) return register.inFrame;
  const { boundPixels, boundMicrometres } = worst;
  return register.within(
    `${measures.fixed(boundPixels, 2)}\u202fpx`,
    boundMicrometres === null ? null : `${measures.fixed(boundMicrometres, 0)}\u202fµm`,
  );
}
