import { expect, test } from 'vitest';
import { exposureTimes } from '../../../src/imaging/merge/exposure-times.ts';
import { noiseFromFrames } from '../../../src/imaging/merge/noise-from-frames.ts';
import { roundingVariance } from '../../../src/imaging/merge/signal-noise.ts';
import { decodeSrgb, encodeSrgb } from '../../../src/imaging/colour/srgb-curve.ts';
import { sampleBracket } from './bracket-samples.ts';

const noise = { gain: 1 / 20_000, darkVariance: (5 / 20_000) ** 2 };

test('finds that a marked 1/60 was 1/64, to a thousandth', () => {
  const seconds = [1 / 64, 1 / 16, 1 / 4, 1];
  const marked = [1 / 60, 1 / 15, 1 / 4, 1];
  const { frames } = sampleBracket({ count: 30_000, seconds, ...noise, radiance: [0.02, 50] });
  const { steps } = exposureTimes(frames, marked, { clip: 0.98 });
  expect(steps.map((s) => s.marked)).toEqual([4, 3.75, 4]);
  for (const { measured } of steps) expect(measured).toBeCloseTo(4, 2);
  for (const { uncertainty } of steps) expect(uncertainty).toBeLessThan(0.002);
});

test('is not led astray by clipped pixels, in any order of the frames', () => {
  // Mostly clipped in the longer frame: a regression over all pixels gives 2.9 instead of 8.
  const seconds = [0.8, 0.1];
  const { frames } = sampleBracket({ count: 30_000, seconds, ...noise, radiance: [0.5, 10] });
  const { seconds: found, steps } = exposureTimes(frames, [0.64, 0.1], { clip: 0.98 });
  expect(steps[0].measured).toBeCloseTo(8, 1);
  expect(found[0] / found[1]).toBeCloseTo(8, 1);
  // The marks' mean is kept.
  expect(found[0] * found[1]).toBeCloseTo(0.064, 6);
});

test('keeps the mark where two frames share no light', () => {
  const { frames } = sampleBracket({
    ...{ count: 5000, seconds: [0.001, 10], ...noise, radiance: [0.2, 1] },
  });
  const { seconds, steps } = exposureTimes(frames, [0.001, 10], { clip: 0.98 });
  expect(steps[0].measured).toBeNull();
  expect(seconds[1] / seconds[0]).toBeCloseTo(10_000, 6);
});

test('finds gain and dark noise of the sensor within 10 and 25 %', () => {
  const seconds = [1 / 64, 1 / 16, 1 / 4, 1];
  const { frames } = sampleBracket({ count: 60_000, seconds, ...noise, radiance: [0.003, 50] });
  const found = noiseFromFrames(frames, seconds, { clip: 0.98 });
  if (!found.ok) throw new Error(found.reason);
  expect(found.value.gain / noise.gain).toBeGreaterThan(0.9);
  expect(found.value.gain / noise.gain).toBeLessThan(1.1);
  const dark = Math.sqrt(found.value.darkVariance / noise.darkVariance);
  expect(dark).toBeGreaterThan(0.75);
  expect(dark).toBeLessThan(1.25);
});

test('tells the noise of the sensor from the steps of 8-bit codes', () => {
  const seconds = [1 / 16, 1 / 4, 1];
  const coarse = { gain: 1 / 4000, darkVariance: (8 / 4000) ** 2 };
  const signals = Float64Array.from({ length: 256 }, (_, code) => decodeSrgb(code / 255));
  const { frames } = sampleBracket({ count: 60_000, seconds, ...coarse, radiance: [0.02, 12] });
  const coded = frames.map((f) => f.map((s) => signals[Math.round(255 * encodeSrgb(s))]));
  const rounding = roundingVariance(signals);
  const found = noiseFromFrames(coded, seconds, { clip: 0.98, rounding });
  if (!found.ok) throw new Error(found.reason);
  expect(found.value.gain / coarse.gain).toBeGreaterThan(0.8);
  expect(found.value.gain / coarse.gain).toBeLessThan(1.2);
});

test('says so where nothing can be told', () => {
  expect(noiseFromFrames([[0.1], [0.2]], [1, 2], { clip: 1 })).toEqual({
    ok: false,
    reason: 'the frames share too little light to tell their noise',
  });
});
