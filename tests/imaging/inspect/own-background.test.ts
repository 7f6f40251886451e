import { describe, expect, test } from 'vitest';
import { measureOwnBackground } from '../../../src/imaging/inspect/own-background.ts';
import { platePicture, toPlane16 } from '../../fixtures/inspect/plate-picture.ts';

function plane(reading: 'positive' | 'negative', fallOff: number, seed = 1) {
  return toPlane16(platePicture({ width: 420, height: 340, reading, fallOff, seed, fill: 1.2 }));
}

/** Light at the right edge of what is measured, over that at the left, as a fall-off in per cent. */
const wanted = (fallOff: number) => 100 * (1 - fallOff);

describe('measureOwnBackground', () => {
  test('tells each capture’s fall-off from the picture’s own light and dark', () => {
    for (const seed of [1, 2]) {
      for (const [p, n] of [
        [1, 1],
        [0.6, 0.95],
        [0.95, 0.5],
      ]) {
        const found = measureOwnBackground(
          plane('positive', p, seed),
          plane('negative', n, seed),
          null,
          64000,
        );
        if (!found.ok) throw new Error(found.reason);
        // Measured between the 2nd and the 98th percentile of the blocks: a little less than all.
        expect(Math.abs(found.value.positive.percent - wanted(p))).toBeLessThan(5);
        expect(Math.abs(found.value.negative.percent - wanted(n))).toBeLessThan(5);
        if (p < 0.9) expect(Math.abs(found.value.positive.bearing - 270)).toBeLessThan(10);
      }
    }
  });

  test('has no figure for readings of two different plates', () => {
    expect(
      measureOwnBackground(plane('positive', 1, 1), plane('negative', 1, 2), null, 64000),
    ).toEqual({ ok: false, reason: 'the two readings do not explain each other' });
  });
});
