import { expect, test } from 'vitest';
import type { PlateResult } from '../../src/records/result.ts';
import { viewNames } from '../../src/components/view-names.ts';
import { en } from '../../src/words/en/all.ts';

type Kind = 'single' | 'bracket' | 'lights' | 'mosaic';
type Parts = [id: string, kind: Kind, setupKind: 'normal' | 'raking' | 'axial', sitting?: string];

/** Only what names depend on. */
function plate(...views: Parts[]): PlateResult {
  const reading = (setup: string) => (setup === 'axial' ? 'negative' : 'positive');
  const sittings = [...new Set(views.map(([, , , sitting = '2024-02-13']) => sitting))];
  return {
    sittings: sittings.map((id) => ({
      id,
      date: id,
      captures: views.map(([capture, kind]) => ({ id: capture, kind })),
    })),
    views: views.map(([id, , setupKind, sitting = '2024-02-13']) => ({
      id,
      captures: [id],
      sitting,
      setupKind,
      reading: reading(setupKind),
    })),
  } as unknown as PlateResult;
}

const names = (result: PlateResult) => [
  ...viewNames(result, { language: 'en', words: en }).values(),
];

test('a light that is there once needs no more than its name', () => {
  expect(names(plate(['normal', 'single', 'normal'], ['axial', 'single', 'axial']))).toEqual([
    'Side lamp',
    'Axial light',
  ]);
});

test('a view of many photographs says so', () => {
  const result = plate(['normal', 'single', 'normal'], ['bracket', 'bracket', 'normal']);
  expect(names(result)).toEqual(['Side lamp', 'Side lamp, several exposures']);
});

test('the same light on two days is told apart by the day', () => {
  const result = plate(
    ['normal-2016', 'single', 'normal', '2016-05-24'],
    ['normal-2023', 'single', 'normal', '2023-10-17'],
  );
  expect(names(result)).toEqual(['Side lamp, 24 May 2016', 'Side lamp, 17 October 2023']);
});

test('no two views of a reading share a name, whatever it takes', () => {
  const result = plate(
    ['raking-right', 'single', 'raking'],
    ['raking-upper-left', 'single', 'raking'],
  );
  expect(names(result)).toEqual(['Raking lamp, raking right', 'Raking lamp, raking upper left']);
});
