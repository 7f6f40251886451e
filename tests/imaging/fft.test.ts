import { describe, expect, test } from 'vitest';
import { forward2d, inverse2d, planFft, transformRow } from '../../src/imaging/fft.ts';
import reference from '../reference/registration.json' with { type: 'json' };

describe('Fourier transform', () => {
  test('gives the spectrum that NumPy gives, transposed, within 1e-7', () => {
    const size = 8;
    const re = new Float64Array(64);
    const im = new Float64Array(64);
    for (let y = 0; y < size; y += 1) {
      for (let x = 0; x < size; x += 1) {
        re[y * size + x] = Math.sin(1.3 * x + 0.4 * y);
        im[y * size + x] = Math.cos(0.7 * y - 0.2 * x * x);
      }
    }
    forward2d(planFft(size), re, im);
    for (let u = 0; u < size; u += 1) {
      for (let v = 0; v < size; v += 1) {
        // numpy.fft.fft2, values written with nine digits.
        expect(re[v * size + u]).toBeCloseTo(reference.fft8.re[u * size + v], 7);
        expect(im[v * size + u]).toBeCloseTo(reference.fft8.im[u * size + v], 7);
      }
    }
  });

  test.each([4, 16, 128])('comes back from a %i x %i spectrum, times size squared', (size) => {
    const plan = planFft(size);
    const re = Float64Array.from({ length: size * size }, (_, i) => Math.sin(i * i));
    const im = Float64Array.from({ length: size * size }, (_, i) => Math.cos(3 * i));
    const [wasRe, wasIm] = [re.slice(), im.slice()];
    forward2d(plan, re, im);
    inverse2d(plan, re, im);
    for (let i = 0; i < re.length; i += 7) {
      expect(re[i] / (size * size)).toBeCloseTo(wasRe[i], 12);
      expect(im[i] / (size * size)).toBeCloseTo(wasIm[i], 12);
    }
  });

  test('puts a wave of three periods into bin 3 alone', () => {
    const size = 16;
    const re = Float64Array.from({ length: size }, (_, i) => Math.cos((2 * Math.PI * 3 * i) / 16));
    const im = Float64Array.from({ length: size }, (_, i) => Math.sin((2 * Math.PI * 3 * i) / 16));
    transformRow(planFft(size), re, im, 0, false);
    const lengths = Array.from(re, (r, i) => Math.hypot(r, im[i]));
    expect(lengths[3]).toBeCloseTo(16, 12);
    expect(Math.max(...lengths.filter((_, i) => i !== 3))).toBeLessThan(1e-12);
  });

  test('refuses a size that is no power of two, and says which', () => {
    expect(() => planFft(100)).toThrow(
      'A transform needs a power of two of at least 4 as its size; got 100.',
    );
  });
});
