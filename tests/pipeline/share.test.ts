import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shareOf } from '../../src/pipeline/share.ts';

const plates = fc.uniqueArray(
  fc.record({ slug: fc.stringMatching(/^[a-z]{1,6}$/), cost: fc.integer({ min: 0, max: 1e9 }) }),
  { selector: ({ slug }) => slug, maxLength: 40 },
);

describe('shareOf', () => {
  test('gives every plate to exactly one share', () => {
    fc.assert(
      fc.property(plates, fc.integer({ min: 1, max: 9 }), (all, of) => {
        const shares = Array.from({ length: of }, (_, k) => [...shareOf(all, { part: k + 1, of })]);
        expect(shares.flat().sort()).toEqual(all.map(({ slug }) => slug).sort());
      }),
    );
  });

  test('does not depend on the order in which a machine lists the plates', () => {
    fc.assert(
      fc.property(plates, (all) => {
        const here = shareOf(all, { part: 1, of: 3 });
        expect([...shareOf([...all].reverse(), { part: 1, of: 3 })].sort()).toEqual(
          [...here].sort(),
        );
      }),
    );
  });

  test('reaches the worst case that Graham gives for two machines, 7/6 of the best', () => {
    // Graham 1969, longest first, m = 2: jobs 3, 3, 2, 2, 2 take 7 where 6 is possible.
    const jobs = [3, 3, 2, 2, 2].map((cost, k) => ({ slug: `j${k}`, cost }));
    const load = (part: number) => {
      const mine = shareOf(jobs, { part, of: 2 });
      return jobs.filter(({ slug }) => mine.has(slug)).reduce((sum, { cost }) => sum + cost, 0);
    };
    expect([load(1), load(2)].sort()).toEqual([5, 7]);
  });
});
