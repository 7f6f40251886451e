import { describe, expect, test } from 'vitest';
import { measureEdgeBlur } from '../../../src/imaging/inspect/edge-blur.ts';
import { normals, platePicture, toPlane16 } from '../../fixtures/inspect/plate-picture.ts';

function blurOf(options: Parameters<typeof platePicture>[0]): number {
  const found = measureEdgeBlur([toPlane16(platePicture({ width: 440, height: 360, ...options }))]);
  if (!found.ok) throw new Error(found.reason);
  return found.value.sigma;
}

describe('measureEdgeBlur', () => {
  test('grows with the true blur and is close to it', () => {
    for (const reading of ['positive', 'negative'] as const) {
      for (const blur of [1, 1.5, 2]) {
        // The edges are drawn without a pixel aperture; sampling and noise cost up to a quarter.
        expect(Math.abs(blurOf({ reading, blur }) - blur)).toBeLessThan(0.25 * blur);
      }
    }
  });

  test('is the same for both readings, so that tone cannot pass for softness', () => {
    for (const seed of [1, 2]) {
      const positive = blurOf({ seed, reading: 'positive' });
      expect(Math.abs(blurOf({ seed, reading: 'negative' }) - positive)).toBeLessThan(0.12);
    }
  });

  test('is not fooled by noise into calling the soft capture sharp', () => {
    expect(blurOf({ blur: 2, noise: 0.006 })).toBeGreaterThan(blurOf({ blur: 0.8 }) + 0.5);
  });

  test('has a reason instead of a figure where nothing but noise is', () => {
    const grain = normals(8);
    const data = Uint16Array.from({ length: 90000 }, () => 20000 + 300 * grain());
    const found = measureEdgeBlur([{ width: 300, height: 300, data }]);
    expect(found).toMatchObject({ ok: false });
  });
});
