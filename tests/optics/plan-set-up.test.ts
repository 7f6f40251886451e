import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { planValue } from '../../src/components/planner/plan-value.ts';
import { planner as plannerWords } from '../../src/words/en/planner.ts';
import { measuresIn } from '../../src/words/measures.ts';
import { resultsHtml, warningText } from '../../src/components/planner/results.ts';
import { setupsYaml } from '../../src/components/planner/setups-yaml.ts';
import { sittingSchema } from '../../src/records/sitting.ts';
import { exampleInput, planLimits, type PlanField } from '../../src/optics/plan/plan-input.ts';
import { planSetUp } from '../../src/optics/plan/plan-set-up.ts';

const speech = { words: plannerWords, measures: measuresIn('en') };

const plan = planSetUp(exampleInput);
const valueOf = (section: string, id: string, of = plan) =>
  of.sections.find((s) => s.id === section)?.figures.find((f) => f.id === id)?.value;

describe('the worked example', () => {
  test('has the numbers of the named formulas', () => {
    // By hand: m = 100/800 = 0.125; 0.125/0.00376 = 33.24 pixels per mm.
    expect(valueOf('camera', 'magnification')).toBeCloseTo(0.125, 12);
    expect(valueOf('camera', 'scale')).toBeCloseTo(33.245, 3);
    // Check values, 7.1: the ghost of 1 mm of index 1.52.
    expect(valueOf('axial', 'ghost')).toBeCloseTo(0.743212, 6);
    expect(valueOf('axial', 'ghost-pixels')).toBeCloseTo(0.743212 * 33.245, 2);
    expect(valueOf('axial', 'glass-loss')).toBeCloseTo(-Math.log2(0.081741), 4);
    // atan(54/900).
    expect((valueOf('dark', 'mirror-angle') as number[])[0]).toBeCloseTo(3.434, 3);
    const counts = valueOf('lights', 'ring-counts') as number[];
    expect(counts.reduce((a, b) => a + b)).toBe(48);
  });

  test('gives set-ups that a sitting takes', () => {
    const { setups } = parse(setupsYaml(plan)) as { setups: object };
    const captures = Object.keys(setups).map((setup) => ({
      id: setup,
      file: `${setup}.tif`,
      setup,
      reading: 'none',
    }));
    const sitting = sittingSchema.parse({ setups, captures });
    expect(Object.keys(sitting.setups)).toEqual(['side-lamp', 'raking-right', 'through-glass']);
    expect(sitting.setups['through-glass'].glass).toEqual({ index: 1.52, thickness: 1, angle: 45 });
  });
});

describe('a plan', () => {
  test('warns of what does not go: each with its own numbers', () => {
    const found = planSetUp({
      ...exampleInput,
      plateWidth: 400,
      plateHeight: 500,
      lampHeight: 80,
      glassThickness: 4,
    });
    const ids = found.warnings.map(({ id }) => id);
    expect(ids).toContain('plate-too-large');
    expect(ids).toContain('lamp-in-mirror');
    expect(ids).toContain('glass-thick');
    const thick = found.warnings.find(({ id }) => id === 'glass-thick');
    // 4 x 0.743212.
    expect(thick && warningText(thick, speech)).toContain(
      'The ghost lies 2.97 mm beside the picture.',
    );
  });

  test('refuses what is outside its limits, by name', () => {
    expect(() => planSetUp({ ...exampleInput, warp: -1, lightCount: 2 })).toThrow(
      'Outside its limits: warp, lightCount.',
    );
    expect(() => planSetUp({ ...exampleInput, cameraDistance: 80 })).toThrow('cannot focus');
  });

  test('has finite numbers and words for all that it says, whatever it is told (property)', () => {
    const field = (name: PlanField) => {
      const [least, most] = planLimits[name];
      return fc.double({ min: least, max: most, noNaN: true });
    };
    const inputs = fc.record({
      ...(Object.fromEntries(
        (Object.keys(planLimits) as PlanField[]).map((name) => [name, field(name)]),
      ) as Record<PlanField, fc.Arbitrary<number>>),
      lightCount: fc.integer({ min: 6, max: 300 }),
      focalLength: fc.double({ min: 10, max: 49, noNaN: true }),
    });
    fc.assert(
      fc.property(inputs, (input) => {
        let made;
        try {
          made = planSetUp(input);
        } catch (refused) {
          expect((refused as Error).message).toMatch(/^So near, a plate of this size/);
          return;
        }
        for (const { figures } of made.sections) {
          for (const { id, value, unit } of figures) {
            expect(plannerWords.figures[id], id).toBeTypeOf('string');
            expect(
              [value].flat().every((n) => Number.isFinite(n)),
              `${id} ${String(value)}`,
            ).toBe(true);
            expect(planValue(value, unit, speech)).not.toContain('NaN');
          }
        }
        for (const warning of made.warnings) {
          expect(warningText(warning, speech)).toMatch(/^\S.*\.$/);
          expect(warningText(warning, speech)).not.toContain('undefined');
        }
        expect(resultsHtml(made, '/t/', speech)).not.toContain('undefined');
      }),
      { numRuns: 25, endOnFailure: true },
    );
  });
});
