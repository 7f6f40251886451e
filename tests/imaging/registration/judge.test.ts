import { describe, expect, test } from 'vitest';
import type { RegistrationEstimate } from '../../../src/imaging/registration/estimate.ts';
import { judgeRegistration } from '../../../src/imaging/registration/judge.ts';
import { layOf, lays, laySigns } from '../../../src/imaging/registration/lay.ts';

const value: RegistrationEstimate = {
  homography: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  radial: null,
  lens: null,
  lay: 'as-is',
  polarity: 'opposite',
  tones: { polarity: 'opposite', oppositeShare: 0.8, sameShare: 0.02, blocks: 50 },
  boundPixels: 0.1,
  boundMicrometres: null,
  method: 'fast',
  tilesAgreed: 90,
  tilesTried: 100,
  leastPerQuadrant: 20,
  tiles: [],
  residual: { columns: 1, rows: 1, pixels: [0.1] },
};
const pair = { base: 'positive', moving: 'negative' };
const codes = (v: Partial<RegistrationEstimate>, readings = pair) =>
  judgeRegistration({ ok: true, value: { ...value, ...v } }, readings).map((j) => j.code);

describe('judgement of a registration', () => {
  test('finds nothing on a pair that lies as it should', () => {
    expect(codes({})).toEqual([]);
  });

  test('names every lay that is not the base', () => {
    expect(codes({ lay: 'mirrored' })).toEqual(['mirrored']);
    expect(codes({ lay: 'half-turned' })).toEqual(['half-turned']);
    expect(codes({ lay: 'mirrored and half-turned' })).toEqual(['mirrored-and-half-turned']);
  });

  test('finds a reading that the tones contradict, and only with a recorded reading', () => {
    expect(codes({ polarity: 'same' })).toEqual(['readings-not-opposite']);
    expect(codes({ polarity: 'opposite' }, { base: 'negative', moving: 'negative' })).toEqual([
      'readings-not-same',
    ]);
    expect(codes({ polarity: 'unclear' })).toEqual(['tones-unclear']);
    expect(codes({ polarity: 'same' }, { base: 'positive', moving: 'mixed' })).toEqual([]);
  });

  test('tells another plate from one that nearly agrees', () => {
    const failed = (tilesAgreed: number) =>
      judgeRegistration(
        {
          ok: false,
          reason: '',
          check: { tilesAgreed, tilesTried: 100, leastPerQuadrant: 0, cornerDeviation: 9 },
        },
        pair,
      )[0];
    expect(failed(4)).toMatchObject({ code: 'another-plate', measured: 0.04, expected: 0.25 });
    expect(failed(20)).toMatchObject({ code: 'not-registered', measured: 0.2, expected: 0.25 });
  });
});

describe('lay', () => {
  test.each(lays)(
    '%s is read from the map that it makes, turned by 3 degrees either way',
    (lay) => {
      const [sx, sy] = laySigns(lay);
      for (const angle of [-0.05, 0.05]) {
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        expect(layOf([c * sx, -s * sy, 9, s * sx, c * sy, -4, 0, 0, 1])).toBe(lay);
      }
    },
  );
});
