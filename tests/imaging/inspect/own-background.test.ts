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

  test('says nothing where tarnish in one part carries the figure', () => {
    // Tarnish takes light from both readings alike, here most of it in the lower left.
    const tarnished = (reading: 'positive' | 'negative') => {
      const { width, height, data } = plane(reading, 1);
      const dimmed = data.map((value, i) => {
        const across = (i % width) / width;
        const down = Math.floor(i / width) / height;
        const near = Math.max(0, 1 - Math.hypot(across - 0.2, down - 0.8) / 0.45);
        return value * (1 - 0.4 * near);
      });
      return { width, height, data: dimmed };
    };
    const found = measureOwnBackground(tarnished('positive'), tarnished('negative'), null, 64000);
    expect(found).toEqual({
      ok: false,
      reason: 'the figure hangs on a single region of the plate',
    });
  });
});
