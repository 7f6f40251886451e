import { describe, expect, test } from 'vitest';
import { bracketFindings, notMerged } from '../../../src/pipeline/combine/bracket-findings.ts';
import type { MergeRecord, NamedBracket } from '../../../src/pipeline/combine/bracket-record.ts';
import { mergedView, renderedLocally } from '../../../src/pipeline/combine/bracket-views.ts';

const bracket: NamedBracket = {
  ...{ id: 'bracket', files: [{ name: 'a.tif' }, { name: 'b.tif' }], marked: [0.25, 1] },
  ...{ standing: 0, placed: true },
};

const frame: MergeRecord['frames'][number] = {
  ...{ marked: 0.25, seconds: 0.25, stops: 0, clip: 0.98, floor: 1e-4 },
  ...{ shift: { dx: 0, dy: 0, spread: 0 }, resampled: false, contribution: 0.5 },
};

const sound: MergeRecord = {
  ...{ width: 10, height: 10, curveFrom: 'profile', noiseFrom: 'measured' },
  noise: { gain: 2e-5, darkVariance: 1e-8 },
  frames: [frame, { ...frame, marked: 1, seconds: 1, stops: 2 }],
  steps: [{ shorter: 0, longer: 1, marked: 4, measured: 4.01, uncertainty: 0.001 }],
  ...{ floor: 0.001, ceiling: 1.024, darkest: 0.01, brightest: 0.64, logAverage: 0.1 },
  ...{ clippedEverywhere: 0, belowNoise: 0, tone: { scale: 1, white: 1 }, compression: 0.6 },
  archive: [],
};

const told = (merge: MergeRecord) => bracketFindings('plate', bracket, merge);

describe('a merged bracket', () => {
  test('has nothing to tell when all is well', () => {
    expect(told(sound)).toEqual([]);
  });

  test('tells of a marked time that the light contradicts', () => {
    const steps = [{ ...sound.steps[0], measured: 4.6 }];
    const [finding, ...others] = told({ ...sound, steps });
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ level: 'warning', code: 'exposure-time-off', file: 'b.tif' });
    expect(finding.message).toBe(
      'b.tif is marked 4.00 times as long as a.tif, but holds 4.60 times the light. Expected within 8 %. The merge used the measured ratio.',
    );
  });

  test('tells of a frame that adds nothing, one that moved, and one that could not be placed', () => {
    const codes = (change: Partial<typeof frame>) =>
      told({ ...sound, frames: [frame, { ...sound.frames[1], ...change }] }).map((f) => f.code);
    expect(codes({ contribution: 0 })).toEqual(['frame-adds-nothing']);
    expect(codes({ shift: { dx: 1, dy: 0, spread: 0 }, resampled: true })).toEqual(['frame-moved']);
    expect(codes({ shift: null })).toEqual(['frame-not-aligned']);
  });

  test('tells of pixels that are clipped in every frame, or lost in the noise of every frame', () => {
    const [clipped, below] = told({ ...sound, clippedEverywhere: 0.012, belowNoise: 0.2 });
    expect(clipped.message).toContain('1.20 % of the pixels are clipped in every frame');
    expect(clipped.message).toContain('not filled in');
    expect(below).toMatchObject({ level: 'note', code: 'bracket-below-noise' });
  });

  test('says how it was made, in figures, and that it is a rendering', () => {
    const view = mergedView(bracket, sound);
    expect(view.made).toContain('2 exposures merged in linear light');
    expect(view.made).toContain('rendering');
    expect(view.caution).toContain('must not be measured');
    // Closed form: log2(1.024 / 0.001) = 10 stops.
    expect(view.figures.find((f) => f.quantity === 'held-range')?.value).toBe(10);
    expect(view.figures.find((f) => f.quantity === 'exposure-error')?.value).toBeCloseTo(0.25, 6);
    expect(renderedLocally(bracket, sound).id).toBe('bracket-local');
  });

  test('says why it was not merged', () => {
    const { message } = notMerged('plate', 'bracket', 'two frames have the same exposure time');
    expect(message).toBe(
      'The bracket "bracket" was not merged: two frames have the same exposure time. Its frames are shown one by one.',
    );
  });
});
