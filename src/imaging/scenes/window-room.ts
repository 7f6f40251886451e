/** The corner of a plain room, lit by one tall window with small panes. */
import { blend, box, rod, turned } from './distance.ts';
import { type SceneMaker } from './scene.ts';
import { block, modelled, type Solid, type Surface } from './solid.ts';
import { boards, bottleGlass, cloth, limewash, plaster, wood } from './surfaces.ts';

/** Opening of the window in the left wall: z from, to; y from, to. */
const gap = [0.75, 1.85, 0.85, 2.5] as const;
const left = -1.45;

function windowWall(wall: Surface, frame: Surface): Solid[] {
  const [z0, z1, y0, y1] = gap;
  const outer = left - 0.32;
  const bars: Solid[] = [];
  for (let k = 1; k < 3; k++) {
    const z = z0 + ((z1 - z0) * k) / 3;
    bars.push(block([left - 0.25, y0, z - 0.014], [left - 0.2, y1, z + 0.014], frame));
  }
  for (let k = 1; k < 5; k++) {
    const y = y0 + ((y1 - y0) * k) / 5;
    bars.push(block([left - 0.25, y - 0.013, z0], [left - 0.2, y + 0.013, z1], frame));
  }
  return [
    block([outer, 0, -3], [left, 3.2, z0], wall),
    block([outer, 0, z1], [left, 3.2, 3.2], wall),
    block([outer, 0, z0], [left, y0, z1], wall),
    block([outer, y1, z0], [left, 3.2, z1], wall),
    block([left - 0.02, y0 - 0.05, z0 - 0.08], [left + 0.09, y0, z1 + 0.08], frame),
    ...bars,
  ];
}

function chair(x: number, z: number, surface: Surface): Solid {
  const c = Math.cos(0.5);
  const s = Math.sin(0.5);
  return modelled([x - 0.36, 0, z - 0.36], [x + 0.36, 1.06, z + 0.36], surface, (wx, y, wz) => {
    const px = (wx - x) * c + (wz - z) * s;
    const pz = -(wx - x) * s + (wz - z) * c;
    const ax = Math.abs(px);
    let d = box(px, y - 0.45, pz, 0.21, 0.018, 0.2, 0.01);
    d = Math.min(d, rod(ax, y, pz, [0.19, 0, -0.18], [0.18, 0.45, -0.17], 0.017, 0.02));
    d = Math.min(d, rod(ax, y, pz, [0.18, 0, 0.19], [0.19, 1.02, 0.24], 0.018, 0.016));
    d = Math.min(d, box(px, y - 0.2, pz + 0.175, 0.19, 0.012, 0.012));
    d = Math.min(d, box(px, y - 0.96, pz - 0.232, 0.19, 0.045, 0.011, 0.005));
    d = Math.min(d, box(px, y - 0.72, pz - 0.212, 0.19, 0.022, 0.01, 0.005));
    return Math.min(d, rod(ax, y, pz, [0.07, 0.72, 0.212], [0.07, 0.96, 0.232], 0.009));
  });
}

export const windowRoom: SceneMaker = (seed) => {
  const wall = limewash(seed, 0.62);
  const oak = wood(seed + 2, 0.2, 'x', 40, 0.03);
  const jug = turned([
    [0.05, 0],
    [0.062, 0.01],
    [0.085, 0.07],
    [0.088, 0.12],
    [0.066, 0.18],
    [0.048, 0.21],
    [0.05, 0.24],
    [0.058, 0.255],
    [0.048, 0.25],
    [0.04, 0.2],
  ]);
  return {
    solids: [
      ...windowWall(wall, wood(seed + 1, 0.5, 'y', 40)),
      block([-2, -0.1, -3], [2.6, 0, 3.2], {
        ...boards(seed + 3, 0.27, 0.19, 'x'),
        shine: 0.03,
        spread: 0.3,
      }),
      block([-2, 0, 2.7], [2.6, 3.2, 2.9], wall),
      block([1.75, 0, -3], [1.9, 3.2, 3], wall),
      block([-2, 2.95, -3], [2.6, 3.1, 3.2], boards(seed + 9, 0.3, 0.3, 'x')),
      // Skirting along the far wall.
      block([-1.45, 0, 2.66], [1.75, 0.16, 2.7], wood(seed + 4, 0.24, 'x', 30)),
      // The table, its cloth turned back, and what stands on it.
      block([-0.95, 0.7, 1.15], [0.35, 0.74, 1.95], oak),
      ...[-0.88, 0.28].flatMap((x) =>
        [1.2, 1.88].map((z) => block([x - 0.03, 0, z - 0.03], [x + 0.03, 0.7, z + 0.03], oak)),
      ),
      block([-0.9, 0.58, 1.2], [0.3, 0.7, 1.24], oak),
      modelled(
        [-0.99, 0.44, 1.1],
        [-0.35, 0.765, 2],
        cloth(seed + 5, 0.72, 420),
        (x, y, z) => {
          const wave = 0.012 * Math.sin(x * 34) * Math.max(0, (0.72 - y) * 4);
          const top = box(x + 0.66, y - 0.747, z - 1.55, 0.3, 0.006, 0.42, 0.005);
          const drop = box(x + 0.66, y - 0.61, z - 1.137 + wave, 0.3, 0.14, 0.006, 0.005);
          return blend(top, drop, 0.02);
        },
        0.8,
      ),
      modelled([-0.64, 0.75, 1.36], [-0.38, 1.02, 1.62], plaster(seed + 6, 0.66), (x, y, z) =>
        blend(
          jug(x + 0.52, y - 0.755, z - 1.5),
          Math.hypot(Math.hypot(x + 0.42, y - 0.885) - 0.055, z - 1.5) - 0.009,
          0.012,
        ),
      ),
      modelled([-0.2, 0.74, 1.35], [0.14, 0.8, 1.65], plaster(seed + 7, 0.7), (x, y, z) => {
        const r = Math.hypot(x + 0.03, z - 1.5);
        return Math.max(Math.abs(y - 0.748 - 0.9 * r * r) - 0.006, r - 0.15) * 0.8;
      }),
      modelled([0.08, 0.74, 1.6], [0.18, 1.06, 1.72], bottleGlass(), (x, y, z) => {
        const r = Math.hypot(x - 0.13, z - 1.66);
        const neck = 0.014 + 0.026 / (1 + Math.exp((y - 0.94) * 60));
        return Math.max(r - neck, y - 1.04, 0.742 - y) * 0.7;
      }),
      chair(0.62, 1.35, wood(seed + 8, 0.17, 'y', 60, 0.03)),
      // A coat peg rail and a framed print on the far wall.
      block([0.1, 1.75, 2.66], [0.95, 1.84, 2.7], oak),
      ...[0.2, 0.5, 0.8].map((x) => block([x - 0.012, 1.78, 2.58], [x + 0.012, 1.81, 2.66], oak)),
      modelled([0.33, 0.75, 2.4], [0.67, 1.8, 2.66], cloth(seed + 12, 0.13, 450), (x, y, z) => {
        const t = (1.79 - y) / 1.0;
        const wide = 0.03 + 0.12 * Math.min(1, t * 1.6);
        const fold = 0.03 * Math.sin(x * 60 + y * 3) * Math.min(1, t * 2);
        return (
          Math.max(
            Math.abs(x - 0.5) - wide,
            Math.abs(z - 2.6 - fold) - 0.05 * Math.min(1, t * 3),
            0.8 - y,
            y - 1.79,
          ) * 0.5
        );
      }),
      block([-0.75, 1.45, 2.675], [-0.2, 1.92, 2.7], oak),
      block([-0.7, 1.5, 2.67], [-0.25, 1.87, 2.676], plaster(seed + 13, 0.5)),
    ],
    source: {
      kind: 'window',
      centre: [left - 0.31, (gap[2] + gap[3]) / 2, (gap[0] + gap[1]) / 2],
      across: [0, 0, (gap[1] - gap[0]) / 2],
      up: [0, (gap[3] - gap[2]) / 2, 0],
      facing: [0.96, -0.28, 0],
      radiance: 7,
    },
    sky: () => 0,
    seen: (dx, dy) => (dx < 0 ? 5 + 2 * dy : 0.05),
    camera: { position: [1.3, 1.45, -2.4], target: [-0.62, 1.18, 2.3], tangent: 0.4 },
    ambient: 0.05,
    exposure: 2.0,
    haze: Infinity,
    hazeRadiance: 0,
    softness: 1,
  };
};
