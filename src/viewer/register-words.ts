/** The sentence under the figure: how well the two readings lie on each other. */
import type { PlateResult } from '../records/result.ts';
import type { StageData } from './stage-data.ts';

export function registerWords(result: PlateResult, data: StageData): string {
  if (data.pair === null)
    return data.views.length > 1
      ? 'No two readings of this plate are in register; its pictures can be looked at beside each other.'
      : 'There is one picture of this plate.';
  const bounds = [data.pair.positive, data.pair.negative].map((id) => {
    const view = result.views.find((v) => v.id === id);
    const sitting = result.sittings.find((s) => s.id === view?.sitting);
    const alignment = sitting?.captures.find((c) => c.id === view?.captures[0])?.registration;
    return alignment?.state === 'registered' ? alignment : null;
  });
  const worst = bounds
    .filter((b) => b !== null)
    .toSorted((a, b) => b.boundPixels - a.boundPixels)[0];
  if (worst === undefined) return 'Both readings lie in the plate’s frame.';
  const length =
    worst.boundMicrometres === null ? '' : ` (${worst.boundMicrometres.toFixed(0)} µm)`;
  return `The two readings lie on each other to within ${worst.boundPixels.toFixed(2)} px${length}.`;
}
