import { describe, expect, test } from 'vitest';
import {
  overlayName,
  plateOverlaySchema,
  collectionOverlaySchema,
} from '../../src/records/overlay.ts';

describe('the name of a translation', () => {
  test.each([
    ['plate.fr.md', { original: 'plate.md', language: 'fr' }],
    ['left-is-right.fr-CA.md', { original: 'left-is-right.md', language: 'fr-CA' }],
    ['plate.md', null],
    ['plate.fr.txt', null],
    ['.fr.md', null],
    ['plate.old.fr.md', null],
  ])('%s', (file, expected) => {
    expect(overlayName(file)).toEqual(expected);
  });
});

describe('the fields of a translation', () => {
  test('may all be left out', () => {
    expect(plateOverlaySchema.parse({})).toEqual({});
  });

  test.each(['rights', 'date', 'size', 'objectNumber', 'orientation', 'withheld', 'identifier'])(
    'have no "%s", which stands in the original alone',
    (field) => {
      const { error } = plateOverlaySchema.safeParse({ [field]: 'x' });
      expect(error?.issues).toMatchObject([{ code: 'unrecognized_keys', keys: [field] }]);
    },
  );

  test('have no region in a spot, and no address in the footer', () => {
    const spot = { id: 'sky', title: 'Ciel', region: '1,2,3,4' };
    expect(plateOverlaySchema.safeParse({ spots: [spot] }).success).toBe(false);
    const line = { text: 'Ouvert', link: 'https://example.org/' };
    expect(collectionOverlaySchema.safeParse({ footer: [line] }).success).toBe(false);
  });
});
