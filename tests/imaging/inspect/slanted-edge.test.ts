/**
 * References
 * - Closed form: the Fourier transform of a Gaussian of standard deviation sigma is
 *   exp(-2 pi^2 sigma^2 f^2), a half at sqrt(2 ln 2) / (2 pi sigma).
 */
import { describe, expect, test } from 'vitest';
import { measureSlantedEdge } from '../../../src/imaging/inspect/slanted-edge.ts';
import { blurredEdge, gaussianMtf50 } from '../../fixtures/inspect/edge.ts';
import { normals } from '../../fixtures/inspect/plate-picture.ts';

function measured(options: Parameters<typeof blurredEdge>[0]) {
  const found = measureSlantedEdge(blurredEdge(options));
  if (!found.ok) throw new Error(found.reason);
  return found.value;
}

const place = { width: 80, height: 120, centre: 39.7 };

describe('measureSlantedEdge', () => {
  test.each([0.5, 0.75, 1, 1.5, 2, 2.5])(
    'finds MTF50 of a Gaussian blur of %f px within 0.3 %',
    (sigma) => {
      for (const angle of [2.5, 5, 5.711, 8, -6]) {
        const { mtf50 } = measured({ ...place, sigma, angle });
        // The goal is 1 %; without noise the method has no reason to miss by more than this.
        expect(Math.abs(mtf50 / gaussianMtf50(sigma) - 1)).toBeLessThan(0.003);
      }
    },
  );

  test('follows the whole curve, not only its half', () => {
    const { frequency, modulation, mtf10 } = measured({ ...place, sigma: 0.8, angle: 5 });
    frequency.forEach((f, k) => {
      if (f > 0.6) return;
      expect(Math.abs(modulation[k] - Math.exp(-2 * (Math.PI * 0.8 * f) ** 2))).toBeLessThan(0.004);
    });
    expect(mtf10).toBeCloseTo(Math.sqrt(2 * Math.LN10) / (2 * Math.PI * 0.8), 2);
  });

  test('sees the square of a pixel as one more sinc', () => {
    const { frequency, modulation } = measured({ ...place, sigma: 0.6, angle: 5, aperture: true });
    const at = 128; // 0.25 cycles per pixel
    expect(frequency[at]).toBe(0.25);
    const sinc = Math.sin(Math.PI / 4) / (Math.PI / 4);
    expect(modulation[at]).toBeCloseTo(Math.exp(-2 * (Math.PI * 0.6 * 0.25) ** 2) * sinc, 2);
  });

  test('does not mind which way round the edge lies, nor its sign', () => {
    const upright = measured({ ...place, sigma: 1, angle: 5 }).mtf50;
    const inverted = measured({ ...place, sigma: 1, angle: 5, dark: 0.8, bright: 0.2 }).mtf50;
    const edge = blurredEdge({ ...place, sigma: 1, angle: 5 });
    const data = new Float32Array(edge.data.length);
    edge.data.forEach((v, i) => (data[(i % 80) * 120 + Math.floor(i / 80)] = v));
    const lying = measureSlantedEdge({ width: 120, height: 80, data });
    expect(inverted).toBeCloseTo(upright, 6);
    expect(lying.ok && lying.value.mtf50).toBeCloseTo(upright, 6);
  });

  test('a mean over noisy edges stays within 1 % (noise 0.5 % of white, 20 edges)', () => {
    for (const sigma of [0.5, 2.5]) {
      let sum = 0;
      for (let k = 0; k < 20; k += 1) {
        const edge = blurredEdge({ ...place, sigma, angle: 3 + 0.3 * k });
        const grain = normals(k + 1);
        const found = measureSlantedEdge({
          ...edge,
          data: edge.data.map((v) => v + 0.005 * grain()),
        });
        sum += found.ok ? found.value.mtf50 : NaN;
      }
      expect(Math.abs(sum / 20 / gaussianMtf50(sigma) - 1)).toBeLessThan(0.01);
    }
  });

  test('says why there is no figure', () => {
    const along = measureSlantedEdge(blurredEdge({ ...place, sigma: 1, angle: 0.1 }));
    expect(along).toEqual({
      ok: false,
      reason: 'the edge lies only 0.10 degrees off the pixel rows',
    });
    const grain = normals(3);
    const noise = { width: 80, height: 120, data: Float32Array.from({ length: 9600 }, grain) };
    expect(measureSlantedEdge(noise).ok).toBe(false);
    const short = measureSlantedEdge(blurredEdge({ ...place, sigma: 1, angle: 30 }));
    expect(short).toEqual({ ok: false, reason: 'less than 8 pixels lie on one side of the edge' });
  });
});
