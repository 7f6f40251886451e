import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ciede2000 } from '../../../src/imaging/colour/ciede2000.ts';
import { type Lab } from '../../../src/imaging/colour/lab.ts';

interface Table {
  readonly pairs: readonly { lab1: Lab; lab2: Lab; difference: number }[];
}
// Sharma, Wu and Dalal (2005), table 1; the file names where it was copied from.
const file = join(import.meta.dirname, '../../reference/ciede2000-pairs.json');
const { pairs } = JSON.parse(readFileSync(file, 'utf8')) as Table;

describe('ciede2000', () => {
  test('reproduces the 34 published pairs within 0.0001, in both orders', () => {
    // The table has four decimals, so 0.0001 is twice its rounding.
    expect(pairs).toHaveLength(34);
    for (const { lab1, lab2, difference } of pairs) {
      expect(Math.abs(ciede2000(lab1, lab2) - difference)).toBeLessThanOrEqual(1e-4);
      expect(Math.abs(ciede2000(lab2, lab1) - difference)).toBeLessThanOrEqual(1e-4);
    }
  });

  test('differs from the plain Euclidean distance by far more than that bound', () => {
    const plain = pairs.map(({ lab1, lab2 }) =>
      Math.hypot(lab1[0] - lab2[0], lab1[1] - lab2[1], lab1[2] - lab2[2]),
    );
    expect(Math.max(...plain.map((d, i) => Math.abs(d - pairs[i].difference)))).toBeGreaterThan(1);
  });
});
