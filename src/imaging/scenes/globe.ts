/** A globe of an unknown earth in its stand. */
import { ball, cylinder, turned } from './distance.ts';
import { grain } from './noise.ts';
import { modelled, type Solid, type Surface } from './solid.ts';
import { brass, wood } from './surfaces.ts';

/** A globe of radius r about (x, y, z); the stand reaches down to y = 0. */
export function globe(x: number, y: number, z: number, r: number, seed: number): Solid[] {
  const skin: Surface = {
    mean: 0.45,
    shine: 0.03,
    albedo: (wx, wy, wz, f) => {
      const px = (wx - x) / r;
      const tilt = 0.4;
      const qy = ((wy - y) * Math.cos(tilt) - (wx - x) * Math.sin(tilt)) / r;
      const qz = (wz - z) / r;
      const land =
        grain(px * 1.8 + 5, qy * 1.8, qz * 1.8, seed, 5, (f / r) * 2) > 0.02 ? 0.62 : 0.4;
      const lat = Math.asin(Math.max(-1, Math.min(1, qy))) / (Math.PI / 12);
      const lon = Math.atan2(qz, px) / (Math.PI / 12);
      const w = 0.02 + (f / r) * 2;
      const line =
        Math.abs(lat - Math.round(lat)) < w || Math.abs(lon - Math.round(lon)) < w ? 0.65 : 1;
      return land * line * (0.9 + 0.2 * grain(px * 6, qy * 6, qz * 6, seed + 2, 4, (f / r) * 6));
    },
  };
  const foot = turned([
    [0.075, 0],
    [0.078, 0.008],
    [0.05, 0.018],
    [0.018, 0.03],
    [0.014, 0.06],
    [0.022, 0.07],
    [0.013, 0.08],
    [0.013, 0.1],
  ]);
  return [
    modelled([x - r, y - r, z - r], [x + r, y + r, z + r], skin, (a, b, e) =>
      ball(a - x, b - y, e - z, r),
    ),
    modelled(
      [x - r * 1.2, y - r * 1.2, z - 0.012],
      [x + r * 1.2, y + r * 1.2, z + 0.012],
      brass(seed + 1),
      (a, b, e) => {
        const q = Math.hypot(a - x, b - y) - r * 1.09;
        return Math.max(Math.abs(q) - 0.006, Math.abs(e - z) - 0.004);
      },
    ),
    modelled(
      [x - r * 1.35, y - 0.012, z - r * 1.35],
      [x + r * 1.35, y + 0.012, z + r * 1.35],
      wood(seed + 3, 0.2, 'x', 60, 0.03),
      (a, b, e) => {
        const q = Math.hypot(a - x, e - z) - r * 1.22;
        return Math.max(Math.abs(q) - r * 0.1, Math.abs(b - y) - 0.006);
      },
    ),
    modelled(
      [x - 0.09, 0, z - 0.09],
      [x + 0.09, y - r, z + 0.09],
      wood(seed + 4, 0.16, 'y', 60, 0.03),
      (a, b, e) => foot(a - x, b, e - z),
    ),
    ...[-1, 1].map((side) =>
      modelled(
        [x + side * r * 1.22 - 0.012, 0, z - 0.012],
        [x + side * r * 1.22 + 0.012, y, z + 0.012],
        wood(seed + 5, 0.16, 'y', 60, 0.03),
        (a, b, e) =>
          cylinder(
            a - x - side * r * 1.22,
            b - y / 2,
            e - z,
            0.006 + 0.003 * Math.cos(b * 160),
            y / 2,
          ),
      ),
    ),
  ];
}
