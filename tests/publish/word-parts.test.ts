import { describe, expect, test } from 'vitest';
import { wordPartOf, wordParts } from '../../src/publish/word-parts.ts';

describe('the parts of the index of words', () => {
  test('are none up to a thousand plates, and of a thousand plates at most', () => {
    expect([0, 8, 1000].map(wordParts)).toEqual([0, 0, 0]);
    expect([1001, 2000, 2001, 10_000].map(wordParts)).toEqual([2, 2, 3, 10]);
  });

  test('take a plate by FNV-1a of its name', () => {
    // Test vectors of Fowler, Noll and Vo for 32 bits (also in IETF draft-eastlake-fnv).
    expect(wordPartOf('a', 2 ** 32)).toBe(0xe40c292c);
    expect(wordPartOf('foobar', 2 ** 32)).toBe(0xbf9cf968);
  });

  test('get about as many plates each', () => {
    const counts = Array.from({ length: 10 }, () => 0);
    for (let k = 1; k <= 10_000; k += 1) {
      counts[wordPartOf(`plate-${String(k).padStart(5, '0')}`, 10)] += 1;
    }
    // Evenly would be 1000 each, and by chance within four standard deviations of 30.
    expect(Math.min(...counts)).toBeGreaterThan(880);
    expect(Math.max(...counts)).toBeLessThan(1120);
  });
});
