/** Shells, a bottle and plaster casts on a table before a cloth: a studio with one window. */
import { ball, blend, box, carve, ellipsoid, ring, rod, turned } from './distance.ts';
import { drapery } from './drapery.ts';
import { type SceneMaker } from './scene.ts';
import { block, modelled, type Solid } from './solid.ts';
import { bottleGlass, cloth, plaster, wood } from './surfaces.ts';

type Triple = readonly [number, number, number];

/** A hand cast to the wrist, standing on its base, fingers up. */
function hand(x0: number, z0: number, seed: number): Solid {
  const fingers: readonly (readonly [Triple, Triple, Triple, number])[] = [
    [[-0.026, 0.135, 0], [-0.036, 0.168, -0.006], [-0.037, 0.19, -0.02], 0.0082],
    [[-0.009, 0.14, 0], [-0.012, 0.182, -0.004], [-0.011, 0.208, -0.016], 0.009],
    [[0.01, 0.137, 0], [0.013, 0.175, -0.008], [0.013, 0.197, -0.024], 0.0086],
    [[0.027, 0.125, 0], [0.035, 0.155, -0.01], [0.034, 0.17, -0.024], 0.0075],
  ];
  const c = Math.cos(0.5);
  const s = Math.sin(0.5);
  return modelled(
    [x0 - 0.09, 0, z0 - 0.09],
    [x0 + 0.09, 0.225, z0 + 0.09],
    plaster(seed),
    (wx, y, wz) => {
      const x = (wx - x0) * c - (wz - z0) * s;
      const z = (wx - x0) * s + (wz - z0) * c;
      let d = blend(
        ellipsoid(x, y - 0.112, z, 0.038, 0.043, 0.018),
        rod(x, y, z, [0, 0.02, 0.004], [0, 0.08, 0.002], 0.025, 0.022),
        0.035,
      );
      for (const [a, b, e, r] of fingers) {
        d = blend(
          d,
          Math.min(rod(x, y, z, a, b, r * 1.08, r), rod(x, y, z, b, e, r, r * 0.82)),
          0.009,
        );
      }
      const thumb = Math.min(
        rod(x, y, z, [-0.03, 0.085, -0.006], [-0.056, 0.118, -0.016], 0.012, 0.0105),
        rod(x, y, z, [-0.056, 0.118, -0.016], [-0.06, 0.145, -0.024], 0.0105, 0.008),
      );
      d = blend(d, thumb, 0.016);
      return Math.min(d, box(x, y - 0.014, z, 0.06, 0.014, 0.045, 0.006));
    },
    0.85,
  );
}

/** A whelk: a row of balls along a shrinking spiral, with ribs. */
function whelk(
  x0: number,
  y0: number,
  z0: number,
  size: number,
  turn: number,
  seed: number,
): Solid {
  const whorls: (readonly [number, number, number, number])[] = [];
  for (let k = 0; k < 30; k++) {
    const a = k * 0.64;
    const r = Math.exp(-k * 0.086);
    whorls.push([
      size * 0.36 * r * Math.cos(a),
      size * (0.9 - 1.2 * r) * 0.9,
      size * 0.36 * r * Math.sin(a),
      size * 0.36 * r,
    ]);
  }
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const reach = size * 1.15;
  return modelled(
    [x0 - reach, Math.max(0, y0 - reach), z0 - reach],
    [x0 + reach, y0 + reach, z0 + reach],
    plaster(seed, 0.62),
    (wx, wy, wz) => {
      // Lying on its side.
      const px = wx - x0;
      const pz = wz - z0;
      const y = px * c - pz * s;
      const z = px * s + pz * c;
      const x = wy - y0;
      let d = Infinity;
      for (const [a, b, e, r] of whorls) d = blend(d, ball(x - a, y - b, z - e, r), r * 0.35);
      const around = Math.atan2(z, x);
      d = carve(
        d,
        ellipsoid(
          x + size * 0.12,
          y + size * 0.62,
          z + size * 0.3,
          size * 0.13,
          size * 0.42,
          size * 0.16,
        ),
        size * 0.06,
      );
      return d + size * 0.008 * Math.sin(around * 16 + y * (30 / size) * 0.2);
    },
    0.6,
  );
}

/** A scallop leaning on what is behind it. */
function scallop(
  x0: number,
  y0: number,
  z0: number,
  size: number,
  lean: number,
  seed: number,
): Solid {
  const c = Math.cos(lean);
  const s = Math.sin(lean);
  return modelled(
    [x0 - size * 1.1, 0, z0 - size],
    [x0 + size * 1.1, y0 + size * 1.3, z0 + size],
    plaster(seed, 0.72),
    (wx, wy, wz) => {
      const x = wx - x0;
      const y = (wy - y0) * c + (wz - z0) * s;
      const z = -(wy - y0) * s + (wz - z0) * c;
      const r = Math.hypot(x, y + size * 0.9);
      const a = Math.atan2(x, y + size * 0.9);
      const ribs =
        0.02 * size * Math.cos(a * 30) * Math.min(1, r / size) * (Math.abs(a) < 0.62 ? 1 : 0.2);
      const outer =
        ellipsoid(x, y, z, size, size * 0.92, size * 0.3) -
        ribs -
        0.006 * size * Math.sin((r * 40) / size);
      const shell = Math.max(outer, z - size * 0.02);
      const ears = box(
        x,
        y + size * 0.86,
        z + size * 0.01,
        size * 0.4,
        size * 0.12,
        size * 0.03,
        size * 0.02,
      );
      return blend(shell, ears, size * 0.08);
    },
    0.55,
  );
}

export const stillLife: SceneMaker = (seed) => {
  const table = wood(seed + 1, 0.3, 'x', 70, 0.03);
  const bottle = turned([
    [0.041, 0.002],
    [0.044, 0.012],
    [0.044, 0.15],
    [0.041, 0.172],
    [0.029, 0.195],
    [0.0165, 0.214],
    [0.0145, 0.24],
    [0.0145, 0.282],
    [0.0185, 0.285],
    [0.0185, 0.297],
    [0.0125, 0.299],
  ]);
  const urn = turned([
    [0.045, 0],
    [0.047, 0.012],
    [0.022, 0.022],
    [0.017, 0.036],
    [0.03, 0.05],
    [0.056, 0.085],
    [0.067, 0.13],
    [0.061, 0.165],
    [0.046, 0.184],
    [0.052, 0.193],
    [0.066, 0.198],
    [0.066, 0.204],
    [0.05, 0.206],
    [0.04, 0.19],
  ]);
  const solids: Solid[] = [
    block([-0.62, -0.05, -0.26], [0.62, 0, 0.34], table),
    drapery(
      {
        left: -1,
        right: 1,
        bottom: -0.35,
        top: 1,
        depth: 0.46,
        foldWidth: 0.17,
        foldDepth: 0.055,
        gather: 0.5,
      },
      cloth(seed + 2, 0.3),
      seed,
    ),
    modelled([-0.235, 0, -0.02], [-0.135, 0.305, 0.085], bottleGlass(), (x, y, z) =>
      bottle(x + 0.185, y, z - 0.032),
    ),
    modelled(
      [0.1, 0, 0.06],
      [0.24, 0.21, 0.2],
      plaster(seed + 3),
      (x, y, z) => {
        const d = urn(x - 0.17, y, z - 0.13);
        const a = Math.atan2(z - 0.13, x - 0.17);
        return y > 0.05 && y < 0.14 ? d + 0.0016 * Math.cos(a * 18) : d;
      },
      0.8,
    ),
    hand(0.0, 0.02, seed + 4),
    whelk(0.115, 0.041, -0.1, 0.085, 0.5, seed + 5),
    scallop(-0.1, 0.055, -0.1, 0.058, 0.42, seed + 6),
    modelled(
      [0.2, 0, -0.08],
      [0.3, 0.075, 0.03],
      plaster(seed + 7, 0.55),
      (x, y, z) =>
        ball(x - 0.25, y - 0.036, z + 0.03, 0.036) +
        0.0012 * Math.cos(22 * Math.atan2(z + 0.03, x - 0.25)),
      0.8,
    ),
    modelled([-0.36, 0, -0.1], [-0.24, 0.035, 0.05], cloth(seed + 8, 0.2), (x, y, z) =>
      box(x + 0.3, y - 0.016, z + 0.02, 0.055, 0.015, 0.07, 0.003),
    ),
    modelled([-0.05, 0, -0.19], [0.07, 0.03, -0.09], plaster(seed + 9, 0.5), (x, y, z) =>
      ring(x - 0.01, y - 0.012, z + 0.14, 0.035, 0.011),
    ),
  ];
  return {
    solids,
    source: {
      kind: 'window',
      centre: [-1.3, 0.8, -0.35],
      across: [0.1, 0, -0.26],
      up: [0.1, 0.36, 0.05],
      facing: [0.83, -0.46, 0.32],
      radiance: 22,
    },
    sky: (_x, dy) => 0.1 + 0.06 * dy,
    seen: () => 0.03,
    camera: { position: [0.03, 0.33, -1.32], target: [0, 0.1, 0.05], tangent: 0.185, rise: 0.1 },
    ambient: 0.03,
    exposure: 1.5,
    haze: Infinity,
    hazeRadiance: 0,
    softness: 0.9,
  };
};
