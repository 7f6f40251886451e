import { expect, test } from 'vitest';
import { editDistance, nearestWord } from '../../src/records/nearest-word.ts';

// Worked examples that stand in many textbooks (kitten/sitting is Levenshtein's usual one).
test.each([
  ['kitten', 'sitting', 3],
  ['saturday', 'sunday', 3],
  ['', 'abc', 3],
  ['abcd', 'acbd', 1],
  ['ca', 'abc', 3],
])('counts the edits from %j to %j as %i', (a, b, edits) => {
  expect(editDistance(a, b)).toBe(edits);
});

test('finds a mistyped field whatever its capitals and hyphens', () => {
  const known = ['title', 'objectNumber', 'process', 'handColouring'];
  expect(
    ['titel', 'object_number', 'procces', 'hand-coloring'].map((w) => nearestWord(w, known)),
  ).toEqual(['title', 'objectNumber', 'process', 'handColouring']);
});

test('suggests nothing for a word that is like none', () => {
  expect(nearestWord('wavelength', ['title', 'place'])).toBeNull();
  expect(nearestWord('', ['title'])).toBeNull();
});
