/**
 * Seeded noise over space, for the grain of wood, stone, cloth and plaster in the scenes.
 *
 * Value noise: random values at the corners of a unit lattice, found by way of a table of
 * shuffled indices and blended with the quintic curve 6t^5 - 15t^4 + 10t^3, whose first and
 * second derivatives vanish at the corners.
 *
 * References
 * - Perlin, K. (2002). Improving noise. ACM Trans. Graphics 21 (3), 681-682 (the quintic and
 *   the shuffled indices; from memory).
 */

/** A number from 0 to below 1 that depends on three integers and a seed alone. */
export function lattice(ix: number, iy: number, iz: number, seed: number): number {
  let h = Math.imul(ix, 0x8da6b343) ^ Math.imul(iy, 0xd8163841) ^ Math.imul(iz, 0xcb1ab31f) ^ seed;
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
  return ((h ^ (h >>> 16)) >>> 0) / 4294967296;
}

/** Entries of the tables; a field repeats after as many units along an axis, far beyond any body. */
const entries = 4096;

/** Values from -1 to 1, and an order of their indices, written twice so that sums need no wrapping. */
const values = Float64Array.from({ length: entries }, (_, i) => 2 * lattice(i, 0, 0, 0x51ed) - 1);
const order = shuffled();

function shuffled(): Uint16Array {
  const out = new Uint16Array(2 * entries);
  for (let i = 0; i < entries; i++) out[i] = i;
  for (let i = entries - 1; i > 0; i--) {
    const j = Math.floor(lattice(i, 1, 0, 0x51ed) * (i + 1));
    [out[i], out[j]] = [out[j], out[i]];
  }
  out.copyWithin(entries, 0, entries);
  return out;
}

/** Noise from -1 to 1 with features of about one unit. */
export function noise(x: number, y: number, z: number, seed: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const iz = Math.floor(z);
  const fx = x - ix;
  const fy = y - iy;
  const fz = z - iz;
  const u = fx * fx * fx * (fx * (fx * 6 - 15) + 10);
  const v = fy * fy * fy * (fy * (fy * 6 - 15) + 10);
  const w = fz * fz * fz * (fz * (fz * 6 - 15) + 10);
  const wrap = entries - 1;
  const x0 = order[(ix + seed) & wrap];
  const x1 = order[(ix + 1 + seed) & wrap];
  const y0 = iy & wrap;
  const y1 = (iy + 1) & wrap;
  const z0 = iz & wrap;
  const z1 = (iz + 1) & wrap;
  const x0y0 = order[x0 + y0];
  const x1y0 = order[x1 + y0];
  const x0y1 = order[x0 + y1];
  const x1y1 = order[x1 + y1];
  const a = values[order[x0y0 + z0]];
  const b = values[order[x0y1 + z0]];
  const c = values[order[x0y0 + z1]];
  const d = values[order[x0y1 + z1]];
  const lowerFront = a + (values[order[x1y0 + z0]] - a) * u;
  const upperFront = b + (values[order[x1y1 + z0]] - b) * u;
  const lowerBack = c + (values[order[x1y0 + z1]] - c) * u;
  const upperBack = d + (values[order[x1y1 + z1]] - d) * u;
  const front = lowerFront + (upperFront - lowerFront) * v;
  const back = lowerBack + (upperBack - lowerBack) * v;
  return front + (back - front) * w;
}

/**
 * Sum of octaves of noise, each twice as fine and half as strong, from -1 to 1.
 *
 * @param footprint Width of a picture element in the same units as x: octaves finer than
 *   two elements are left out, so that distant surfaces turn smooth instead of glittering.
 */
export function grain(
  x: number,
  y: number,
  z: number,
  seed: number,
  octaves: number,
  footprint: number,
): number {
  let sum = 0;
  let strength = 0.5;
  let scale = 1;
  for (let k = 0; k < octaves; k++) {
    const kept = 2 - 2 * footprint * scale;
    if (kept <= 0) break;
    const octave = noise(x * scale, y * scale, z * scale, seed + k * 1013);
    sum += strength * Math.min(1, kept) * octave;
    strength *= 0.5;
    scale *= 2.03;
  }
  return sum;
}
