/** A plaster head with closed eyes on a stand: made of simple forms, nobody's likeness. */
import { blend, box, carve, ellipsoid, rod } from './distance.ts';
import { drapery } from './drapery.ts';
import { lattice } from './noise.ts';
import { type SceneMaker } from './scene.ts';
import { block, modelled, type Solid } from './solid.ts';
import { cloth, plaster, wood } from './surfaces.ts';

/** Distance to the head about the middle of the skull; the face looks to -z. */
function head(px: number, y: number, z: number): number {
  const x = Math.abs(px);
  let d = ellipsoid(x, y - 0.022, z - 0.012, 0.076, 0.096, 0.095);
  // Cheek and jaw down to the chin.
  d = blend(d, ellipsoid(x, y + 0.05, z + 0.022, 0.06, 0.07, 0.062), 0.05);
  d = blend(d, ellipsoid(x, y + 0.105, z + 0.052, 0.026, 0.02, 0.024), 0.035);
  d = blend(d, ellipsoid(x - 0.043, y + 0.03, z + 0.058, 0.02, 0.017, 0.016), 0.03);
  // Brow over the hollow of the eye, and the closed lid.
  d = carve(d, ellipsoid(x - 0.034, y - 0.004, z + 0.096, 0.023, 0.014, 0.019), 0.02);
  d = blend(d, rod(x, y, z, [0.012, 0.019, -0.09], [0.056, 0.017, -0.07], 0.008, 0.006), 0.016);
  d = blend(d, ellipsoid(x - 0.034, y - 0.0, z + 0.074, 0.0155, 0.0105, 0.0125), 0.004);
  d = carve(d, rod(x, y, z, [0.021, -0.0035, -0.0872], [0.047, -0.0045, -0.0835], 0.0012), 0.004);
  // Nose.
  d = blend(d, rod(x, y, z, [0, 0.016, -0.091], [0, -0.028, -0.113], 0.0075, 0.0105), 0.014);
  d = blend(d, ellipsoid(x - 0.0105, y + 0.034, z + 0.1, 0.008, 0.0065, 0.009), 0.008);
  d = carve(d, ellipsoid(x - 0.0068, y + 0.0395, z + 0.106, 0.0034, 0.0026, 0.0044), 0.003);
  // Lips with the line between them.
  d = blend(d, rod(x, y, z, [0, -0.0625, -0.0935], [0.02, -0.066, -0.082], 0.0056, 0.0028), 0.007);
  d = blend(d, rod(x, y, z, [0, -0.0735, -0.0915], [0.017, -0.071, -0.083], 0.0064, 0.003), 0.007);
  d = carve(d, rod(x, y, z, [0, -0.0678, -0.0995], [0.023, -0.0685, -0.0835], 0.0011), 0.003);
  // Ear.
  const ear = carve(
    ellipsoid(x - 0.077, y + 0.004, z - 0.012, 0.009, 0.03, 0.018),
    ellipsoid(x - 0.086, y + 0.002, z - 0.008, 0.006, 0.017, 0.009),
    0.006,
  );
  d = blend(d, ear, 0.012);
  // Hair as cast: a cap with strokes.
  const cap = Math.max(
    ellipsoid(x, y - 0.03, z - 0.018, 0.083, 0.099, 0.1),
    -(y - 0.07 + 0.75 * (z + 0.06) + 0.25 * x),
  );
  const strokes = 0.0016 * Math.sin(x * 260 + z * 190 + 3 * Math.sin(y * 50));
  d = blend(d, cap + strokes, 0.012);
  // Neck and the cut of the cast.
  d = blend(d, rod(x, y, z, [0, -0.09, 0.02], [0, -0.2, 0.035], 0.05, 0.056), 0.03);
  const chest = Math.max(ellipsoid(x, y + 0.275, z - 0.03, 0.15, 0.085, 0.08), -(y + 0.29));
  return blend(d, chest, 0.05);
}

/** Leaves laid about the foot of the stand. */
function wreath(y0: number, seed: number): Solid {
  const leaves: number[][] = [];
  for (let k = 0; k < 64; k++) {
    const a = (k / 64) * 2 * Math.PI;
    const r = 0.158 + 0.022 * (lattice(k, 1, 0, seed) - 0.5) * 2;
    leaves.push([
      r * Math.cos(a),
      0.014 + 0.02 * lattice(k, 2, 0, seed),
      r * Math.sin(a),
      a + 1.2 + lattice(k, 3, 0, seed),
    ]);
  }
  return modelled(
    [-0.23, y0, -0.22],
    [0.23, y0 + 0.06, 0.22],
    { mean: 0.16, albedo: () => 0.16, shine: 0.03, spread: 0.3 },
    (x, y, z) => {
      let d = Infinity;
      for (const [lx, ly, lz, a] of leaves) {
        const dx = x - lx;
        const dz = z - lz;
        if (dx * dx + dz * dz > 0.004) {
          d = Math.min(d, Math.hypot(dx, dz) - 0.04);
          continue;
        }
        const c = Math.cos(a);
        const s = Math.sin(a);
        d = Math.min(
          d,
          ellipsoid(dx * c + dz * s, y - y0 - ly, -dx * s + dz * c, 0.034, 0.005, 0.012),
        );
      }
      return d;
    },
    0.7,
  );
}

export const plasterHead: SceneMaker = (seed) => {
  const c = Math.cos(0.32);
  const s = Math.sin(0.32);
  const ground = 0.4;
  return {
    solids: [
      drapery(
        {
          left: -0.8,
          right: 0.8,
          bottom: -0.4,
          top: 1,
          depth: 0.42,
          foldWidth: 0.2,
          foldDepth: 0.045,
          gather: -0.25,
        },
        cloth(seed + 1, 0.09, 900),
        seed,
      ),
      block([-0.7, -0.1, -0.4], [0.7, 0, 0.4], cloth(seed + 2, 0.16, 700)),
      modelled(
        [-0.16, 0, -0.13],
        [0.16, 0.1, 0.13],
        wood(seed + 3, 0.16, 'x', 50, 0.04),
        (x, y, z) =>
          Math.min(
            box(x, y - 0.018, z, 0.15, 0.018, 0.12, 0.004),
            box(x, y - 0.055, z, 0.105, 0.045, 0.085, 0.006),
            box(x, y - 0.093, z, 0.125, 0.008, 0.1, 0.003),
          ),
      ),
      modelled(
        [-0.2, 0.099, -0.17],
        [0.2, 0.56, 0.17],
        plaster(seed + 4, 0.82),
        (x, y, z) => head(x * c - z * s, y - ground, x * s + z * c),
        0.75,
      ),
      wreath(0, seed + 5),
    ],
    source: {
      kind: 'window',
      centre: [-1.0, 1.25, -0.75],
      across: [0.18, 0, -0.22],
      up: [0.1, 0.25, 0.1],
      facing: [0.6, -0.6, 0.5],
      radiance: 26,
    },
    sky: (_x, dy) => 0.05 + 0.04 * dy,
    seen: () => 0.02,
    camera: { position: [0, 0.33, -1.75], target: [0, 0.285, 0], tangent: 0.182 },
    ambient: 0.02,
    exposure: 1.5,
    haze: Infinity,
    hazeRadiance: 0,
    softness: 0.9,
  };
};
