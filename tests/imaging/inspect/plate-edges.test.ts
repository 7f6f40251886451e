import { describe, expect, test } from 'vitest';
import { findPlateEdges } from '../../../src/imaging/inspect/plate-edges.ts';
import { normals, platePicture, toPlane16 } from '../../fixtures/inspect/plate-picture.ts';

const small = { width: 500, height: 400 };

describe('findPlateEdges', () => {
  test('finds the corners within 0.3 px, positive or negative, turned either way', () => {
    for (const reading of ['positive', 'negative'] as const) {
      for (const [seed, turn] of [
        [1, 0.6],
        [2, -2.3],
        [3, 3.1],
      ]) {
        const picture = platePicture({ ...small, seed, reading, turn });
        const found = findPlateEdges(toPlane16(picture));
        if (!found.ok) throw new Error(found.reason);
        found.value.outline.corners.forEach(([x, y], k) => {
          const [wantedX, wantedY] = picture.corners[k];
          expect(Math.hypot(x - wantedX, y - wantedY)).toBeLessThan(0.3);
        });
        // The stated uncertainty covers the error in the width, 0.82 of 500 px.
        const error = Math.abs(found.value.outline.width - 410);
        expect(error).toBeLessThan(2 * found.value.uncertaintyPixels);
      }
    }
  });

  test('says which side has no edge when the plate fills the picture', () => {
    const found = findPlateEdges(toPlane16(platePicture({ ...small, fill: 1.3, turn: 0 })));
    expect(found).toEqual({ ok: false, reason: 'no straight edge was found on the left side' });
  });

  test('finds no plate in noise', () => {
    const grain = normals(4);
    const data = Uint16Array.from({ length: 160000 }, () => 20000 + 2000 * grain());
    expect(findPlateEdges({ width: 400, height: 400, data }).ok).toBe(false);
  });
});
