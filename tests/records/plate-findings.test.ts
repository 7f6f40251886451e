import { expect, test } from 'vitest';
import { plateFindings } from '../../src/records/plate-findings.ts';
import { plateSchema } from '../../src/records/plate.ts';
import { sittingSchema } from '../../src/records/sitting.ts';

const about = { plate: 'quay', file: 'plate.md', placeOf: () => ({ line: 1, column: 1 }) };
const sitting = sittingSchema.parse({
  base: 'normal',
  captures: [
    { id: 'normal', file: 'normal.tif', setup: 'normal', reading: 'positive' },
    {
      id: 'bracket',
      kind: 'bracket',
      setup: 'normal',
      reading: 'positive',
      frames: [{ file: 'bracket-1.tif' }, { file: 'bracket-2.tif' }],
    },
  ],
});
const withholding = (id: string) => {
  const record = plateSchema.parse({
    title: 'Quay',
    process: 'daguerreotype',
    description: { positive: 'A', negative: 'B' },
    rights: 'http://rightsstatements.org/vocab/NKC/1.0/',
    withheld: [id],
  });
  return plateFindings(record, [sitting], about).filter(({ field }) =>
    field?.startsWith('withheld'),
  );
};

test('one frame of a set cannot be withheld alone: it stops the plate and names the set', () => {
  const [found] = withholding('bracket-2');
  expect(found).toMatchObject({ level: 'error', code: 'unknown-withheld' });
  expect(found.remedy).toContain('It is a frame of "bracket". A set is withheld as a whole');
});

test('a slip of the pen in what is withheld stops the plate', () => {
  expect(withholding('braket')[0]).toMatchObject({
    level: 'error',
    remedy: 'Did you mean "bracket"?',
  });
  expect(withholding('bracket')).toEqual([]);
});
