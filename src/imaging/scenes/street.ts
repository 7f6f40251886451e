/** Ropewalk Street, looking towards the water: sun on one side, shade on the other. */
import { building, chimney } from './building.ts';
import { grain, lattice } from './noise.ts';
import { type SceneMaker } from './scene.ts';
import { block, floor, strut, type Solid } from './solid.ts';
import { boards, cobbles, iron, limewash, masonry, slates } from './surfaces.ts';

function row(seed: number, side: -1 | 1): Solid[] {
  const houses: Solid[] = [];
  let z = -6;
  for (let k = 0; z < 74; k++) {
    const r = (n: number): number => lattice(k, n, side + 5, seed);
    const long = 6 + 4.5 * r(1);
    const tall = 6.2 + 3.6 * r(2);
    const set = 3.15 + 0.5 * r(3);
    const wall =
      r(4) < 0.62
        ? limewash(seed + k * 7, 0.55 + 0.2 * r(5))
        : masonry(seed + k * 7, 0.34 + 0.16 * r(5), 0.24, 0.015);
    const inner = side * set;
    const outer = side * (set + 7);
    houses.push(
      ...building({
        min: [Math.min(inner, outer), 0, z],
        max: [Math.max(inner, outer), tall, z + long - 0.02],
        ridge: 2.6 + r(6),
        ridgeAlong: r(7) < 0.7 ? 'z' : 'x',
        front: 'x',
        bay: 2.1 + 0.5 * r(8),
        storey: 2.55,
        window: [0.95, 1.35],
        wall,
        roof: slates(seed + 60, 0.3, 0.3),
        seed: seed + k * 3 + side,
      }),
      chimney(side * (set + 3), tall + 1.6, z + long * 0.85, 2.2, masonry(seed + 5, 0.28, 0.16)),
      // A step and a down-pipe at each house.
      block(
        [side > 0 ? inner - 0.35 : inner, 0, z + 0.8],
        [side > 0 ? inner : inner + 0.35, 0.18, z + 2.1],
        masonry(seed + 8, 0.5, 0.5),
      ),
      strut(
        [side * (set - 0.07), 0.1, z + 0.12],
        [side * (set - 0.07), tall, z + 0.12],
        0.045,
        iron(seed),
      ),
    );
    z += long;
  }
  return houses;
}

export const street: SceneMaker = (seed) => ({
  solids: [
    floor(0, cobbles(seed, 0.42, 0.17)),
    // Kerbs and raised walks.
    block([-3.2, 0, -6], [-2.35, 0.12, 74], masonry(seed + 1, 0.5, 0.7, 0.012)),
    block([2.35, 0, -6], [3.2, 0.12, 74], masonry(seed + 2, 0.5, 0.7, 0.012)),
    ...row(seed + 100, -1),
    ...row(seed + 200, 1),
    // A hand cart left by the wall and a lamp on its bracket.
    block([1.5, 0.62, 9], [2.2, 0.7, 11], boards(seed + 3, 0.3, 0.16, 'x')),
    block([1.5, 0.7, 9], [1.54, 1.0, 11], boards(seed + 3, 0.3, 0.1, 'y')),
    block([2.16, 0.7, 9], [2.2, 1.0, 11], boards(seed + 3, 0.3, 0.1, 'y')),
    strut([1.5, 0.66, 9], [1.35, 0.72, 7.4], 0.03, boards(seed + 3, 0.3, 0.2, 'x')),
    strut([2.2, 0.66, 9], [2.3, 0.72, 7.4], 0.03, boards(seed + 3, 0.3, 0.2, 'x')),
    strut([-3.15, 3.4, 14], [-2.2, 3.6, 14], 0.03, iron(seed + 1)),
    block([-2.34, 3.0, 13.86], [-2.06, 3.5, 14.14], iron(seed + 2, 0.2)),
    // A mast beyond the end of the street.
    strut([0.3, 0, 96], [0.1, 17, 96], 0.2, { mean: 0.25, albedo: () => 0.25 }),
    strut([-2.6, 11.5, 96], [3, 11.7, 96], 0.1, { mean: 0.25, albedo: () => 0.25 }),
    strut([-3, 1, 96], [0.15, 13, 96], 0.04, { mean: 0.1, albedo: () => 0.1 }),
    strut([3.4, 1, 96], [0.15, 13, 96], 0.04, { mean: 0.1, albedo: () => 0.1 }),
  ],
  source: { kind: 'sun', towards: [-0.5, 0.72, -0.36], radius: 0.05, irradiance: 4.4 },
  sky: (_dx, dy) => (dy > -0.02 ? 0.3 : 0.05),
  seen: (dx, dy, dz) =>
    1.1 - 0.35 * Math.max(0, dy) + 0.1 * grain(dx * 3, dy * 5, dz * 3, seed, 4, 0.001),
  camera: { position: [-0.45, 2.5, -5], target: [0.2, 2.9, 40], tangent: 0.4, rise: 0.24 },
  ambient: 0.05,
  exposure: 1.5,
  haze: 260,
  hazeRadiance: 0.8,
  softness: 1,
});
