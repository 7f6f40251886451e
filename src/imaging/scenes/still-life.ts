/** Shells, a bottle and plaster casts on a table before a cloth: a studio with one window. */
import { ball, blend, box, ellipsoid, rod, turned } from './distance.ts';
import { drapery } from './drapery.ts';
import { type SceneMaker } from './scene.ts';
import { scallop, starfish, turret } from './shells.ts';
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
