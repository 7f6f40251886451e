import { expect, test } from 'vitest';
import { frameShift } from '../../../src/imaging/merge/frame-shift.ts';
import type { Plane } from '../../../src/imaging/plane.ts';
import { numbersFrom } from '../../../src/imaging/render/seeded.ts';
import { normals } from './bracket-samples.ts';

/** A scene in closed form, so that it can be seen from any place: waves of many directions. */
function scene(seed: number): (x: number, y: number) => number {
  const next = numbersFrom(seed);
  const waves = Array.from({ length: 40 }, () => {
    const [angle, length] = [2 * Math.PI * next(), 5 + 30 * next()];
    return { u: Math.cos(angle) / length, v: Math.sin(angle) / length, p: 6.28 * next() };
  });
  return (x, y) =>
    2 ** (waves.reduce((s, w) => s + Math.cos(2 * Math.PI * (w.u * x + w.v * y) + w.p), 0) / 3);
}

function seen(light: (x: number, y: number) => number, exposure: number, dx: number, dy: number) {
  const next = numbersFrom(7);
  const data = new Float32Array(128 * 128);
  for (let i = 0; i < data.length; i += 1) {
    const signal = exposure * light((i % 128) - dx, Math.floor(i / 128) - dy);
    data[i] = Math.min(1, Math.max(0, signal + normals(next)[0] * Math.sqrt(signal / 40_000)));
  }
  return { width: 128, height: 128, data };
}

test.each([
  [0, 0],
  [0.3, -0.2],
  [4.5, 2.75],
  [-9.2, 0.4],
])('finds a shift of (%f, %f) px across two stops within 0.03 px', (dx, dy) => {
  const scenes = [1, 2, 3, 4].map(scene);
  const first: Plane[] = scenes.map((s) => seen(s, 0.08, 0, 0));
  const second: Plane[] = scenes.map((s) => seen(s, 0.32, dx, dy));
  const found = frameShift(first, second, { clip: 0.98, ratio: 4 });
  if (!found.ok) throw new Error(found.reason);
  expect(Math.abs(found.value.dx - dx)).toBeLessThan(0.03);
  expect(Math.abs(found.value.dy - dy)).toBeLessThan(0.03);
  expect(found.value.spread).toBeLessThan(0.03);
});

test('says so where the frames share no detail', () => {
  const flat = Array.from({ length: 4 }, () => seen(() => 1, 0.2, 0, 0));
  const found = frameShift(
    flat,
    flat.map(() => seen(() => 9, 0.8, 0, 0)),
    {
      ...{ clip: 0.98, ratio: 4 },
    },
  );
  expect(found).toEqual({
    ok: false,
    reason: 'only 0 of 4 places show detail that both frames hold',
  });
});
