/** The whole table of check values, index by index, and what must hold for any glass. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { malus } from '../../src/optics/axial-glass.ts';
import { brewsterAngle, fresnelReflectance, unpolarised } from '../../src/optics/fresnel.ts';
import {
  doublePass,
  lateralDisplacement,
  sheetGhost,
  sheetReflectance,
  sheetTransmittance,
} from '../../src/optics/glass-sheet.ts';

interface Checks {
  readonly worked: Record<string, Record<string, number>>;
  readonly by_index: Record<string, Record<string, number>>;
  readonly malus: Record<string, number>;
}
const checks = JSON.parse(
  readFileSync(join(import.meta.dirname, '../reference/optics-checks.json'), 'utf8'),
) as Checks;

describe.each(Object.entries(checks.by_index))('index %s', (name, row) => {
  const n = Number(name);
  test('reflects by angle and polarisation what the table says', () => {
    expect(unpolarised(fresnelReflectance(n, 0))).toBeCloseTo(row['R_normal'], 6);
    for (const angle of [30, 45, 56.31, 60, 75]) {
      // 56.31 stands for Brewster's angle of index 1.5 unrounded, as the table was made.
      const face = fresnelReflectance(n, angle === 56.31 ? brewsterAngle(1.5) : angle);
      expect(face.s, `Rs ${angle}`).toBeCloseTo(row[`Rs_${angle}`], 5);
      expect(face.p, `Rp ${angle}`).toBeCloseTo(row[`Rp_${angle}`], 5);
      expect(unpolarised(face), `R ${angle}`).toBeCloseTo(row[`R_${angle}`], 5);
    }
    expect(brewsterAngle(n)).toBeCloseTo(row['brewster_deg'], 6);
  });

  test('makes a sheet that reflects, passes, shifts and doubles what the table says', () => {
    expect(unpolarised(sheetReflectance(n, 0))).toBeCloseTo(row['slab_R_normal'], 6);
    const [r, t] = [sheetReflectance(n, 45), sheetTransmittance(n, 45)];
    expect(r.s).toBeCloseTo(row['slab_Rs45'], 6);
    expect(r.p).toBeCloseTo(row['slab_Rp45'], 6);
    expect(unpolarised(r)).toBeCloseTo(row['slab_R45'], 6);
    expect(t.s).toBeCloseTo(row['slab_Ts45'], 6);
    expect(t.p).toBeCloseTo(row['slab_Tp45'], 6);
    expect(doublePass(n, 45)).toBeCloseTo(row['double_pass_unpol_RT45'], 6);
    // The product of the means is another number, and wrong.
    expect(unpolarised(r) * unpolarised(t)).toBeCloseTo(row['double_pass_naive_RT45'], 6);
    expect(lateralDisplacement(n, 45, 1)).toBeCloseTo(row['lateral_disp_per_t_45'], 6);
    expect(sheetGhost(n, 45, 1).displacement).toBeCloseTo(row['ghost_sep_per_t_45'], 6);
  });
});

test.each(Object.entries(checks.worked).filter(([, row]) => row['d_cm'] !== undefined))(
  'the worked example %s has its displacement',
  (_, row) => {
    expect(lateralDisplacement(row['n'], row['i_deg'], row['t_cm'])).toBeCloseTo(row['d_cm'], 4);
  },
);

test.each(Object.entries(checks.malus))('a polariser turned by %s degrees', (angle, share) => {
  expect(malus(Number(angle))).toBeCloseTo(share, 6);
});

describe('for any index and angle', () => {
  const index = fc.double({ min: 1.05, max: 3, noNaN: true });
  const angle = fc.double({ min: 0, max: 89, noNaN: true });

  test('Rp = Rs² at 45 degrees', () => {
    fc.assert(
      fc.property(index, (n) => {
        const { s, p } = fresnelReflectance(n, 45);
        expect(p).toBeCloseTo(s * s, 12);
      }),
    );
  });

  test('Rp = 0 at Brewster’s angle, and nowhere near it is it 0', () => {
    fc.assert(
      fc.property(index, (n) => {
        const at = brewsterAngle(n);
        expect(fresnelReflectance(n, at).p).toBeLessThan(1e-20 + 1e-28 * n);
        expect(fresnelReflectance(n, at - 5).p).toBeGreaterThan(0);
      }),
    );
  });

  test('light goes the other way through a face as it came (reciprocity)', () => {
    fc.assert(
      fc.property(index, angle, (n, i) => {
        const inside = (Math.asin(Math.sin((i * Math.PI) / 180) / n) * 180) / Math.PI;
        // From the glass into air: the amplitudes of Fresnel with the sides exchanged.
        const [ci, ct] = [inside, i].map((a) => Math.cos((a * Math.PI) / 180));
        const s = ((n * ci - ct) / (n * ci + ct)) ** 2;
        const p = ((ci - n * ct) / (ci + n * ct)) ** 2;
        const face = fresnelReflectance(n, i);
        expect(face.s).toBeCloseTo(s, 9);
        expect(face.p).toBeCloseTo(p, 9);
      }),
    );
  });

  test('a sheet gives back and lets through all that it gets (energy)', () => {
    fc.assert(
      fc.property(index, angle, (n, i) => {
        const [r, t] = [sheetReflectance(n, i), sheetTransmittance(n, i)];
        expect(r.s + t.s).toBeCloseTo(1, 12);
        expect(r.p + t.p).toBeCloseTo(1, 12);
        expect(doublePass(n, i)).toBeLessThanOrEqual(0.25);
      }),
    );
  });
});
