import { describe, expect, test } from 'vitest';
import { quantile, median } from '../../../src/imaging/inspect/quantile.ts';
import { exposureMerger } from '../../../src/imaging/merge/merge-exposures.ts';
import { signalVariance } from '../../../src/imaging/merge/signal-noise.ts';
import { linearCodes, sampleBracket, toCodes } from './bracket-samples.ts';

const noise = { gain: 1 / 45_000, darkVariance: (4 / 45_000) ** 2 };
const variance = (signal: number) => signalVariance(noise, signal);

function merged(
  frames: readonly ArrayLike<number>[],
  seconds: readonly number[],
  clip = 0.98,
  own = variance,
): Float32Array {
  const out = new Float32Array(frames[0].length);
  const samples = frames.map((f) => ({ codes: toCodes(f), signals: linearCodes }));
  exposureMerger({ seconds, clip, variance: own }).merge(samples, 0, out.length, out);
  return out;
}

describe('merging exposures', () => {
  test('agrees with NumPy on an inverse-variance mean', () => {
    // python3 -c "import numpy as np; z=np.array([.1,.39]); t=np.array([.01,.04]);
    //   x=z.sum()/t.sum(); v=.0005*x*t+.00001; print(np.average(z/t, weights=t**2/v))"
    // NumPy 1.24.2 -> 9.794782608695654
    const own = (signal: number) => 0.0005 * signal + 0.00001;
    const [x] = merged([[0.1], [0.39]], [0.01, 0.04], 0.98, own);
    // Codes of 16 bits round by 8e-6; the plain ratio of sums, 9.8, is outside.
    expect(Math.abs(x - 9.794783)).toBeLessThan(0.001);
  });

  test('with the same variance everywhere is the slope of least squares, from codes of 8 and 16 bits', () => {
    const seconds = [0.02, 0.1, 0.4];
    const eight = Float32Array.from({ length: 256 }, (_, code) => code / 255);
    const count = 5000;
    const radiance = (i: number) => 0.05 + (2 * i) / count;
    const frames = seconds.map((t, k) => {
      const signals = k === 1 ? eight : linearCodes;
      const most = signals.length - 1;
      const code = (i: number) => Math.min(most, Math.round(radiance(i) * t * most));
      return k === 1
        ? { codes: Uint8Array.from({ length: count }, (_, i) => code(i)), signals }
        : { codes: Uint16Array.from({ length: count }, (_, i) => code(i)), signals };
    });
    const out = new Float32Array(count - 10);
    const flat = { seconds, clip: 0.7, variance: () => 1e-6 };
    exposureMerger(flat).merge(frames, 10, out.length, out);
    // Closed form: sum of t z over sum of t^2, over the frames that are not clipped (near the clip
    // level, where noise decides who clips, the longest frame hardly counts).
    const worst = out.reduce((most, found, n) => {
      let [top, bottom] = [0, 0];
      for (const [k, { codes, signals }] of frames.entries()) {
        const z = signals[codes[n + 10]];
        if (z >= 0.695) continue;
        top += seconds[k] * z;
        bottom += seconds[k] ** 2;
      }
      const near = Math.abs(radiance(n + 10) * 0.4 - 0.7) < 0.02;
      return near ? most : Math.max(most, Math.abs(found / (top / bottom) - 1));
    }, 0);
    expect(worst).toBeLessThan(1e-6);
  });

  test('has no bias that shows, where weights from the sample itself have -0.3 %', () => {
    const seconds = [0.01, 0.04, 0.16];
    const dim = { gain: 1 / 200, darkVariance: 1e-5 };
    const { frames } = sampleBracket({ count: 120_000, seconds, ...dim, radiance: [3, 3] });
    const out = merged(frames, seconds, 0.98, (s) => signalVariance(dim, s));
    const mean = out.reduce((a, b) => a + b) / out.length;
    // Standard error of the mean: 0.03 %.
    expect(Math.abs(mean / 3 - 1)).toBeLessThan(0.001);
    const own = frames[0].map((_, i) => {
      let [top, bottom] = [0, 0];
      for (const [k, t] of seconds.entries()) {
        const w = t / signalVariance(dim, frames[k][i]);
        top += w * frames[k][i];
        bottom += w * t;
      }
      return top / bottom;
    });
    expect(own.reduce((a, b) => a + b) / own.length / 3 - 1).toBeLessThan(-0.003);
  });

  test('is as sharp as the noise of all frames together allows', () => {
    const seconds = [0.01, 0.04];
    const { truth, frames } = sampleBracket({
      ...{ count: 50_000, seconds, ...noise, radiance: [1, 1] },
    });
    const out = merged(frames, seconds);
    const squares = out.reduce((s, x, i) => s + (x / truth[i] - 1) ** 2, 0);
    // Closed form: one over the summed information of both frames (Cramér and Rao).
    const information = seconds.reduce((s, t) => s + (t * t) / variance(t), 0);
    expect(Math.sqrt(squares / out.length) * Math.sqrt(information)).toBeCloseTo(1, 1);
  });

  test('never fills in what is clipped in every frame or lost in the noise of every frame', () => {
    const out = merged(
      [
        [0.99, 0.5, 0, 1],
        [1, 1, 0.00001, 0.3],
      ],
      [0.01, 0.04],
    );
    expect(out[0]).toBe(Infinity);
    expect(out[1]).toBeCloseTo(50, 2);
    expect(out[2]).toBeNaN();
    expect(out[3]).toBeCloseTo(7.5, 3);
  });

  test('holds ten stops within 3 % in the median and 10 % at the 95th percentile', () => {
    const seconds = [1 / 64, 1 / 16, 1 / 4, 1, 4];
    const bracket = { count: 40_000, seconds, ...noise, radiance: [0.01, 30] as const };
    const { truth, frames } = sampleBracket(bracket);
    const errors = [...merged(frames, seconds)].map((x, i) => Math.abs(x / truth[i] - 1));
    expect(median(errors)).toBeLessThan(0.03);
    expect(quantile(errors, 0.95)).toBeLessThan(0.1);
  });

  test('refuses a time that is not positive', () => {
    expect(() => exposureMerger({ seconds: [1, 0], clip: 1, variance })).toThrow(
      'Exposure times must be positive; got 1, 0.',
    );
  });
});
