/**
 * Seeded noise over space, for the grain of wood, stone, cloth and plaster in the scenes.
 *
 * Value noise: random values at the corners of a unit lattice, blended with the quintic
 * curve 6t^5 - 15t^4 + 10t^3, whose first and second derivatives vanish at the corners.
 *
 * References
 * - Perlin, K. (2002). Improving noise. ACM Trans. Graphics 21 (3), 681-682 (the quintic; from memory).
 */

/** A number from 0 to below 1 that depends on three integers and a seed alone. */
export function lattice(ix: number, iy: number, iz: number, seed: number): number {
  let h = Math.imul(ix, 0x8da6b343) ^ Math.imul(iy, 0xd8163841) ^ Math.imul(iz, 0xcb1ab31f) ^ seed;
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
  return ((h ^ (h >>> 16)) >>> 0) / 4294967296;
}

const fade = (t: number): number => t * t * t * (t * (t * 6 - 15) + 10);

/** Noise from -1 to 1 with features of about one unit. */
export function noise(x: number, y: number, z: number, seed: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const iz = Math.floor(z);
  const u = fade(x - ix);
  const v = fade(y - iy);
  const w = fade(z - iz);
  const a = lattice(ix, iy, iz, seed);
  const b = lattice(ix + 1, iy, iz, seed);
  const c = lattice(ix, iy + 1, iz, seed);
  const d = lattice(ix + 1, iy + 1, iz, seed);
  const e = lattice(ix, iy, iz + 1, seed);
  const f = lattice(ix + 1, iy, iz + 1, seed);
  const g = lattice(ix, iy + 1, iz + 1, seed);
  const h = lattice(ix + 1, iy + 1, iz + 1, seed);
  const front = a + (b - a) * u + (c - a) * v + (a - b - c + d) * u * v;
  const back = e + (f - e) * u + (g - e) * v + (e - f - g + h) * u * v;
  return 2 * (front + (back - front) * w) - 1;
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
