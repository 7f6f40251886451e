import { describe, expect, test } from 'vitest';
import { compareBlur } from '../../../src/imaging/inspect/shared-edges.ts';
import { cutOut } from '../../../src/imaging/inspect/samples.ts';
import {
  platePicture,
  toPlane16,
  type PictureOptions,
} from '../../fixtures/inspect/plate-picture.ts';

/** Two parts of 180 px of an invented plate, cut `dx` pixels to the left of where they are asked for. */
function parts(options: PictureOptions, dx = 0) {
  const plane = toPlane16(platePicture({ width: 500, height: 400, ...options }));
  return [90, 250].map((x) => cutOut(plane, { x: x - dx, y: 100, width: 180, height: 180 }));
}

function extra(first: PictureOptions, second: PictureOptions, dx = 0): number {
  const found = compareBlur(parts(first), parts(second, dx));
  if (!found.ok) throw new Error(found.reason);
  return found.value.extra;
}

describe('compareBlur', () => {
  const positive: PictureOptions = { reading: 'positive', blur: 0.8 };

  test('finds a positive and a negative of one focus alike', () => {
    for (const seed of [1, 2]) {
      const found = extra({ ...positive, seed }, { reading: 'negative', blur: 0.8, seed });
      expect(Math.abs(found)).toBeLessThan(0.1);
    }
  });

  test('finds the soft one, whichever it is, by about the blur that was added', () => {
    const soft: PictureOptions = { reading: 'negative', blur: 1.8 };
    expect(Math.abs(extra(positive, soft) - 1)).toBeLessThan(0.25);
    expect(Math.abs(extra(soft, positive) + 1)).toBeLessThan(0.25);
  });

  test('does not mind that the second lies some pixels aside', () => {
    const soft: PictureOptions = { reading: 'negative', blur: 1.8 };
    expect(Math.abs(extra(positive, soft, 11) - 1)).toBeLessThan(0.25);
  });

  test('has no figure for two different plates', () => {
    const found = compareBlur(parts(positive), parts({ ...positive, seed: 9 }));
    expect(found).toMatchObject({ ok: false });
  });
});
