import { describe, expect, test } from 'vitest';
import { encodeSrgb } from '../../../src/imaging/colour/srgb-curve.ts';
import { median } from '../../../src/imaging/inspect/quantile.ts';
import { evenPlaces } from '../../../src/imaging/merge/even-places.ts';
import { recoverResponse, responseTable } from '../../../src/imaging/merge/response-curve.ts';
import { numbersFrom } from '../../../src/imaging/render/seeded.ts';
import { normals } from './bracket-samples.ts';

const seconds = [1 / 64, 1 / 16, 1 / 4, 1, 4];

function places(count: number, curve: (linear: number) => number, noise: number): Uint8Array[] {
  const next = numbersFrom(9);
  return Array.from({ length: count }, () => {
    const radiance = 0.02 * 3000 ** next();
    return Uint8Array.from(seconds, (t) => {
      const signal = radiance * t * (1 + noise * normals(next)[0]);
      return Math.round(255 * curve(Math.min(1, Math.max(0, signal))));
    });
  });
}

/** Errors of the curve against the true one, whose scale is free, over codes that the hat trusts. */
function errors(found: Float64Array, inverse: (encoded: number) => number): number[] {
  const ratios = Array.from({ length: 215 }, (_, i) => found[i + 20] / inverse((i + 20) / 255));
  const scale = median(ratios);
  return ratios.map((ratio) => Math.abs(ratio / scale - 1));
}

describe('the response of a camera', () => {
  test('is found from an sRGB bracket: median within 1 %, worst within 6 %', () => {
    const found = recoverResponse(places(1500, encodeSrgb, 0.01), seconds);
    if (!found.ok) throw new Error(found.reason);
    const inverse = (v: number) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
    const all = errors(found.value, inverse);
    expect(median(all)).toBeLessThan(0.01);
    expect(Math.max(...all)).toBeLessThan(0.06);
  });

  test('is found from a plain power of 2.2 and told from sRGB', () => {
    const found = recoverResponse(
      places(1500, (v) => v ** (1 / 2.2), 0.01),
      seconds,
    );
    if (!found.ok) throw new Error(found.reason);
    expect(median(errors(found.value, (v) => v ** 2.2))).toBeLessThan(0.01);
  });

  test('rises with the code and becomes a table of either depth', () => {
    const found = recoverResponse(places(800, encodeSrgb, 0.02), seconds);
    if (!found.ok) throw new Error(found.reason);
    const [shallow, deep] = [responseTable(found.value, 8), responseTable(found.value, 16)];
    expect(deep).toHaveLength(65536);
    for (let z = 1; z < 256; z += 1) expect(shallow[z]).toBeGreaterThanOrEqual(shallow[z - 1]);
    expect(deep[65535]).toBe(1);
    expect(deep[128 * 257] / shallow[128]).toBeCloseTo(1, 5);
  });

  test('is not guessed from a handful of places', () => {
    expect(recoverResponse(places(10, encodeSrgb, 0), seconds)).toEqual({
      ok: false,
      reason: "only 10 places are even enough to tell the camera's response",
    });
  });
});

test('places are taken from every brightness, the evenest first', () => {
  const offers = evenPlaces(160);
  const next = numbersFrom(3);
  for (let i = 0; i < 5000; i += 1) {
    const mean = 255 * next() ** 3;
    offers.offer([mean, mean], 14 * next());
  }
  const chosen = offers.chosen();
  expect(chosen.length).toBeGreaterThan(120);
  for (let c = 0; c < 16; c += 1) {
    expect(chosen.filter(([a]) => Math.min(15, Math.floor(a / 16)) === c).length).toBeGreaterThan(
      5,
    );
  }
});
