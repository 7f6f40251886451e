/** The inner basin of Fennel Quay from the customs steps, and the quay's edge in two views. */
import { blend, ring, turned } from './distance.ts';
import { building, chimney } from './building.ts';
import { grain, lattice } from './noise.ts';
import { type Scene, type SceneMaker } from './scene.ts';
import { block, floor, modelled, strut, type Solid, type Surface } from './solid.ts';
import { cobbles, iron, masonry, slates, water, wood } from './surfaces.ts';
import { vessel } from './vessel.ts';

/** A white sky, as plates that see only blue record it: little darker overhead, clouds lost. */
const seen =
  (seed: number) =>
  (dx: number, dy: number, dz: number): number =>
    1.05 - 0.3 * Math.max(0, dy) + 0.12 * grain(dx * 3, dy * 9, dz * 3, seed, 4, 0.001);

/** Iron bollard; its foot stands on y. */
function bollard(x: number, y: number, z: number, seed: number): Solid {
  const profile = turned([
    [0.24, 0],
    [0.24, 0.06],
    [0.17, 0.12],
    [0.15, 0.5],
    [0.17, 0.58],
    [0.24, 0.64],
    [0.25, 0.7],
    [0.2, 0.78],
    [0.1, 0.83],
  ]);
  return modelled(
    [x - 0.3, y, z - 0.3],
    [x + 0.3, y + 0.85, z + 0.3],
    iron(seed, 0.12),
    (wx, wy, wz) => profile(wx - x, wy - y, wz - z),
  );
}

/** A coil of rope lying on the quay. */
function coil(x: number, y: number, z: number, size: number): Solid {
  const surface = wood(41, 0.36, 'x', 20);
  return modelled(
    [x - size * 1.2, y, z - size * 1.2],
    [x + size * 1.2, y + size * 0.7, z + size * 1.2],
    surface,
    (wx, wy, wz) => {
      const px = wx - x;
      const pz = wz - z;
      let d = Infinity;
      const thick = size * 0.085;
      for (let k = 0; k < 4; k++) {
        for (let m = 0; m < 3; m++) {
          const tilt = 0.02 * size * Math.sin(k * 3 + m * 2 + Math.atan2(pz, px));
          d = Math.min(
            d,
            ring(
              px,
              wy - y - thick - k * thick * 1.7 - tilt,
              pz,
              size * (0.95 - m * 0.17 - k * 0.03),
              thick,
            ),
          );
        }
      }
      // The lay of the strands.
      return d + thick * 0.12 * Math.sin(Math.atan2(pz, px) * 46 + (wy - y) * 40);
    },
    0.7,
  );
}

function warehouses(seed: number): Solid[] {
  const roof = slates(seed + 11, 0.34, 0.4);
  const plan: readonly (readonly [number, number, number, number, 'x' | 'z'])[] = [
    [-46, -33, 11, 4.5, 'z'],
    [-33, -24, 8, 4, 'x'],
    [-24, -12, 12.5, 5, 'z'],
    [-12, -1, 9.5, 4.2, 'x'],
    [-1, 9, 13.5, 4.6, 'z'],
    [9, 22, 8.2, 3.8, 'x'],
    [22, 33, 11.5, 4.8, 'z'],
    [33, 50, 9, 4.2, 'x'],
  ];
  return plan.flatMap(([left, right, tall, ridge, along], k) => [
    ...building({
      min: [left, 2.2, 82 + (k % 3)],
      max: [right - 0.1, 2.2 + tall, 96],
      ridge,
      ridgeAlong: along,
      front: 'z',
      bay: 2.5 + (k % 3) * 0.4,
      storey: 2.9,
      window: k % 2 ? [1.1, 1.6] : [1.3, 1.7],
      wall: masonry(seed + 20 + k, 0.3 + (0.12 * ((k * 5) % 4)) / 3, 0.34, 0.03),
      roof,
      seed: seed + k,
    }),
    ...(k % 2
      ? [chimney(left + 3, 2.2 + tall + ridge * 0.5, 89, 3.4, masonry(seed + 3, 0.3, 0.2))]
      : []),
  ]);
}

/** Staves, and hoops of iron. */
const cask = (seed: number): Surface => {
  const oak = wood(seed, 0.3, 'y', 30);
  return {
    ...oak,
    albedo: (x, y, z, f) => {
      const q = Math.abs((y - 2.5) / 0.5);
      if (Math.abs(q - 0.55) < 0.08 || Math.abs(q - 0.93) < 0.06) return 0.07;
      const stave = Math.atan2(z - 3.65, x - 1.4) * 3.5;
      const gap = Math.abs(stave - Math.round(stave)) < 0.04 + f * 2 ? 0.35 : 1;
      return (
        oak.albedo(x, y, z, f) * gap * (0.75 + 0.5 * lattice(Math.round(stave - 0.5), 0, 0, seed))
      );
    },
  };
};

/** The far hill: a soft ridge, pale with distance. */
const hill: Solid = modelled(
  [-260, 0, 180],
  [260, 60, 300],
  {
    mean: 0.18,
    albedo: (x, y, z, f) => 0.2 + 0.1 * grain(x * 0.06, y * 0.1, z * 0.06, 8, 4, f * 0.06),
  },
  (x, y, z) => {
    const top =
      24 + 13 * Math.sin(x * 0.012 + 1) + 5 * Math.sin(x * 0.037) - ((z - 240) / 9) ** 2 * 0.3;
    return (y - top) * 0.6;
  },
);

function basin(seed: number): readonly Solid[] {
  const quay = masonry(seed + 1, 0.36, 0.42, 0.02);
  const setts = cobbles(seed + 2, 0.4, 0.24);
  return [
    floor(0, water()),
    hill,
    block([-60, 0, 78], [60, 2.2, 100], quay),
    // The near quay with its coping, the left arm of the basin and its wall.
    block([-9, -1, -6], [40, 2.0, 9], setts),
    block([-9.25, 1.72, -6], [-8.4, 2.04, 9.2], masonry(seed + 4, 0.46, 1.1, 0.02)),
    block([-9.25, 1.72, 8.6], [40, 2.04, 9.25], masonry(seed + 4, 0.46, 1.1, 0.02)),
    block([-9.2, -1, 8.9], [40, 1.73, 9.2], quay),
    block([-70, -1, 8], [-25, 2.1, 78], quay),
    ...warehouses(seed),
  ];
}

const outdoors = {
  source: {
    kind: 'sun',
    towards: [-0.66, 0.55, -0.512],
    radius: 0.05,
    irradiance: 4,
  },
  sky: (_dx: number, dy: number): number => (dy > -0.02 ? 0.3 : 0.05),
  ambient: 0.05,
  haze: 900,
  hazeRadiance: 0.9,
} as const;

export const harbour: SceneMaker = (seed): Scene => ({
  solids: [
    ...basin(seed),
    ...vessel({ x: -4, z: 33, length: 21, heading: 0.32, tall: 21, seed: seed + 30 }),
    ...vessel({ x: 15, z: 52, length: 24, heading: 2.9, tall: 25, seed: seed + 31 }),
    ...vessel({ x: -19, z: 58, length: 18, heading: 1.35, tall: 18, seed: seed + 32 }),
    bollard(-7.4, 2.02, 6.4, seed),
    bollard(-1.5, 2.02, 7.6, seed + 1),
    bollard(5.5, 2.02, 7.7, seed + 2),
    coil(1.9, 2.0, 7.0, 0.42),
    strut([-1.5, 2.45, 7.6], [-13.6, 2.6, 29.4], 0.03, { mean: 0.2, albedo: () => 0.2 }),
  ],
  ...outdoors,
  seen: seen(seed),
  camera: { position: [1, 5.7, -5], target: [-2.5, 5.2, 40], tangent: 0.36, rise: 0.14 },
  exposure: 1.6,
  softness: 0.9,
});

/** Distance of the standpoints, metres; the pictures are brought together on the vessel's masts. */
export const quayBase = 0.16;
export const quayAgree = 26;
/** Middle of the near bollard's top, metres. */
export const nearBollard = [-0.35, 2.82, 2.6] as const;

export const stereoQuay: SceneMaker = (seed): Scene => ({
  solids: [
    ...basin(seed),
    ...vessel({ x: -3, z: 26, length: 20, heading: 0.5, tall: 19, seed: seed + 30 }),
    ...vessel({ x: 12, z: 50, length: 22, heading: 2.8, tall: 22, seed: seed + 33 }),
    bollard(nearBollard[0], 2.0, nearBollard[2], seed),
    bollard(-2.6, 2.02, 7.3, seed + 1),
    bollard(2.9, 2.02, 7.4, seed + 2),
    coil(0.75, 2.0, 0.4, 0.42),
    modelled([0.75, 2, 3], [2.05, 3.05, 4.3], cask(seed + 5), (x, y, z) => {
      // A cask: staves bulging between two hoops.
      const r = Math.hypot(x - 1.4, z - 3.65);
      const q = (y - 2.5) / 0.5;
      const bulge = 0.4 + 0.12 * (1 - q * q);
      const hoop = Math.abs(Math.abs(q) - 0.55) < 0.08 ? 0.012 : 0;
      return blend(Math.max((r - bulge - hoop) * 0.9, Math.abs(y - 2.5) - 0.5), 9, 0.01);
    }),
  ],
  ...outdoors,
  seen: seen(seed),
  camera: {
    position: [0, 3.75, -3.6],
    target: [-0.1, 3.5, 20],
    tangent: 0.4,
    rise: 0.25,
    stereo: { base: quayBase, agree: quayAgree },
  },
  exposure: 1.55,
  softness: 1,
});
