/**
 * Captures between which focus or lens changed: rendered pairs whose negative was bent by a known
 * radial distortion, and the same pairs as they were.
 */
import { describe, expect, test } from 'vitest';
import { project } from '../../../src/imaging/conventions.ts';
import type { Plane16 } from '../../../src/imaging/plane.ts';
import { bend, radialAbout, unbend, type Radial } from '../../../src/imaging/radial.ts';
import type { RegistrationEstimate } from '../../../src/imaging/registration/estimate.ts';
import { invert } from '../../../src/imaging/registration/homography.ts';
import { judgeRegistration } from '../../../src/imaging/registration/judge.ts';
import { register } from '../../../src/imaging/registration/register.ts';
import { renderPair } from '../../../src/imaging/render/test-pair.ts';

const size = { width: 800, height: 600 };
const pair = renderPair(31, { ...size, lay: 'mirrored', newScratches: 8 });
const places = [
  [20, 20],
  [779, 20],
  [779, 579],
  [20, 579],
  [400, 40],
  [300, 400],
] as const;

const plainOutcome = register(pair.positive, pair.negative);
if (!plainOutcome.ok) throw new Error(plainOutcome.reason);
const plain = plainOutcome.value;

/** The capture as a lens with this distortion sees it; cubic convolution (Keys 1981). */
function bent(plane: Plane16, radial: Radial): Plane16 {
  const { width, height, data } = plane;
  const at = (x: number, y: number) =>
    data[Math.max(0, Math.min(height - 1, y)) * width + Math.max(0, Math.min(width - 1, x))];
  const weights = (t: number) => [
    -0.5 * t * (1 - t) ** 2,
    1 - 2.5 * t * t + 1.5 * t ** 3,
    0.5 * t + 2 * t * t - 1.5 * t ** 3,
    -0.5 * t * t * (1 - t),
  ];
  const out = new Uint16Array(width * height);
  for (let i = 0; i < out.length; i += 1) {
    const [x, y] = unbend(radial, i % width, Math.floor(i / width));
    const [ix, iy] = [Math.floor(x), Math.floor(y)];
    const [across, down] = [weights(x - ix), weights(y - iy)];
    let sum = 0;
    for (let j = 0; j < 4; j += 1) {
      for (let k = 0; k < 4; k += 1) sum += down[j] * across[k] * at(ix - 1 + k, iy - 1 + j);
    }
    out[i] = Math.max(0, Math.min(65535, Math.round(sum)));
  }
  return { width, height, data: out };
}

/** Mean distance in the capture between where the estimate and the truth take base pixels. */
function error(found: RegistrationEstimate, radial: Radial | null): number {
  const toMoving = invert(found.homography);
  const toTruth = invert(pair.homography);
  const distances = places.map(([x, y]) => {
    const p = found.radial ? bend(found.radial, x, y) : ([x, y] as const);
    const [ex, ey] = project(toMoving, ...p);
    const flat = project(toTruth, x, y);
    const [tx, ty] = radial ? bend(radial, ...flat) : flat;
    return Math.hypot(ex - tx, ey - ty);
  });
  return distances.reduce((a, b) => a + b) / distances.length;
}

describe('a capture taken with another focus', () => {
  test.each([0.012, -0.008])('is straightened: %f of the half diagonal at the corners', (k) => {
    const radial = radialAbout(size.width, size.height, k);
    const outcome = register(pair.positive, bent(pair.negative, radial));
    if (!outcome.ok) throw new Error(outcome.reason);
    const { value } = outcome;
    expect(value.radial?.coefficient).toBeDefined();
    // 0.0012 of 500 px is 0.6 px; a term of the wrong sign or size is far outside.
    expect(Math.abs((value.radial?.coefficient ?? 0) - k)).toBeLessThan(0.0012);
    // As well as without any bend, which itself moves the corners by 6 and 4 px.
    expect(error(value, radial)).toBeLessThan(error(plain, null) + 0.05);
    const judged = judgeRegistration(outcome, { base: 'positive', moving: 'negative' });
    expect(judged.map((j) => j.code)).toEqual(['mirrored', 'lens-changed']);
  });

  test('is the only one that gets a radial term', () => {
    expect(plain.radial).toBeNull();
    expect(plain.lens?.share).toBeLessThan(0.15);
    expect(error(plain, null)).toBeLessThan(0.2);
  });
});
