/** Where a capture lies in the plate's frame, by what the alignment says of it. */
import { expect, test } from 'vitest';
import { project, type Homography } from '../../../src/imaging/conventions.ts';
import { bend, bendScaled, radialAbout } from '../../../src/imaging/radial.ts';
import { placeView } from '../../../src/pipeline/combine/place-view.ts';
import type { Registration } from '../../../src/records/result.ts';

const frame = { width: 3000, height: 2400 };
const registered = (homography: Homography): Registration => ({
  ...{ state: 'registered', homography: [...homography], radial: null },
  ...{ boundPixels: 0.3, boundMicrometres: 10, lay: 'as-is', polarity: 'same', method: 'fast' },
  ...{ tilesAgreed: 40, tilesTried: 50 },
  residual: { columns: 1, rows: 1, pixels: [0.1] },
});
/** Enlarges about pixel centres and shifts. */
const enlarged = (times: number, dx: number, dy: number): Homography => {
  const half = (times - 1) / 2;
  return [times, 0, half + dx, 0, times, half + dy, 0, 0, 1];
};

test('a capture as fine as the base is laid into its frame', () => {
  const warp = enlarged(1.02, 4, -3);
  const file = { width: 2950, height: 2350 };
  const placed = placeView(registered(warp), frame, file);
  expect(placed).toMatchObject({ width: 3000, height: 2400, registered: true, warp: [...warp] });
});

test('a capture of two fifths of the pixels is laid into the frame drawn at two fifths', () => {
  const file = { width: 1200, height: 960 };
  const warp = enlarged(2.5, 7, -5);
  const placed = placeView(registered(warp), frame, file);
  expect(placed).toMatchObject({ width: 1200, height: 960, registered: true });
  // 7 and -5 pixels of the frame are 2.8 and -2 of the smaller one; nothing else changes.
  const [x, y] = project(placed.warp as Homography, 100, 200);
  expect(x).toBeCloseTo(102.8, 9);
  expect(y).toBeCloseTo(198, 9);
});

test('a detail that covers a small part of the frame, and what is not aligned, stand alone', () => {
  const file = { width: 1200, height: 960 };
  const alone = { ...file, registered: false, warp: null };
  expect(placeView(registered(enlarged(0.9, 300, 200)), frame, file)).toEqual(alone);
  expect(placeView({ state: 'failed', reason: 'too few tiles' }, frame, file)).toEqual(alone);
  expect(placeView(undefined, frame, file)).toEqual(alone);
});

test('a bend in the smaller frame moves a point to where the bend in the whole one does', () => {
  const whole = radialAbout(3000, 2400, 0.004);
  const small = bendScaled(whole, 0.4);
  const into = (v: number) => (v + 0.5) * 0.4 - 0.5;
  const [x, y] = bend(whole, 2700, 300);
  const [sx, sy] = bend(small, into(2700), into(300));
  expect(sx).toBeCloseTo(into(x), 9);
  expect(sy).toBeCloseTo(into(y), 9);
});
