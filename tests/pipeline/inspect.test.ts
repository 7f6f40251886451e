/**
 * Spoiled sittings: each fault gives its own finding and no other, and a clean sitting gives
 * none. The pictures are invented and seeded; the fault is the only thing that differs.
 */
import { afterAll, describe, expect, test } from 'vitest';
import { inspectionSchema } from '../../src/records/inspection.ts';
import { blankField } from '../fixtures/inspect/blank-field.ts';
import { inspectPlan, removeInspected } from '../fixtures/inspect/inspect-plan.ts';
import {
  cleanExif,
  cleanPlan,
  draw,
  type SittingPlan,
} from '../fixtures/inspect/sitting-folder.ts';

afterAll(removeInspected);

type Capture = Record<string, unknown> & { readonly id: string };

/** The plan with one capture's record changed. */
function withCapture(plan: SittingPlan, id: string, change: (c: Capture) => object): SittingPlan {
  const captures = (plan.sitting.captures as Capture[]).map((c) => (c.id === id ? change(c) : c));
  return { ...plan, sitting: { ...plan.sitting, captures } };
}

/** The plan with files put in place of those of the same name. */
function withFiles(plan: SittingPlan, files: SittingPlan['files']): SittingPlan {
  return { ...plan, files: { ...plan.files, ...files } };
}

/** What was found, as `capture code level`. */
async function found(plan: SittingPlan): Promise<string[]> {
  const { findings } = await inspectPlan(plan);
  return findings.map((f) => `${f.capture ?? '-'} ${f.code} ${f.level}`);
}

describe('a clean sitting', () => {
  test('gives no finding, and its measurements fit the record', async () => {
    const { findings, inspections, scale } = await inspectPlan(cleanPlan());
    expect(findings).toEqual([]);
    expect(scale?.pixelsPerMillimetre).toBe(8);
    const normal = inspections.get('sitting/normal');
    expect(inspectionSchema.parse(normal)).toEqual(normal);
    const width = normal?.measurements.find((m) => m.quantity === 'plate-width');
    // Drawn 656 px wide at 8 px per mm.
    expect(Math.abs((width?.value ?? 0) - 82)).toBeLessThan(0.1);
  });

  test('gives none with a blank field that is even', async () => {
    const plan = withFiles(cleanPlan(), {
      'blank.tif': { picture: blankField({ fallOff: 0.97 }) },
    });
    expect(await found(withCapture(plan, 'normal', (c) => ({ ...c, blank: 'blank.tif' })))).toEqual(
      [],
    );
  });
});

describe('a spoiled sitting', () => {
  test('soft: the capture out of focus is found, in whichever reading', async () => {
    const negative = draw({ reading: 'negative', blur: 2.2 });
    const exif = { ...cleanExif, seconds: 0.125 };
    expect(
      await found(withFiles(cleanPlan(), { 'axial.tif': { picture: negative, exif } })),
    ).toEqual(['axial soft warning']);
    const positive = draw({ reading: 'positive', blur: 2.2 });
    expect(await found(withFiles(cleanPlan(), { 'normal.tif': { picture: positive } }))).toEqual([
      'normal soft warning',
    ]);
  });

  test('uneven: told from a blank field, against the named table', async () => {
    const plan = withFiles(cleanPlan(), { 'blank.tif': { picture: blankField({ fallOff: 0.7 }) } });
    const { findings } = await inspectPlan(
      withCapture(plan, 'normal', (c) => ({ ...c, blank: 'blank.tif' })),
    );
    expect(findings.map((f) => f.code)).toEqual(['uneven']);
    expect(findings[0].edition).toBe('FADGI 2016, Prints and Photographs');
    // 0.7 at the right edge: (p95 - p5) / median of a straight ramp = 0.9 * 0.3 / 0.85 = 31.8 %.
    expect(findings[0].measured?.value).toBeCloseTo(31.8, 0);
    expect(findings[0].message).toContain('outside the 1-star figure for evenness');
    expect(findings[0].message).toContain('brightest');
  });

  test('uneven: told from the plate itself where there is no blank field', async () => {
    const picture = draw({ reading: 'positive', fallOff: 0.2, exposure: 1.1 });
    const { findings } = await inspectPlan(withFiles(cleanPlan(), { 'normal.tif': { picture } }));
    expect(findings.map((f) => `${f.capture} ${f.code}`)).toEqual(['normal uneven']);
    expect(findings[0].message).toContain('strongest on the left');
    expect(findings[0].message).toContain('with a wide limit');
  });

  test('hot spot: located in millimetres', async () => {
    const picture = blankField({ fallOff: 0.97, hotSpot: { x: 0.7, y: 0.3 } });
    const plan = withFiles(cleanPlan(), { 'blank.tif': { picture } });
    const { findings } = await inspectPlan(
      withCapture(plan, 'normal', (c) => ({ ...c, blank: 'blank.tif' })),
    );
    expect(findings.map((f) => f.code)).toEqual(['hot-spot']);
    // 0.2 * 800 px and -0.2 * 650 px at 8 px per mm: 20 mm right, 16.25 mm above.
    const [, right, above] = /(\d+\.?\d*) mm right of and (\d+\.?\d*) mm above/.exec(
      findings[0].message,
    )!;
    expect(Math.abs(Number(right) - 20)).toBeLessThan(1);
    expect(Math.abs(Number(above) - 16.25)).toBeLessThan(1);
  });

  test('clipped: glare on the image is a warning, an overexposed picture an error', async () => {
    const glare = draw({ glare: { x: 0.5, y: 0.4, radius: 0.07 } });
    expect(await found(withFiles(cleanPlan(), { 'normal.tif': { picture: glare } }))).toEqual([
      'normal clipped warning',
    ]);
    const over = draw({ reading: 'negative', exposure: 2.2 });
    const exif = { ...cleanExif, seconds: 0.25 };
    expect(await found(withFiles(cleanPlan(), { 'axial.tif': { picture: over, exif } }))).toEqual([
      'axial clipped error',
    ]);
  });

  test('glare along the plate’s edge is told apart from glare on the image', async () => {
    const picture = draw({ bevel: 0.035 });
    expect(await found(withFiles(cleanPlan(), { 'normal.tif': { picture } }))).toEqual([
      'normal glare-at-edge warning',
    ]);
  });

  test('wrong scale: a little is a warning, much is an error', async () => {
    const state = (pixelsPerMillimetre: number): SittingPlan => {
      const plan = cleanPlan();
      return { ...plan, sitting: { ...plan.sitting, scale: { pixelsPerMillimetre } } };
    };
    expect(await found(state(8.5))).toEqual(['normal wrong-scale warning']);
    expect(await found(state(9.6))).toEqual(['normal wrong-scale error']);
  });

  test('wrong size: a trade name that does not fit, and millimetres the wrong way round', async () => {
    expect(await found({ ...cleanPlan(), size: 'whole' })).toEqual([
      // Said of the record: a name only proposes millimetres.
      '- size-proposed note',
      'normal size-differs warning',
    ]);
    expect(await found({ ...cleanPlan(), size: [66.6, 82] })).toEqual([
      'normal size-differs warning',
    ]);
  });

  test('too few pixels: told against the named table', async () => {
    const plan = { ...cleanPlan(), size: [164, 133.2] };
    const sitting = { ...plan.sitting, scale: { pixelsPerMillimetre: 4 } };
    const { findings } = await inspectPlan({ ...plan, sitting });
    expect(findings.map((f) => f.code)).toEqual(['resolution-low']);
    expect(findings[0].message).toContain(
      'within the 1-star figure for resolution (at least 100 ppi)',
    );
  });

  test('changed aperture, focal length, ISO: each its own', async () => {
    const changed = (exif: object): SittingPlan =>
      withFiles(cleanPlan(), {
        'axial.tif': {
          picture: draw({ reading: 'negative' }),
          exif: { ...cleanExif, seconds: 0.125, ...exif },
        },
      });
    expect(await found(changed({ aperture: 11 }))).toEqual(['axial aperture-changed warning']);
    expect(await found(changed({ focalLength: 105 }))).toEqual([
      'axial focal-length-changed warning',
    ]);
    expect(await found(changed({ iso: 400 }))).toEqual(['axial iso-changed warning']);
  });

  test('missing EXIF: a warning, or a note where the sitting states the exposure', async () => {
    const plan = withFiles(cleanPlan(), {
      'axial.tif': { picture: draw({ reading: 'negative' }), exif: null },
    });
    expect(await found(plan)).toEqual(['axial missing-exif warning']);
    const stated = withCapture(plan, 'axial', (c) => ({
      ...c,
      exposure: { seconds: 0.125, aperture: 8 },
    }));
    expect(await found(stated)).toEqual(['axial missing-exif note']);
  });

  test('exposure stated otherwise than the camera wrote', async () => {
    const plan = withCapture(cleanPlan(), 'normal', (c) => ({ ...c, exposure: { seconds: 1 } }));
    expect(await found(plan)).toEqual(['normal exposure-differs warning']);
    const marked = withCapture(cleanPlan(), 'axial', (c) => ({
      ...c,
      exposure: { seconds: 1 / 8 },
    }));
    expect(await found(marked)).toEqual([]);
  });

  test('missing frame: a hole in a bracket that is numbered', async () => {
    const plan = cleanPlan();
    const files = { ...plan.files };
    delete files['bracket-3.tif'];
    const holed = withCapture({ ...plan, files }, 'bracket', (c) => ({
      ...c,
      frames: (c['frames'] as { file: string }[]).filter((f) => f.file !== 'bracket-3.tif'),
    }));
    expect(await found(holed)).toEqual(['bracket missing-frame warning']);
  });

  test('bracket: a step marked wrongly, and two frames in each other’s place', async () => {
    const marked = withCapture(cleanPlan(), 'bracket', (c) => ({
      ...c,
      frames: (c['frames'] as { file: string; seconds: number }[]).map((f) =>
        f.file === 'bracket-2.tif' ? { ...f, seconds: 1 / 30 } : f,
      ),
    }));
    expect(await found(marked)).toEqual(['bracket bracket-step warning']);
    const plan = cleanPlan();
    const swapped = withFiles(plan, {
      'bracket-2.tif': {
        ...plan.files['bracket-2.tif'],
        picture: plan.files['bracket-3.tif'].picture,
      },
      'bracket-3.tif': {
        ...plan.files['bracket-3.tif'],
        picture: plan.files['bracket-2.tif'].picture,
      },
    });
    expect(await found(swapped)).toEqual(['bracket bracket-step warning']);
  });
});
