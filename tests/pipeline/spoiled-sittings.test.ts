/**
 * Spoiled sittings through the real stages, from the folder to the aligned plate: each fault
 * gives its finding and no other; a clean sitting gives none.
 */
import { afterAll, describe, expect, test } from 'vitest';
import { blankField } from '../fixtures/inspect/blank-field.ts';
import { alignPlan, removeInspected } from '../fixtures/inspect/inspect-plan.ts';
import {
  cleanExif,
  cleanPlan,
  draw,
  type FlatPicture,
  type SittingPlan,
} from '../fixtures/inspect/sitting-folder.ts';

afterAll(removeInspected);

const axialExif = { ...cleanExif, seconds: 0.125 };

type Capture = Record<string, unknown> & { readonly id: string };

function withCapture(id: string, change: object, plan: SittingPlan = pair()): SittingPlan {
  const captures = (plan.sitting.captures as Capture[]).map((c) =>
    c.id === id ? { ...c, ...change } : c,
  );
  return { ...plan, sitting: { ...plan.sitting, captures } };
}

/** The clean sitting without its bracket. */
function pair(): SittingPlan {
  const plan = cleanPlan();
  const { 'normal.tif': normal, 'axial.tif': axial } = plan.files;
  return {
    ...plan,
    files: { 'normal.tif': normal, 'axial.tif': axial },
    sitting: { ...plan.sitting, captures: plan.sitting.captures.slice(0, 2) },
  };
}

function withFile(
  name: string,
  picture: FlatPicture,
  exif: SittingPlan['files'][string]['exif'] = name === 'axial.tif' ? axialExif : cleanExif,
  plan: SittingPlan = pair(),
): SittingPlan {
  return { ...plan, files: { ...plan.files, [name]: { picture, exif } } };
}

const negative = draw({ reading: 'negative' });

/** The file with its samples in another order: across, down, or both. */
function flipped({ width, height, data }: FlatPicture, across: boolean, down: boolean) {
  const out = new Float32Array(data.length);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const from = (down ? height - 1 - y : y) * width + (across ? width - 1 - x : x);
      out[y * width + x] = data[from];
    }
  }
  return { width, height, data: out };
}

function withoutFrame(): SittingPlan {
  const plan = cleanPlan();
  const files = { ...plan.files };
  delete files['bracket-3.tif'];
  const bracket = (plan.sitting.captures as Capture[]).find((c) => c.id === 'bracket');
  const frames = (bracket?.['frames'] as { file: string }[]).filter(
    ({ file }) => file !== 'bracket-3.tif',
  );
  return withCapture('bracket', { frames }, { ...plan, files });
}

function swappedReadings(): SittingPlan {
  return withCapture(
    'axial',
    { reading: 'positive' },
    withCapture('normal', { reading: 'negative' }),
  );
}

/** What is spoiled, the sitting, and its findings as `capture code level`. */
const cases: readonly (readonly [string, () => SittingPlan, string])[] = [
  ['nothing', cleanPlan, ''],
  [
    'out of focus',
    () => withFile('axial.tif', draw({ reading: 'negative', blur: 2.2 })),
    'axial soft warning',
  ],
  [
    'unevenly lit, by its blank field',
    () =>
      withCapture(
        'normal',
        { blank: 'blank.tif' },
        withFile('blank.tif', blankField({ fallOff: 0.7 })),
      ),
    'normal uneven warning',
  ],
  [
    'clipped',
    () =>
      withFile('axial.tif', draw({ reading: 'negative', exposure: 2.2 }), {
        ...cleanExif,
        seconds: 0.25,
      }),
    'axial clipped error',
  ],
  [
    'of another scale than stated',
    () => {
      const plan = pair();
      return { ...plan, sitting: { ...plan.sitting, scale: { pixelsPerMillimetre: 9.6 } } };
    },
    'normal wrong-scale error',
  ],
  ['recorded with its readings swapped', swappedReadings, '- readings-swapped warning'],
  [
    'recorded with one reading wrong',
    () => withFile('axial.tif', draw({ reading: 'positive', turn: 0.4, seed: 1 })),
    'axial readings-not-opposite warning',
  ],
  [
    'mirrored in one file',
    () => withFile('axial.tif', flipped(negative, true, false)),
    'axial mirrored warning',
  ],
  [
    'upside down in one file',
    () => withFile('axial.tif', flipped(negative, true, true)),
    'axial half-turned warning',
  ],
  [
    'of another plate in one file',
    () => withFile('axial.tif', draw({ reading: 'negative', seed: 5, turn: 1.4, fill: 0.72 })),
    'axial another-plate warning',
  ],
  ['without one frame', withoutFrame, 'bracket missing-frame warning'],
  [
    'taken with a changed aperture',
    () => withFile('axial.tif', negative, { ...axialExif, aperture: 11 }),
    'axial aperture-changed warning',
  ],
];

describe('a sitting', () => {
  test.each(cases)(
    'that is %s gives its finding and no other',
    async (_, plan, expected) => {
      const { findings } = await alignPlan(plan());
      const found = findings.map((f) => `${f.capture ?? '-'} ${f.code} ${f.level}`);
      expect(found.join(', ')).toBe(expected);
    },
    300_000,
  );
});
