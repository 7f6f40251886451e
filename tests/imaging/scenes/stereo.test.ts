/**
 * Stereo disparity against the closed form of two parallel cameras with shifted picture planes:
 * a point at depth Z lies f b (1/Z - 1/agree) further right in the left picture, with f the
 * focal length in pixels, f = height / (2 tangent). (Any photogrammetry text; derived here from
 * similar triangles.)
 */
import { expect, test } from 'vitest';
import {
  nearBollard,
  quayAgree,
  quayBase,
  stereoQuay,
} from '../../../src/imaging/scenes/harbour.ts';
import { renderScene } from '../../../src/imaging/scenes/index.ts';
import { makeView } from '../../../src/imaging/scenes/view.ts';

const size = { width: 420, height: 540, seed: 5 };
const scene = stereoQuay(size.seed);
const { position, target, tangent } = scene.camera;

/** Depth of a point along the lens. */
function depthOf(p: readonly [number, number, number]): number {
  const f = target.map((t, k) => t - position[k]);
  const l = Math.hypot(...f);
  return p.reduce((sum, c, k) => sum + ((c - position[k]) * f[k]) / l, 0);
}

const expected = (depth: number): number =>
  (size.height / (2 * tangent)) * quayBase * (1 / depth - 1 / quayAgree);

test('projected points move by the closed form, near to the left and far to the right', () => {
  const left = makeView(scene.camera, size.width / size.height, 'left');
  const right = makeView(scene.camera, size.width / size.height, 'right');
  const points: readonly (readonly [number, number, number])[] = [
    nearBollard,
    [1, 3, quayAgree * 0.99],
    [2, 4, 70],
  ];
  for (const point of points) {
    const l = left.project(...point);
    const r = right.project(...point);
    if (!l || !r) throw new Error('The point lies behind the camera.');
    expect((l[0] - r[0]) * size.width).toBeCloseTo(expected(depthOf(point)), 6);
    expect(l[1]).toBeCloseTo(r[1], 12);
  }
  expect(expected(depthOf(nearBollard))).toBeGreaterThan(10);
  expect(expected(70)).toBeLessThan(0);
});

test('the near bollard in the drawn pictures moves as far as the closed form says', () => {
  const left = renderScene('stereo-quay', { ...size, eye: 'left' });
  const right = renderScene('stereo-quay', { ...size, eye: 'right' });
  const view = makeView(scene.camera, size.width / size.height, 'left');
  const at = view.project(...nearBollard);
  if (!at) throw new Error('The bollard lies behind the camera.');
  const cx = Math.round(at[0] * size.width);
  const cy = Math.round(at[1] * size.height) + 10;
  // Best match of a patch around the bollard's head, whole pixels, by normalised correlation.
  const patch = (plane: Float32Array, x0: number): number[] => {
    const values: number[] = [];
    for (let y = cy - 6; y <= cy + 6; y++) {
      for (let x = x0 - 21; x <= x0 + 21; x++) values.push(plane[y * size.width + x]);
    }
    const mean = values.reduce((a, b) => a + b, 0) / values.length;
    const centred = values.map((v) => v - mean);
    const norm = Math.hypot(...centred);
    return centred.map((v) => v / norm);
  };
  const wanted = patch(left.data, cx);
  let best = -1;
  let shift = 0;
  for (let d = -110; d <= 110; d++) {
    if (cx - d < 37 || cx - d > size.width - 38) continue;
    const score = patch(right.data, cx - d).reduce((sum, v, k) => sum + v * wanted[k], 0);
    if (score > best) {
      best = score;
      shift = d;
    }
  }
  expect(best, `shift ${shift}`).toBeGreaterThan(0.8);
  // The head is 0.25 m deep: its faces differ by about two pixels from its middle.
  expect(Math.abs(shift - expected(depthOf(nearBollard)))).toBeLessThan(3);
});
