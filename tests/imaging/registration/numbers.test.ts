/** The small numbers under registration against NumPy and OpenCV (scripts/reference/registration.py). */
import { describe, expect, test } from 'vitest';
import { project, type Homography } from '../../../src/imaging/conventions.ts';
import { homographyFromPoints } from '../../../src/imaging/registration/control-points.ts';
import { gaussianBlur, wideBlur } from '../../../src/imaging/registration/gaussian-blur.ts';
import {
  compose,
  cornerDistance,
  enlargement,
  invert,
  rescale,
} from '../../../src/imaging/registration/homography.ts';
import { solveInPlace } from '../../../src/imaging/registration/linear-system.ts';
import { spreadMask } from '../../../src/imaging/registration/masked-plane.ts';
import { shrinkPlane, shrinkToLog } from '../../../src/imaging/registration/shrink.ts';
import { smallestBut } from '../../../src/imaging/registration/smallest-but.ts';
import { warpPlane } from '../../../src/imaging/registration/warp-plane.ts';
import reference from '../../reference/registration.json' with { type: 'json' };

const [width, height] = [32, 24];
const picture = Float32Array.from({ length: width * height }, (_, i) => {
  const [x, y] = [i % width, Math.floor(i / width)];
  return Math.sin(0.5 * x) * Math.cos(0.3 * y) + 0.02 * x;
});
const homography: Homography = [0.97, 0.06, 3.1, -0.05, 1.02, -2.4, 1e-4, -5e-5, 1];

function largestDifference(a: ArrayLike<number>, b: ArrayLike<number>): number {
  expect(a.length).toBe(b.length);
  return Array.from(a).reduce((most, v, i) => Math.max(most, Math.abs(v - b[i])), 0);
}

describe('linear systems', () => {
  test('solves what numpy.linalg.solve solves, with a zero as first pivot', () => {
    const matrix = Float64Array.of(0, 2, -1, 4, 3, 1, 7, 2, 1, -5, 2, 8, 6, 2, 9, 1);
    const solved = solveInPlace(matrix, Float64Array.of(3, -1, 4, 1.5));
    expect(largestDifference(solved ?? [], reference.solution)).toBeLessThan(1e-8);
  });

  test('says null of a singular matrix', () => {
    expect(solveInPlace(Float64Array.of(0, 0, 0, 0), Float64Array.of(1, 1))).toBeNull();
  });
});

describe('homographies', () => {
  test('inverts as numpy.linalg.inv does', () => {
    expect(largestDifference(invert(homography), reference.inverse)).toBeLessThan(1e-7);
  });

  test('moves pixel centres, not corners, when pixels get smaller', () => {
    // A pixel becomes 4 x 4; its centre is the centre of those, 1.5 from the first.
    expect(project(enlargement(4), 0, 0)).toEqual([1.5, 1.5]);
    const [x, y] = project(rescale(homography, 4), 41.5, 21.5);
    const [u, v] = project(homography, 10, 5);
    expect(x).toBeCloseTo(4 * u + 1.5, 9);
    expect(y).toBeCloseTo(4 * v + 1.5, 9);
  });

  test('measures a shift of (3, 4) as 5 px at every corner', () => {
    const shifted = compose([1, 0, 3, 0, 1, 4, 0, 0, 1], homography);
    expect(cornerDistance(shifted, homography, 640, 480)).toBeCloseTo(5, 9);
  });
});

describe('control points', () => {
  const here = [
    [12, 7],
    [310, 20],
    [295, 240],
    [5, 225],
  ] as const;
  const there = [
    [20.4, 3.1],
    [318.9, 30.2],
    [290.3, 251.7],
    [1.2, 220.5],
  ] as const;

  test('four of them give the map that cv2.findHomography gives', () => {
    const points = here.map((base, i) => ({ base, here: there[i] }));
    const map = homographyFromPoints(points);
    // Elements of very different size: compared by where they take the corners.
    const distance = cornerDistance(
      map ?? [0, 0, 0, 0, 0, 0, 0, 0, 1],
      reference.fourPoints as unknown as Homography,
      320,
      240,
    );
    expect(distance).toBeLessThan(1e-4);
  });

  test('three on a line give nothing', () => {
    const points = [
      [0, 0],
      [100, 100],
      [200, 200],
      [300, 300],
    ].map(([x, y]) => ({ base: [x, y] as const, here: [x + 1, y] as const }));
    expect(homographyFromPoints(points)).toBeNull();
    expect(homographyFromPoints(points.slice(1))).toBeNull();
  });
});

describe('smoothing, shrinking, drawing', () => {
  test.each([1, 1.5] as const)('smooths by sigma %f as OpenCV does', (sigma) => {
    const result = gaussianBlur(picture, width, height, sigma);
    expect(largestDifference(result, reference.gaussian[`${sigma}`])).toBeLessThan(2e-6);
  });

  test('smooths at half size as at full size, within 0.2 % of the contrast', () => {
    const [w, h, sigma] = [61, 44, Math.sqrt(12)];
    const flat = new Float32Array(w * h).fill(0.7);
    expect(largestDifference(wideBlur(flat, w, h, sigma), flat)).toBeLessThan(1e-6);
    // A wave of frequency f comes out exp(-2 pi^2 sigma^2 f^2) as high (transform of a Gaussian).
    const f = 0.03;
    const wave = (x: number, y: number) => Math.sin(2 * Math.PI * (f * x + 0.5 * f * y));
    const data = Float32Array.from({ length: w * h }, (_, i) => wave(i % w, Math.floor(i / w)));
    const left = Math.exp(-2 * Math.PI ** 2 * sigma ** 2 * 1.25 * f ** 2);
    const found = wideBlur(data, w, h, sigma);
    for (let y = 14; y < h - 14; y += 1) {
      for (let x = 14; x < w - 14; x += 1) {
        expect(Math.abs(found[y * w + x] - left * wave(x, y))).toBeLessThan(0.002);
      }
    }
  });

  test('finds an order statistic as sorting does', () => {
    const values = Float32Array.from(
      { length: 997 },
      (_, i) => Math.sin(i * i + 1) * (1 + (i % 7)),
    );
    const sorted = values.toSorted();
    for (const k of [0, 1, 498, 995, 996]) {
      expect(smallestBut(values.slice(), k)).toBe(sorted[k]);
    }
  });

  const codes = Uint16Array.from({ length: 30 * 24 }, (_, i) =>
    Math.round(20000 + 15000 * Math.sin(0.9 * (i % 30) + 0.5 * Math.floor(i / 30))),
  );
  test.each([
    [3, reference.areaThree],
    [1.5, reference.areaOneAndHalf],
  ])('shrinks by %f as cv2.resize with INTER_AREA does, within rounding', (factor, expected) => {
    const shrunk = shrinkPlane({ width: 30, height: 24, data: codes }, factor);
    expect(largestDifference(shrunk.data, expected)).toBeLessThan(0.51);
  });

  test('one clipped sample makes the working pixel above it unusable, and no other', () => {
    const data = new Uint16Array(64 * 64).fill(20000);
    data[17 * 64 + 33] = 65535;
    const { usable } = shrinkToLog({ width: 64, height: 64, data }, 4);
    expect([...usable.keys()].filter((i) => usable[i] === 0)).toEqual([4 * 16 + 8]);
  });

  test('spreads a masked sample to a square of its radius', () => {
    const usable = new Uint8Array(11 * 9).fill(1);
    usable[4 * 11 + 5] = 0;
    const plane = { width: 11, height: 9, data: new Float32Array(99), usable };
    const spread = spreadMask(plane, 2).usable;
    const expected = usable.map((_, i) => {
      const [x, y] = [i % 11, Math.floor(i / 11)];
      return Math.abs(x - 5) <= 2 && Math.abs(y - 4) <= 2 ? 0 : 1;
    });
    expect([...spread]).toEqual([...expected]);
  });

  test('draws through a homography as cv2.warpPerspective does, within 1/32 px steps', () => {
    const plane = { width, height, data: picture, usable: new Uint8Array(picture.length).fill(1) };
    const drawn = warpPlane(plane, homography, width, height, 'linear');
    let compared = 0;
    for (let i = 0; i < drawn.data.length; i += 1) {
      if (!drawn.usable[i]) continue;
      compared += 1;
      // OpenCV rounds places to 1/32 px; the steepest slope of the picture is 0.52 per pixel.
      expect(Math.abs(drawn.data[i] - reference.warp[i])).toBeLessThan(0.52 / 32);
    }
    expect(compared).toBeGreaterThan(400);
  });
});
