import { describe, expect, test } from 'vitest';
import { project, type Homography } from '../../../src/imaging/conventions.ts';
import { type Plane16 } from '../../../src/imaging/plane.ts';
import { renderPair } from '../../../src/imaging/render/test-pair.ts';
import { invert } from '../../../src/imaging/registration/homography.ts';
import { betweenViews, type View, viewHomography } from '../../../src/imaging/render/view.ts';

/** Bilinear sample; the pictures are smooth over a pixel, blurred by the lens. */
function sample({ width, data }: Plane16, x: number, y: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const fx = x - ix;
  const fy = y - iy;
  const at = iy * width + ix;
  const top = data[at] + (data[at + 1] - data[at]) * fx;
  const bottom = data[at + width] + (data[at + width + 1] - data[at + width]) * fx;
  return top + (bottom - top) * fy;
}

/** Shift in pixels, by least squares on gradients, between the base and the capture brought onto it. */
function remainingShift(base: Plane16, moving: Plane16, toBase: Homography): [number, number] {
  const toMoving = invert(toBase);
  let [xx, xy, yy, xd, yd] = [0, 0, 0, 0, 0];
  for (let y = 120; y < base.height - 120; y += 1) {
    for (let x = 120; x < base.width - 120; x += 1) {
      const [mx, my] = project(toMoving, x, y);
      const at = y * base.width + x;
      const gx = (base.data[at + 1] - base.data[at - 1]) / 2;
      const gy = (base.data[at + base.width] - base.data[at - base.width]) / 2;
      const d = sample(moving, mx, my) - base.data[at];
      xx += gx * gx;
      xy += gx * gy;
      yy += gy * gy;
      xd += gx * d;
      yd += gy * d;
    }
  }
  const determinant = xx * yy - xy * xy;
  return [(yy * xd - xy * yd) / determinant, (xx * yd - xy * xd) / determinant];
}

describe('the written homography', () => {
  test('brings a noiseless capture onto the base within 0.02 px', () => {
    // Two positives under one lamp: same tones, so gradients can measure what is left.
    const pair = renderPair(31, { noise: 0, second: 'positive' });
    const [x, y] = remainingShift(pair.positive, pair.negative, pair.homography);
    expect(Math.hypot(x, y)).toBeLessThan(0.02);
  });

  test('and a homography that is off by 0.1 px is found to be off by 0.1 px', () => {
    const pair = renderPair(31, { noise: 0, second: 'positive' });
    const h = pair.homography;
    const off: Homography = [h[0], h[1], h[2] + 0.1, h[3], h[4], h[5], h[6], h[7], h[8]];
    const [x] = remainingShift(pair.positive, pair.negative, off);
    expect(Math.abs(Math.abs(x) - 0.1)).toBeLessThan(0.03);
  });

  test('there and back is no move, with every error of the stand and every lay', () => {
    const base: View = {
      width: 1200,
      height: 900,
      pixelsPerMillimetre: 16,
      distance: 700,
      shift: [0, 0],
      turn: 0,
      tilt: [0, 0],
    };
    for (const lay of ['as-is', 'mirrored', 'half-turned', 'mirrored and half-turned'] as const) {
      const moved = {
        ...base,
        lay,
        shift: [1, -2] as const,
        turn: 0.7,
        tilt: [0.5, -0.3] as const,
      };
      const there = betweenViews(moved, base);
      const back = betweenViews(base, moved);
      const [x, y] = project(back, ...project(there, 300, 200));
      expect(x).toBeCloseTo(300, 6);
      expect(y).toBeCloseTo(200, 6);
    }
  });

  test('a tilted plate is larger where it comes nearer', () => {
    const view: View = {
      width: 1200,
      height: 900,
      pixelsPerMillimetre: 10,
      distance: 500,
      shift: [0, 0],
      turn: 0,
      tilt: [0, 2],
    };
    const m = viewHomography(view);
    const [left] = project(m, -40, 0);
    const [right] = project(m, 40, 0);
    // Pinhole by hand: x = f X cos a / (D - X sin a), with f = 10 x 500 px and a = 2 degrees.
    const a = (2 * Math.PI) / 180;
    const wanted = (x: number) => 599.5 + (5000 * x * Math.cos(a)) / (500 - x * Math.sin(a));
    expect(left).toBeCloseTo(wanted(-40), 9);
    expect(right).toBeCloseTo(wanted(40), 9);
  });
});

describe('a rendered pair', () => {
  test('has opposite tones', () => {
    const { positive, negative } = renderPair(7, {
      width: 600,
      height: 450,
      move: { shift: 0, turn: 0, tilt: 0, scale: 0 },
    });
    // Within the opening: tarnish takes light from both.
    const middle = (p: Plane16) => {
      const values: number[] = [];
      for (let y = 150; y < 300; y += 1) {
        for (let x = 200; x < 400; x += 1) values.push(p.data[y * 600 + x]);
      }
      const mean = values.reduce((s, v) => s + v, 0) / values.length;
      return values.map((v) => v - mean);
    };
    const p = middle(positive);
    const n = middle(negative);
    const product = (u: number[], v: number[]) => u.reduce((s, value, i) => s + value * v[i], 0);
    expect(product(p, n) / Math.sqrt(product(p, p) * product(n, n))).toBeLessThan(-0.9);
  });

  test('is the same for the same seed, and another for another', () => {
    const small = { width: 300, height: 225 };
    const one = renderPair(9, small);
    expect(renderPair(9, small).negative.data).toEqual(one.negative.data);
    expect(renderPair(10, small).negative.data).not.toEqual(one.negative.data);
  });
});
