/** What the inspection's measures are worth, against closed forms, physics and a published table. */
import { ciede2000 } from '../../src/imaging/colour/ciede2000.ts';
import type { Lab } from '../../src/imaging/colour/lab.ts';
import { fitFlatField, flatFieldAt } from '../../src/imaging/inspect/flat-field.ts';
import { measureSlantedEdge } from '../../src/imaging/inspect/slanted-edge.ts';
import { blurredEdge, gaussianMtf50 } from '../../tests/fixtures/inspect/edge.ts';
import { fieldError, litField } from '../../tests/fixtures/inspect/lit-field.ts';
import { normals } from '../../tests/fixtures/inspect/plate-picture.ts';
import table from '../../tests/reference/ciede2000-pairs.json' with { type: 'json' };
import type { BenchRow } from './row.ts';

/** Largest mean bias over blurs of 0.5 to 2.5 px, 30 edges each, noise 0.5 % of white; per cent. */
function edgeBias(): number {
  let worst = 0;
  for (const sigma of [0.5, 0.75, 1, 1.5, 2, 2.5]) {
    let sum = 0;
    for (let k = 0; k < 30; k += 1) {
      const angle = 2.5 + 0.2 * k;
      const edge = blurredEdge({ width: 80, height: 120, centre: 39.7, sigma, angle });
      const grain = normals(1000 * sigma + k);
      const found = measureSlantedEdge({
        ...edge,
        data: edge.data.map((v) => v + 0.005 * grain()),
      });
      if (!found.ok) throw new Error(`sigma ${sigma}, angle ${angle}: ${found.reason}`);
      sum += found.value.mtf50;
    }
    worst = Math.max(worst, Math.abs(100 * (sum / 30 / gaussianMtf50(sigma) - 1)));
  }
  return worst;
}

/** Largest RMS error over 20 fields lit by one to three lamps, two hot spots in each; per cent. */
function fieldRms(): number {
  let worst = 0;
  for (let seed = 1; seed <= 20; seed += 1) {
    const field = litField(seed, 2);
    const fit = fitFlatField(field, { clip: 64000 });
    if (!fit.ok) throw new Error(`field ${seed}: ${fit.reason}`);
    worst = Math.max(
      worst,
      fieldError(field, (u, v) => flatFieldAt(fit.value, u, v)),
    );
  }
  return worst;
}

interface Pair {
  readonly lab1: Lab;
  readonly lab2: Lab;
  readonly difference: number;
}

/** Largest distance from the published differences of 34 pairs, in both orders. */
function colourError(): number {
  const pairs = table.pairs as unknown as readonly Pair[];
  const errors = pairs.flatMap(({ lab1, lab2, difference }) => [
    Math.abs(ciede2000(lab1, lab2) - difference),
    Math.abs(ciede2000(lab2, lab1) - difference),
  ]);
  return Math.max(...errors);
}

export default function measure(): Promise<BenchRow[]> {
  const row = (name: string, value: number, unit: string, goal: number): BenchRow => ({
    group: 'inspect',
    name,
    value,
    unit,
    reference: null,
    goal,
    better: 'lower',
  });
  return Promise.resolve([
    row('mtf50_bias_percent', edgeBias(), '%', 1),
    row('flat_field_rms_percent', fieldRms(), '%', 0.5),
    row('ciede2000_max_error', colourError(), 'ΔE', 1e-4),
  ]);
}
