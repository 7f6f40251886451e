/**
 * What was measured against what the sitting says: each disagreement gives its finding, an
 * agreeing sitting gives none. Pictures are invented and seeded.
 */
import { afterAll, describe, expect, test } from 'vitest';
import { inspectPlan, removeInspected } from '../fixtures/inspect/inspect-plan.ts';
import {
  cleanExif,
  cleanPlan,
  draw,
  type FlatPicture,
  type SittingPlan,
} from '../fixtures/inspect/sitting-folder.ts';

afterAll(removeInspected);

/** The negative with a copy of itself beside it, as two reflections inside the glass give one. */
function ghosted(pixels: number, strength: number): FlatPicture {
  const picture = draw({ reading: 'negative' });
  const { width, data } = picture;
  const whole = Math.floor(pixels);
  const part = pixels - whole;
  const out = data.map((value, i) => {
    const x = i % width;
    if (x <= whole) return value;
    return value + strength * (data[i - whole] * (1 - part) + data[i - whole - 1] * part);
  });
  return { ...picture, data: out };
}

/** A sitting whose axial capture went through a glass, with a step `ghostPixels` aside. */
function throughGlass(glass: object, ghostPixels: number, strength = 0.008): SittingPlan {
  const plan = cleanPlan();
  const picture = ghosted(ghostPixels, strength);
  const captures = (plan.sitting.captures as { id: string }[]).slice(0, 2);
  return {
    ...plan,
    files: {
      'normal.tif': plan.files['normal.tif'],
      'axial.tif': { picture, exif: { ...cleanExif, seconds: 0.125 } },
    },
    sitting: {
      ...plan.sitting,
      setups: {
        'through-glass': {
          kind: 'axial',
          glass,
          lamps: [{ bearing: 90, height: 0, distance: 450, size: 300 }],
        },
      },
      captures: captures.map((c) => (c.id === 'axial' ? { ...c, setup: 'through-glass' } : c)),
    },
  };
}

// Check values, 7.1: at index 1.52 and 45 degrees the ghost lies 0.743212 of the thickness aside.
// The clean sitting has 8 px per mm, so 3 mm of glass give 17.84 px and 1 mm gives 5.95 px.
describe('the ghost of the glass', () => {
  test('that the recorded sheet explains gives no finding', async () => {
    const { findings } = await inspectPlan(
      throughGlass({ index: 1.52, thickness: 3, angle: 45 }, 17.84),
    );
    expect(findings).toEqual([]);
  });

  test('of another sheet than the recorded one is told with both', async () => {
    const { findings } = await inspectPlan(
      throughGlass({ index: 1.52, thickness: 1, angle: 45 }, 17.84),
    );
    expect(findings.map((f) => `${f.capture} ${f.code} ${f.level}`)).toEqual([
      'axial ghost-differs warning',
    ]);
    expect(findings[0].message).toMatch(
      /^The ghost of the glass, measured at 1[78](\.\d)? px beside the plate's edge, matches a (2\.9\d|3(\.0\d)?) mm sheet; the sitting says 1 mm, whose ghost would lie at 5\.95 px\.$/,
    );
  });

  test('is not seen in a step three times as strong as glass can give', async () => {
    // Check values, 7.1: at index 1.52 and 45 degrees at most 0.0094, of s-polarised light.
    const { findings } = await inspectPlan(
      throughGlass({ index: 1.52, thickness: 1, angle: 45 }, 17.84, 0.025),
    );
    expect(findings).toEqual([]);
  });

  test('of a sheet whose thickness is not recorded is noted', async () => {
    const { findings } = await inspectPlan(throughGlass({}, 17.84));
    expect(findings.map((f) => `${f.capture} ${f.code} ${f.level}`)).toEqual([
      'axial glass-not-recorded note',
    ]);
  });
});

describe('a lamp where the mirror shows it', () => {
  const lampAt = (height: number): SittingPlan => {
    const plan = cleanPlan();
    return {
      ...plan,
      sitting: {
        ...plan.sitting,
        camera: { distance: 900 },
        setups: {
          side: { kind: 'normal', lamps: [{ bearing: 0, height, distance: 700, size: 60 }] },
        },
        captures: (plan.sitting.captures as { id: string }[]).map((c) =>
          c.id === 'normal' ? { ...c, setup: 'side' } : c,
        ),
      },
    };
  };

  test('but nothing clipped: the height was counted from the lens', async () => {
    const { findings } = await inspectPlan(lampAt(89));
    expect(findings.map((f) => `${f.capture} ${f.code} ${f.level}`)).toEqual([
      'normal lamp-in-mirror warning',
    ]);
    expect(findings[0].message).toContain('stands 89° above the plate at bearing 0°');
    expect(findings[0].message).toContain('but nothing on the plate is clipped');
  });

  test('is not told of a lamp at 45 degrees', async () => {
    expect((await inspectPlan(lampAt(45))).findings).toEqual([]);
  });
});
