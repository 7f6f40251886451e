import { bend, bendNear, radialAbout, unbend } from '../../../src/imaging/radial.ts';
import { asksForRadial, radialEvidence } from '../../../src/imaging/registration/lens-change.ts';
import { describe, expect, test } from 'vitest';
import { project, type Homography } from '../../../src/imaging/conventions.ts';
import { fitIncrement, freely } from '../../../src/imaging/registration/fit-increment.ts';
import { residualMap } from '../../../src/imaging/registration/residual-map.ts';
import { cornerDeviation, passes } from '../../../src/imaging/registration/tile-check.ts';
import { tileConsensus } from '../../../src/imaging/registration/tile-consensus.ts';
import { fitTiles, fitTilesClosely } from '../../../src/imaging/registration/tile-fit.ts';
import type { Tile } from '../../../src/imaging/registration/tile-shifts.ts';
import { seeded } from './pairs.ts';

const [width, height] = [1200, 900];

/** A grid of tiles displaced by a small turn and shift; every third one shows only false peaks. */
function turnedTiles(random: () => number): readonly Tile[] {
  const tiles: Tile[] = [];
  for (let y = 64; y < height; y += 100) {
    for (let x = 64; x < width; x += 100) {
      const dx = 2.5 - 0.004 * (y - 449.5);
      const dy = -1.5 + 0.004 * (x - 599.5);
      const wrong = { dx: 16 * random() - 8, dy: 16 * random() - 8, z: 4 + 2 * random() };
      const right = { dx: dx + 0.1 * (random() - 0.5), dy: dy + 0.1 * (random() - 0.5), z: 5 };
      tiles.push({ x, y, peaks: tiles.length % 3 ? [wrong, right] : [wrong] });
    }
  }
  return tiles;
}

describe('tiles that agree', () => {
  test('find a turn of 0.004 rad among as many false peaks, within 0.1 px', () => {
    const tiles = turnedTiles(seeded(5));
    const consensus = tileConsensus(tiles, width, height, 3);
    const map = consensus && fitTiles(tiles, consensus.displacement, 4.5, width, height, 4);
    expect(map).toBeDefined();
    for (const [x, y] of [
      [0, 0],
      [1199, 899],
    ]) {
      const [px, py] = project(map ?? [1, 0, 0, 0, 1, 0, 0, 0, 1], x, y);
      expect(px - x).toBeCloseTo(2.5 - 0.004 * (y - 449.5), 1);
      expect(py - y).toBeCloseTo(-1.5 + 0.004 * (x - 599.5), 1);
    }
  });

  test('give back the homography that moved them', () => {
    const truth = [1.001, 0.002, 1.5, -0.001, 0.999, -0.7, 8e-7, -5e-7, 1] as const;
    const points = turnedTiles(seeded(6)).map(({ x, y }) => {
      const [px, py] = project(truth, x, y);
      return { x, y, dx: px - x, dy: py - y, weight: 1 };
    });
    const map = fitIncrement(points, width, height, freely)?.map;
    const [px, py] = project(map ?? truth, 1199, 0);
    const [tx, ty] = project(truth, 1199, 0);
    expect(map).toBeDefined();
    // The fit is linear in the displacement: a few thousandths of a pixel at 3 px of it.
    expect(Math.hypot(px - tx, py - ty)).toBeLessThan(0.01);
  });
});

describe('a row of tiles along the edge that a shadow holds half a pixel aside', () => {
  const random = seeded(7);
  const noise = () => 0.1 * (random() - 0.5);
  const tiles = turnedTiles(random).map(({ x, y }, i): Tile => {
    const aside = y === 64 ? 0.3 + 0.5 * (i % 2) : 0;
    return { x, y, peaks: [{ dx: noise(), dy: aside + noise(), z: 5 }] };
  });
  /** The tiles were moved by nothing, so this is the error of the corner. */
  const worst = (map: Homography | null) =>
    Math.max(
      ...[
        [0, 0],
        [1199, 0],
      ].map(([x, y]) => {
        const [px, py] = project(map ?? [0, 0, 0, 0, 0, 0, 0, 0, 1], x, y);
        return Math.hypot(px - x, py - y);
      }),
    );

  test('does not pull the corners with it in the last digits', () => {
    // By hand: half of the tiles of that row lie 0.3 px aside, the others 0.8 px.
    expect(worst(fitTiles(tiles, () => [0, 0], 6, width, height, 8))).toBeGreaterThan(0.3);
    expect(worst(fitTilesClosely(tiles, 6, width, height))).toBeLessThan(0.06);
  });
});

describe('a bend of the lens', () => {
  const radial = radialAbout(width, height, 0.004);
  const bent = (noise: number) => {
    const random = seeded(9);
    return turnedTiles(seeded(6)).map(({ x, y }) => {
      const [bx, by] = bend(radial, x, y);
      const off = () => noise * (random() - 0.5);
      return { x, y, dx: bx - x + off(), dy: by - y + off() };
    });
  };

  test('is told from tiles that it moved, with its coefficient', () => {
    const evidence = radialEvidence(bent(0.4), width, height);
    expect(evidence?.coefficient).toBeCloseTo(0.004, 3);
    expect(asksForRadial(evidence)).toBe(true);
  });

  test('is not seen in tiles that scatter alone', () => {
    const random = seeded(12);
    const tiles = turnedTiles(seeded(6)).map(({ x, y }) => {
      return { x, y, dx: random() - 0.5, dy: random() - 0.5 };
    });
    expect(asksForRadial(radialEvidence(tiles, width, height))).toBe(false);
  });

  test('goes there and back, and is its own tangent', () => {
    const [bx, by] = bend(radial, 1100, 50);
    // Brown's first term, written out: r = 550.5 and 399.5 from the centre, radius 750.
    const r2 = (1100 - (width - 1) / 2) ** 2 + (50 - (height - 1) / 2) ** 2;
    const share = 1 + (0.004 * r2) / ((width ** 2 + height ** 2) / 4);
    expect(bx).toBeCloseTo((width - 1) / 2 + (1100 - (width - 1) / 2) * share, 9);
    const [x, y] = unbend(radial, bx, by);
    expect(Math.hypot(x - 1100, y - 50)).toBeLessThan(1e-9);
    const [tx, ty] = project(bendNear(radial, 1100, 50), 1101, 52);
    const [ex, ey] = bend(radial, 1101, 52);
    expect(Math.hypot(tx - ex, ty - ey)).toBeLessThan(1e-4);
  });
});

describe('predicted corner deviation', () => {
  test('is what the closed form gives for a square grid', () => {
    // On a centred square grid the columns of the regression are orthogonal, but for the mean of
    // u^2, so the leverages add up: those of the affine part are 1/n + u^2 / sum u^2 +
    // v^2 / sum v^2 (Draper and Smith, section 3.1), once along x and once along y; a perspective
    // parameter moves a point by (u^2 - mean, uv).
    const places = [-300, -100, 100, 300];
    const tiles = places.flatMap((y) =>
      places.map((x) => ({ x: x + 499.5, y: y + 499.5, dx: 0.3, dy: 0.4 })),
    );
    const u = places.map((x) => x / 500);
    const sum = (of: (u: number) => number) => u.reduce((s, v) => s + of(v), 0);
    const mean = sum((a) => a * a) / 4;
    const affine = 2 * (1 / 16 + 2 / (4 * sum((a) => a * a)));
    const norm = 4 * sum((a) => (a * a - mean) ** 2) + sum((a) => a * a) ** 2;
    const perspective = (2 * ((1 - mean) ** 2 + 1)) / norm;
    const scatter = 0.5 ** 2 / 2;
    // 0.02 px is the floor that the check states.
    const expected = Math.hypot(Math.sqrt(scatter * (affine + perspective)), 0.02);
    expect(cornerDeviation(tiles, 1000, 1000)).toBeCloseTo(expected, 9);
  });

  test('is not given for three tiles', () => {
    const tile = { x: 0, y: 0, dx: 0, dy: 0 };
    expect(cornerDeviation([tile, tile, tile], 100, 100)).toBe(Infinity);
  });
});

describe('gate', () => {
  const good = { tried: 100, agreed: 25, leastPerQuadrant: 3, cornerDeviation: 0.3, tiles: [] };
  test('passes at its limits and closes on every side of them', () => {
    expect(passes(good)).toBe(true);
    expect(passes({ ...good, agreed: 24 })).toBe(false);
    expect(passes({ ...good, leastPerQuadrant: 2 })).toBe(false);
    expect(passes({ ...good, cornerDeviation: 0.301 })).toBe(false);
  });
});

describe('residual map', () => {
  test('gives the median length by region and null where no tile was', () => {
    const tiles = [0.1, 0.5, 0.2].map((dx) => ({ x: 100, y: 100, dx, dy: 0 }));
    const map = residualMap(tiles, { width: 6000, height: 4000 });
    expect([map.columns, map.rows]).toEqual([6, 4]);
    expect(map.pixels).toHaveLength(24);
    expect(map.pixels[0]).toBe(0.2);
    expect(map.pixels.slice(1).every((v) => v === null)).toBe(true);
  });
});
