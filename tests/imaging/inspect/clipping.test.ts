import { describe, expect, test } from 'vitest';
import { measureClipping } from '../../../src/imaging/inspect/clipping.ts';
import { depthInside, placeInQuad, quadOf } from '../../../src/imaging/inspect/quad.ts';

const outline = quadOf([
  [19.5, 19.5],
  [119.5, 19.5],
  [119.5, 99.5],
  [19.5, 99.5],
]);

/** 140 x 120 pixels; white where `white` says so. */
function plane(white: (x: number, y: number) => boolean) {
  const data = Uint16Array.from({ length: 140 * 120 }, (_, i) =>
    white(i % 140, Math.floor(i / 140)) ? 65535 : 10000,
  );
  return { width: 140, height: 120, data };
}

describe('measureClipping', () => {
  test('counts the image, the band along the edge and the surround apart', () => {
    // The band is 4 % of 80 px: the pixels of the outermost 3 rows and columns.
    const found = measureClipping(
      plane((x) => x < 70),
      outline,
      65000,
    );
    expect(found.surroundShare).toBeCloseTo((70 * 120 - 50 * 80) / (140 * 120 - 100 * 80), 3);
    expect(found.imageShare).toBeCloseTo((50 - 3) / (100 - 6), 2);
    const edge = measureClipping(
      plane((x) => x === 20),
      outline,
      65000,
    );
    expect(edge.imageShare).toBe(0);
    expect(edge.edgeShare).toBeCloseTo(80 / (100 * 80 - 94 * 74), 2);
  });

  test('maps what is clipped to where it is', () => {
    const { map } = measureClipping(
      plane((x, y) => x < 35 && y >= 60),
      null,
      65000,
      4,
      2,
    );
    expect([...map.values]).toEqual([0, 0, 0, 0, 1, 0, 0, 0]);
  });
});

describe('quads', () => {
  test('depth is positive inside, negative outside, and the distance to the nearest side', () => {
    expect(depthInside(outline, 29.5, 60)).toBeCloseTo(10, 10);
    expect(depthInside(outline, 9.5, 60)).toBeCloseTo(-10, 10);
  });

  test('a place in perspective: the diagonals of a quad meet at its centre', () => {
    const quad = quadOf([
      [0, 0],
      [100, 10],
      [80, 90],
      [10, 70],
    ]);
    // It lies on both diagonals, (0,0)-(80,90) and (100,10)-(10,70).
    const [x, y] = placeInQuad(quad, 0.5, 0.5);
    expect(x / y).toBeCloseTo(80 / 90, 10);
    expect((y - 10) / (100 - x)).toBeCloseTo(60 / 90, 10);
    expect(placeInQuad(quad, 1, 1)).toEqual([80, 90]);
  });
});
