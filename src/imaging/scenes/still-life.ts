/** Shells, a bottle and plaster casts on a table before a cloth: a studio with one window. */
import { ball, blend, box, carve, ellipsoid, rod, turned } from './distance.ts';
import { drapery } from './drapery.ts';
import { type SceneMaker } from './scene.ts';
import { block, modelled, type Solid } from './solid.ts';
import { bottleGlass, cloth, plaster } from './surfaces.ts';

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

/** A turret shell lying on its side: a tapering profile whose whorls climb with the angle. */
function turret(x0: number, z0: number, long: number, turn: number, seed: number): Solid {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const wide = long * 0.23;
  const pitch = long * 0.19;
  return modelled(
    [x0 - long * 0.7, 0, z0 - long * 0.7],
    [x0 + long * 0.7, wide * 2.3, z0 + long * 0.7],
    { ...plaster(seed, 0.55), shine: 0.03, spread: 0.25 },
    (wx, wy, wz) => {
      const a = (wx - x0) * c + (wz - z0) * s;
      const b = -(wx - x0) * s + (wz - z0) * c;
      // It lies on its own cone: the axis sinks towards the tip.
      const q = (a + long * 0.42) / long;
      const height = wy - wide * (1.02 - q * 0.98);
      const rho = Math.hypot(b, height);
      const angle = Math.atan2(height, b) / (2 * Math.PI);
      const cone = wide * (1 - q * 0.97);
      const whorl = (a / (pitch * (1.25 - 0.75 * q)) + angle + 40) % 1;
      const bulge = 1 - 0.2 * Math.abs(2 * whorl - 1) ** 3;
      const body = Math.max((rho - cone * bulge) * 0.8, -q * long, (q - 1.02) * long);
      const mouth = ellipsoid(
        a + long * 0.36,
        height + wide * 0.3,
        b + wide * 0.72,
        long * 0.09,
        wide * 0.5,
        wide * 0.42,
      );
      const lip = ellipsoid(
        a + long * 0.36,
        height + wide * 0.3,
        b + wide * 0.62,
        long * 0.115,
        wide * 0.62,
        wide * 0.42,
      );
      return (
        carve(blend(body, lip, wide * 0.2), mouth, wide * 0.12) + 0.0004 * Math.sin(whorl * 44)
      );
    },
    0.62,
  );
}

/** A dried starfish. */
function starfish(x0: number, z0: number, size: number, turn: number, seed: number): Solid {
  const arms = Array.from({ length: 5 }, (_, k) => {
    const a = turn + (k * 2 * Math.PI) / 5;
    return [size * Math.cos(a), size * (0.05 + 0.06 * (k % 2)), size * Math.sin(a)] as const;
  });
  return modelled(
    [x0 - size * 1.1, 0, z0 - size * 1.1],
    [x0 + size * 1.1, size * 0.5, z0 + size * 1.1],
    plaster(seed, 0.42),
    (wx, y, wz) => {
      const x = wx - x0;
      const z = wz - z0;
      let d = ellipsoid(x, y - size * 0.12, z, size * 0.26, size * 0.2, size * 0.26);
      for (const a of arms)
        d = blend(d, rod(x, y, z, [0, size * 0.14, 0], a, size * 0.19, size * 0.055), size * 0.1);
      return d + 0.0011 * Math.sin(x * 900) * Math.sin(z * 900) * Math.sin(y * 700);
    },
    0.7,
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
  const table = cloth(seed + 1, 0.3, 380);
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
        const deep = Math.max(0, 1 - ((y - 0.095) / 0.05) ** 2);
        return d + 0.0017 * deep * Math.cos(a * 18);
      },
      0.8,
    ),
    hand(0.0, 0.02, seed + 4),
    turret(0.115, -0.1, 0.15, 0.35, seed + 5),
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
    starfish(0.005, -0.145, 0.052, 0.5, seed + 9),
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
