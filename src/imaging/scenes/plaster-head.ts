/** A plaster head with closed eyes on a stand: made of simple forms, nobody's likeness. */
import { blend, box, carve, ellipsoid, rod } from './distance.ts';
import { drapery } from './drapery.ts';
import { type SceneMaker } from './scene.ts';
import { block, modelled } from './solid.ts';
import { cloth, plaster, wood } from './surfaces.ts';

/** Ends of the rods that the face is modelled with, in the order of their use. */
const browIn = [0.012, 0.019, -0.09] as const;
const browOut = [0.056, 0.017, -0.07] as const;
const lidIn = [0.021, -0.0035, -0.0872] as const;
const lidOut = [0.047, -0.0045, -0.0835] as const;
const noseTop = [0, 0.016, -0.091] as const;
const noseTip = [0, -0.028, -0.113] as const;
const upperLip = [0, -0.0625, -0.0935] as const;
const upperLipEnd = [0.02, -0.066, -0.082] as const;
const lowerLip = [0, -0.0735, -0.0915] as const;
const lowerLipEnd = [0.017, -0.071, -0.083] as const;
const mouth = [0, -0.0678, -0.0995] as const;
const mouthEnd = [0.023, -0.0685, -0.0835] as const;
const neckTop = [0, -0.09, 0.02] as const;
const neckFoot = [0, -0.2, 0.035] as const;

/** Brow, closed lid, nose and lips, worked into the skull at distance d. */
function face(skull: number, x: number, y: number, z: number): number {
  let d = carve(skull, ellipsoid(x - 0.034, y - 0.004, z + 0.096, 0.023, 0.014, 0.019), 0.02);
  d = blend(d, rod(x, y, z, browIn, browOut, 0.0075, 0.0055), 0.018);
  d = blend(d, ellipsoid(x - 0.034, y - 0.0, z + 0.071, 0.0145, 0.0088, 0.0115), 0.007);
  d = carve(d, rod(x, y, z, lidIn, lidOut, 0.0011), 0.004);
  d = blend(d, rod(x, y, z, noseTop, noseTip, 0.0072, 0.0098), 0.015);
  d = blend(d, ellipsoid(x - 0.0105, y + 0.034, z + 0.1, 0.0076, 0.0065, 0.009), 0.008);
  d = carve(d, ellipsoid(x - 0.0068, y + 0.0395, z + 0.106, 0.0034, 0.0026, 0.0044), 0.003);
  d = blend(d, rod(x, y, z, upperLip, upperLipEnd, 0.0054, 0.0026), 0.008);
  d = blend(d, rod(x, y, z, lowerLip, lowerLipEnd, 0.006, 0.0028), 0.008);
  return carve(d, rod(x, y, z, mouth, mouthEnd, 0.0011), 0.003);
}

function ear(x: number, y: number, z: number): number {
  return carve(
    ellipsoid(x - 0.077, y + 0.004, z - 0.012, 0.009, 0.03, 0.018),
    ellipsoid(x - 0.086, y + 0.002, z - 0.008, 0.006, 0.017, 0.009),
    0.006,
  );
}

/** Hair as cast: a cap with strokes. */
function hair(x: number, y: number, z: number): number {
  const cap = Math.max(
    ellipsoid(x, y - 0.03, z - 0.018, 0.083, 0.099, 0.1),
    -(y - 0.07 + 0.75 * (z + 0.06) + 0.25 * x),
  );
  const locks = Math.sin(x * 330 + z * 240 + 4 * Math.sin(y * 55));
  return cap + 0.0009 * locks + 0.0006 * Math.sin(y * 420 + 3 * Math.sin(x * 110 + z * 70));
}

/**
 * Distance to the head about the middle of the skull; the face looks to -z. Each part is asked
 * only where it can be the nearest: none stands out of the skull by more than 35 mm.
 */
function head(px: number, y: number, z: number): number {
  const x = Math.abs(px);
  let d = ellipsoid(x, y - 0.022, z - 0.012, 0.076, 0.096, 0.095);
  // Cheek and jaw down to the chin.
  d = blend(d, ellipsoid(x, y + 0.05, z + 0.022, 0.06, 0.07, 0.062), 0.05);
  if (d > 0.06) d -= 0.035;
  else {
    if (z < -0.01) {
      d = blend(d, ellipsoid(x, y + 0.105, z + 0.052, 0.026, 0.02, 0.024), 0.035);
      d = blend(d, ellipsoid(x - 0.043, y + 0.03, z + 0.058, 0.02, 0.017, 0.016), 0.03);
      d = face(d, x, y, z);
    }
    if (x > 0.045) d = blend(d, ear(x, y, z), 0.012);
    if (y > -0.09) d = blend(d, hair(x, y, z), 0.012);
  }
  if (y > -0.03) return d;
  // Neck and the cut of the cast.
  d = blend(d, rod(x, y, z, neckTop, neckFoot, 0.044, 0.049), 0.03);
  const chest = Math.max(ellipsoid(x, y + 0.262, z - 0.03, 0.158, 0.085, 0.08), -(y + 0.29));
  return blend(d, chest, 0.035);
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
        cloth(seed + 1, 0.09, 450),
        seed,
      ),
      block([-0.7, -0.1, -0.4], [0.7, 0, 0.4], cloth(seed + 2, 0.16, 420)),
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
