/** Places of a mosaic's grid without a close-up, as inspection tells them. */
import { expect, test } from 'vitest';
import type { InspectedSitting } from '../../../src/pipeline/inspect/inspected-sitting.ts';
import { judgeFrames } from '../../../src/pipeline/inspect/judge-frames.ts';
import { sittingSchema } from '../../../src/records/sitting.ts';

function messages(cells: readonly (readonly [row: number, column: number])[]): string[] {
  const frames = cells.map(([row, column], i) => ({ file: `tile-${i + 1}.tif`, row, column }));
  const capture = { id: 'close', kind: 'mosaic', frames, setup: 'normal', reading: 'positive' };
  const record = sittingSchema.parse({ captures: [capture] });
  const captures = record.captures.map((own) => ({ record: own }));
  const sitting = { slug: 'bay', id: 'sitting', record, captures } as unknown as InspectedSitting;
  return judgeFrames(sitting).map(({ level, code, capture: id, message, remedy }) => {
    expect([level, code, id]).toEqual(['warning', 'mosaic-tile-missing', 'close']);
    expect(remedy).toBe('Photograph that place, or correct the rows and columns of the frames.');
    return message;
  });
}

test('a whole grid has nothing to tell', () => {
  expect(
    messages([
      [0, 0],
      [0, 1],
      [1, 0],
      [1, 1],
    ]),
  ).toEqual([]);
});

test('a hole is named by its row and column', () => {
  expect(
    messages([
      [0, 0],
      [0, 1],
      [1, 1],
    ]),
  ).toEqual([
    'The mosaic "close" has no close-up for row 1, column 0; the place is black where no neighbour reaches it.',
  ]);
});

test('a first row, or column, that is wholly missing is told once', () => {
  expect(
    messages([
      [1, 0],
      [1, 1],
      [2, 0],
      [2, 1],
    ]),
  ).toEqual([
    'The mosaic "close" has no close-up in row 0; the place is black where no neighbour reaches it.',
  ]);
  expect(
    messages([
      [0, 2],
      [1, 2],
    ]),
  ).toEqual([
    'The mosaic "close" has no close-up in columns 0 to 1; the place is black where no neighbour reaches it.',
  ]);
});

test('rows and columns that are both counted from 1 are a whole grid', () => {
  expect(
    messages([
      [1, 1],
      [1, 2],
      [2, 1],
      [2, 2],
    ]),
  ).toEqual([]);
});
