/** The pilot's desk: globe, telescope, dividers, compass and a book on a spread chart. */
import { chart } from './chart.ts';
import { ball, blend, box, cylinder, ring, rod } from './distance.ts';
import { globe } from './globe.ts';
import { grain } from './noise.ts';
import { type SceneMaker } from './scene.ts';
import { block, modelled, type Solid, type Surface } from './solid.ts';
import { boards, bottleGlass, brass, cloth, wood } from './surfaces.ts';

/** Three draws, lying across the chart. */
function telescope(seed: number): Solid {
  const a = [-0.33, 0.026, -0.13] as const;
  const b = [-0.02, 0.02, -0.235] as const;
  const at = (t: number): readonly [number, number, number] => [
    a[0] + (b[0] - a[0]) * t,
    a[1] + (b[1] - a[1]) * t,
    a[2] + (b[2] - a[2]) * t,
  ];
  return modelled([-0.37, 0, -0.27], [0.01, 0.06, -0.09], brass(seed), (x, y, z) => {
    let d = rod(x, y, z, at(0.0), at(0.44), 0.0245);
    d = Math.min(d, rod(x, y, z, at(0.44), at(0.74), 0.019));
    d = Math.min(d, rod(x, y, z, at(0.74), at(1), 0.0145));
    for (const t of [0.02, 0.42, 0.46]) d = Math.min(d, rod(x, y, z, at(t), at(t + 0.015), 0.0262));
    for (const t of [0.72, 0.76]) d = Math.min(d, rod(x, y, z, at(t), at(t + 0.01), 0.0205));
    return Math.min(d, rod(x, y, z, at(0.98), at(1.02), 0.018, 0.012));
  });
}

const binding = (seed: number): Surface => ({
  mean: 0.12,
  shine: 0.03,
  spread: 0.25,
  relief: (x, y, z, f) => 0.0005 * grain(x * 300, y * 300, z * 300, seed, 3, f * 300),
  albedo: (x, y, z, f) => {
    const pages = y > 0.006 && y < 0.044 && (z < -0.068 || x > 0.372);
    if (pages)
      return (
        0.62 +
        0.2 * Math.sin(y * 4200) * Math.max(0, 1 - f * 1300) -
        0.15 * Math.abs(grain(x * 4, y * 900, z * 4, seed, 2, f * 500))
      );
    return 0.11 * (1 + 0.5 * grain(x * 30, y * 30, z * 30, seed, 4, f * 30));
  },
});

export const instrumentDesk: SceneMaker = (seed) => {
  const solids: Solid[] = [
    block([-0.9, -0.05, -0.45], [0.9, 0, 0.5], wood(seed, 0.17, 'x', 55, 0.04)),
    block([-0.9, -0.4, 0.75], [0.9, 1.2, 0.8], boards(seed + 1, 0.24, 0.21, 'x')),
    modelled(
      [-0.5, 0, -0.34],
      [0.5, 0.012, 0.3],
      chart(seed + 2),
      (x, y, z) => {
        const curl = (0.006 * Math.max(0, Math.abs(x) - 0.34)) / 0.1;
        return box(x, y - 0.0015 - curl, z + 0.02, 0.44, 0.0012, 0.3) * 0.9;
      },
      0.9,
    ),
    // The book: two boards and a block of leaves.
    modelled([0.18, 0, -0.09], [0.39, 0.06, 0.11], binding(seed + 3), (x, y, z) => {
      const covers = Math.min(
        box(x - 0.28, y - 0.0075, z - 0.005, 0.1, 0.003, 0.08),
        box(x - 0.28, y - 0.0475, z - 0.005, 0.1, 0.003, 0.08),
      );
      const leaves = box(x - 0.276, y - 0.027, z - 0.005, 0.094, 0.019, 0.074);
      const spine = Math.max(
        Math.hypot((x - 0.185) * 1.6, y - 0.0275) - 0.023,
        Math.abs(z - 0.005) - 0.08,
        x - 0.2,
      );
      return Math.min(covers, leaves, spine * 0.7);
    }),
    telescope(seed + 4),
    ...globe(-0.22, 0.22, 0.14, 0.115, seed + 5),
    // Dividers, open, points on the chart.
    modelled([-0.02, 0, -0.17], [0.15, 0.03, 0.03], brass(seed + 6), (x, y, z) => {
      const hinge = [0.12, 0.014, 0.0] as const;
      let d = cylinder(x - hinge[0], y - 0.014, z - hinge[2], 0.012, 0.006, 0.002);
      d = blend(d, rod(x, y, z, hinge, [0.02, 0.008, -0.075], 0.0065, 0.0035), 0.006);
      d = blend(d, rod(x, y, z, hinge, [0.066, 0.008, -0.112], 0.0065, 0.0035), 0.006);
      d = Math.min(d, rod(x, y, z, [0.02, 0.008, -0.075], [-0.012, 0.003, -0.099], 0.003, 0.0008));
      return Math.min(
        d,
        rod(x, y, z, [0.066, 0.008, -0.112], [0.049, 0.003, -0.147], 0.003, 0.0008),
      );
    }),
    // Boxed compass.
    modelled([0.2, 0, -0.27], [0.34, 0.05, -0.13], wood(seed + 7, 0.14, 'x', 80, 0.04), (x, y, z) =>
      Math.max(
        box(x - 0.27, y - 0.02, z + 0.2, 0.058, 0.02, 0.058, 0.003),
        -cylinder(x - 0.27, y - 0.042, z + 0.2, 0.046, 0.022),
      ),
    ),
    modelled(
      [0.22, 0.018, -0.25],
      [0.32, 0.045, -0.15],
      {
        mean: 0.6,
        albedo: (x, _y, z) => {
          const r = Math.hypot(x - 0.27, z + 0.2);
          const a = Math.atan2(z + 0.2, x - 0.27) / (Math.PI / 16);
          if (r > 0.036 && Math.abs(a - Math.round(a)) < 0.16) return 0.1;
          if (r < 0.034 && Math.abs(a / 4 - Math.round(a / 4)) < 0.3 * (1 - r / 0.034)) return 0.12;
          return 0.66;
        },
      },
      (x, y, z) => cylinder(x - 0.27, y - 0.022, z + 0.2, 0.0455, 0.003),
    ),
    modelled([0.21, 0.03, -0.26], [0.33, 0.05, -0.14], brass(seed + 8), (x, y, z) =>
      ring(x - 0.27, y - 0.041, z + 0.2, 0.046, 0.0035),
    ),
    // Ink bottle with a quill.
    modelled([0.07, 0, 0.14], [0.15, 0.08, 0.22], bottleGlass(), (x, y, z) =>
      Math.min(
        box(x - 0.11, y - 0.024, z - 0.18, 0.03, 0.024, 0.03, 0.008),
        cylinder(x - 0.11, y - 0.055, z - 0.18, 0.012, 0.012, 0.002),
      ),
    ),
    modelled([0.05, 0.05, 0.12], [0.3, 0.36, 0.24], cloth(seed + 9, 0.75, 900), (x, y, z) => {
      const t = Math.min(1, Math.max(0, (y - 0.05) / 0.28));
      const mx = 0.115 + 0.12 * t * t;
      const vane = t > 0.25 ? 0.017 * Math.sin((t - 0.25) * 4.1) : 0.0012;
      return (
        Math.max(Math.hypot(x - mx, (z - 0.18) * 3) - Math.max(0.0014, vane), 0.05 - y, y - 0.34) *
        0.5
      );
    }),
    modelled([-0.48, 0, -0.06], [-0.34, 0.13, 0.08], { ...brass(seed + 10) }, (x, y, z) => {
      // A bell-shaped weight.
      const r = Math.hypot(x + 0.41, z - 0.01);
      const q = y < 0.08 ? 0.045 - 0.25 * y : 0.012;
      return Math.max(Math.min((r - q) * 0.8, ball(x + 0.41, y - 0.1, z - 0.01, 0.018)), -y);
    }),
  ];
  const brassParts = [4, 6, 11, 14, 17];
  return {
    solids,
    parts: { book: [3], brass: brassParts },
    source: {
      kind: 'window',
      centre: [-1.25, 1.0, -0.1],
      across: [0.1, 0, -0.4],
      up: [0.12, 0.4, 0],
      facing: [0.8, -0.6, 0],
      radiance: 15,
    },
    sky: (_x, dy) => 0.08 + 0.05 * dy,
    seen: () => 0.05,
    camera: { position: [0.02, 0.62, -1.12], target: [0.0, 0.075, 0.02], tangent: 0.235 },
    ambient: 0.03,
    exposure: 1.5,
    haze: Infinity,
    hazeRadiance: 0,
    softness: 0.9,
  };
};
