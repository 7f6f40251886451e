import { expect, test } from 'vitest';
import { plateSchema } from '../../src/records/plate.ts';
import { veiledParts, withoutVeiled } from '../../src/records/veiled-parts.ts';

const record = plateSchema.parse({
  title: 'A plate',
  process: 'daguerreotype',
  description: { positive: 'P.', negative: 'N.' },
  rights: 'http://rightsstatements.org/vocab/NKC/1.0/',
  withheld: ['veiled'],
  spots: [
    { id: 'open', region: '0,0,5,5', title: 'Open' },
    { id: 'face', region: '0,0,5,5', title: 'Face', view: 'veiled' },
  ],
  looks: [
    {
      id: 'some',
      title: 'Some',
      steps: [
        { text: 'Hidden', of: ['veiled'] },
        { text: 'Shown' },
        { text: 'Face', spot: 'face' },
      ],
    },
    { id: 'none', title: 'None', steps: [{ text: 'Hidden', of: ['open', 'veiled'] }] },
  ],
});
const veiled = veiledParts(record);

test('a record is without the spots, steps and looks that show a withheld capture', () => {
  const { spots, looks, title } = withoutVeiled(record, veiled);
  expect(title).toBe('A plate');
  expect(spots.map(({ id }) => id)).toEqual(['open']);
  expect(looks.map(({ id, steps }) => [id, steps.map(({ text }) => text)])).toEqual([
    ['some', ['Shown']],
  ]);
});

test('a translation is without the same ones, told by id and by place', () => {
  const overlay = {
    spots: [
      { id: 'face', title: 'Le visage' },
      { id: 'open', title: 'Ouvert' },
    ],
    looks: [
      { id: 'none', title: 'Rien' },
      { id: 'some', steps: [{ text: 'Caché' }, { text: 'Montré' }] },
    ],
  };
  expect(withoutVeiled(overlay, veiled)).toEqual({
    spots: [{ id: 'open', title: 'Ouvert' }],
    looks: [{ id: 'some', steps: [{ text: 'Montré' }] }],
  });
  expect(withoutVeiled({}, veiled)).toEqual({});
});
