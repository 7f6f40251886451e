import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { applyGain, gainWeight, recoveryFor } from '../../../src/imaging/merge/gain-map.ts';

// Outputs of libavif, as carried by the crate ultrahdr-core 0.5.0, tests/data/libavif_apply_gain.csv.
const checks = JSON.parse(
  readFileSync(new URL('../../reference/gainmap_checks.json', import.meta.url), 'utf8'),
) as {
  params: { min_log2: number; max_log2: number; gamma: number; offset: number };
  rows: { gain: number; base: number; out: number }[];
  weight: Record<string, number>[];
};
const { min_log2: min, max_log2: max, gamma, offset } = checks.params;
const map = { min, max, gamma, offsetBase: offset, offsetMerged: offset };

describe('gain maps', () => {
  test.each(checks.rows)('give $out for base $base and gain $gain', ({ base, gain, out }) => {
    expect(Math.abs(applyGain(map, base, gain) - out)).toBeLessThan(1e-6);
  });

  test.each(checks.weight)('weigh by headroom: $weight at $display_headroom_log2', (row) => {
    const { display_headroom_log2: display, base_headroom_log2: base } = row;
    expect(gainWeight(display, base, row['alt_headroom_log2'])).toBeCloseTo(row['weight'], 12);
  });

  test('find the recovery again', () => {
    for (const { base, gain, out } of checks.rows) {
      expect(recoveryFor(map, base, out)).toBeCloseTo(gain, 6);
    }
    const bent = { ...map, gamma: 2, min: -1 };
    expect(recoveryFor(bent, 0.2, applyGain(bent, 0.2, 0.7))).toBeCloseTo(0.7, 12);
  });
});
