import { describe, expect, test } from 'vitest';
import { joinOverlay } from '../../src/records/join-overlay.ts';

const original = {
  title: 'The basin',
  handColouring: false as string | boolean,
  size: [70, 83],
  description: { positive: 'Boats.', negative: 'Boats, reversed.' },
  condition: [
    { term: 'tarnish', note: 'Left.' },
    { term: 'dust', note: 'Fibres.' },
    { term: 'tarnish', note: 'Right.' },
  ],
  spots: [
    { id: 'masts', title: 'Masts', note: 'Double.', region: '1,2,3,4' },
    { id: 'sky', title: 'Sky', region: '5,6,7,8' },
  ],
  looks: [{ id: 'turning', title: 'Turning', steps: [{ text: 'One.' }, { text: 'Two.' }] }],
};

describe('an overlay over its original', () => {
  test('wins where it says something; the rest stays, numbers and regions with it', () => {
    const { record, stray } = joinOverlay(original, {
      title: 'Le bassin',
      description: { positive: 'Des bateaux.' },
      spots: [{ id: 'sky', title: 'Ciel' }],
      looks: [{ id: 'turning', steps: [{}, { text: 'Deux.' }] }],
    });
    expect(stray).toEqual([]);
    expect(record).toEqual({
      ...original,
      title: 'Le bassin',
      description: { positive: 'Des bateaux.', negative: 'Boats, reversed.' },
      spots: [original.spots[0], { id: 'sky', title: 'Ciel', region: '5,6,7,8' }],
      looks: [{ id: 'turning', title: 'Turning', steps: [{ text: 'One.' }, { text: 'Deux.' }] }],
    });
  });

  test('tells by name which texts it gave', () => {
    const { translated } = joinOverlay(original, {
      title: 'Le bassin',
      spots: [{ id: 'sky', title: 'Ciel' }],
      looks: [{ id: 'turning', steps: [{}, { text: 'Deux.' }] }],
    });
    expect([...translated]).toEqual(['title', 'spots.sky.title', 'looks.turning.steps.1.text']);
  });

  test('takes the second of a term for the second', () => {
    const { record, translated } = joinOverlay(original, {
      condition: [
        { term: 'tarnish', note: 'À gauche.' },
        { term: 'tarnish', note: 'À droite.' },
      ],
    });
    expect(record.condition.map(({ note }) => note)).toEqual(['À gauche.', 'Fibres.', 'À droite.']);
    expect([...translated]).toEqual(['condition.tarnish.note', 'condition.tarnish/2.note']);
  });

  test('leaves out what the original does not have, and says where it stood', () => {
    const { record, stray } = joinOverlay(original, {
      handColouring: 'Du rouge.',
      advisory: 'Attention.',
      spots: [
        { id: 'keel', title: 'Quille' },
        { id: 'sky', note: 'Bleu.' },
      ],
      looks: [{ id: 'turning', steps: [{}, {}, { text: 'Trois.' }] }],
    });
    expect(record).toEqual(original);
    expect(stray).toEqual([
      ['handColouring'],
      ['advisory'],
      ['spots', 0],
      ['spots', 1, 'note'],
      ['looks', 0, 'steps', 2],
    ]);
  });

  test('changes nothing in the original itself; where there is none the original comes out', () => {
    const before = structuredClone(original);
    joinOverlay(original, { description: { positive: 'Des bateaux.' } });
    expect(original).toEqual(before);
    expect(joinOverlay(original, undefined).record).toEqual(original);
  });
});
