/** Two-masted vessels: hull, masts, spars, furled sails, rigging. */
import { grain } from './noise.ts';
import { modelled, strut, type Solid, type Surface } from './solid.ts';

type Triple = readonly [number, number, number];

/** Tarred planks with a pale strake below the rail. */
const planking = (seed: number, base: number): Surface => ({
  mean: 0.12,
  albedo: (x, y, z, f) => {
    const strake = y > base + 0.15 && y < base + 0.45 ? 0.5 : 0.1;
    const seam = (y * 3.5) % 1 < 0.12 && f < 0.12 ? 0.7 : 1;
    return strake * seam * (1 + 0.6 * grain(x * 1.5, y * 5, z * 1.5, seed, 4, f * 3));
  },
});
const spar: Surface = { mean: 0.3, albedo: () => 0.3 };
const rope: Surface = { mean: 0.1, albedo: () => 0.09 };
const canvas: Surface = {
  mean: 0.6,
  albedo: (x, y, z, f) => 0.55 + 0.2 * grain(x * 3, y * 6, z * 3, 5, 4, f * 5),
  relief: (x, y, z, f) => 0.06 * grain(x * 2.5, y * 5, z * 2.5, 9, 3, f * 5),
};

export interface Mooring {
  /** Middle of the hull at the water line. */
  readonly x: number;
  readonly z: number;
  /** Length of the hull, metres. */
  readonly length: number;
  /** Where the bow points: radians from +x towards +z. */
  readonly heading: number;
  /** Height of the mastheads. */
  readonly tall: number;
  readonly seed: number;
}

export function vessel({ x: cx, z: cz, length, heading, tall, seed }: Mooring): Solid[] {
  const c = Math.cos(heading);
  const s = Math.sin(heading);
  const half = length / 2;
  const beam = length * 0.14;
  const board = length * 0.085;
  /** From the vessel's own directions (forward, up, to port) to the scene's. */
  const at = (a: number, y: number, b: number): Triple => [
    cx + a * c - b * s,
    y,
    cz + a * s + b * c,
  ];
  const reach = half * 1.05;
  const hull = modelled(
    [cx - reach, -0.4, cz - reach],
    [cx + reach, board * 2.4, cz + reach],
    planking(seed, board * 0.75),
    (wx, y, wz) => {
      const a = (wx - cx) * c + (wz - cz) * s;
      const b = -(wx - cx) * s + (wz - cz) * c;
      const q = a / half;
      const sheer = board * (1 + 0.55 * q * q + 0.25 * q);
      const full = q > 0 ? 1 - q ** 3 : 1 - 0.55 * q ** 4;
      const wide =
        beam * Math.max(0, full) * (0.72 + 0.28 * Math.min(1, (y + 0.4) / (sheer + 0.4)));
      const side = (Math.abs(b) - wide) * 0.75;
      const ends = (Math.abs(a) - half) * 0.8;
      // Open to the deck inside the rail.
      const inside = Math.max(wide - 0.18 - Math.abs(b), sheer - board * 0.35 - y) * -1;
      return Math.max(
        side,
        ends,
        y - sheer,
        -Math.max(inside, -1) > 0 && y > sheer - board * 0.35 ? -0.02 : -1,
      );
    },
    0.8,
  );
  const masts: Solid[] = [];
  const places = [0.22, -0.2];
  places.forEach((p, k) => {
    const a = p * length;
    const high = tall * (k === 0 ? 0.94 : 1);
    const rake = -0.02 * high;
    masts.push(
      strut(at(a, 0, 0), at(a + rake * 0.6, high * 0.62, 0), 0.19, spar),
      strut(at(a + rake * 0.55, high * 0.55, 0), at(a + rake, high, 0), 0.1, spar),
      // Boom, gaff and the sail furled between them.
      strut(at(a - 0.3, board * 2.1, 0), at(a - length * 0.33, board * 2.4, 0), 0.11, spar),
      strut(at(a - 0.2, high * 0.5, 0), at(a - length * 0.22, high * 0.62, 0), 0.08, spar),
      strut(at(a - 0.5, board * 2.45, 0), at(a - length * 0.3, board * 2.7, 0), 0.3, canvas),
      // Crosstrees and a yard.
      strut(at(a, high * 0.6, -1.1), at(a, high * 0.6, 1.1), 0.07, spar),
    );
    for (const port of [-1, 1]) {
      for (let n = 0; n < 4; n++) {
        masts.push(
          strut(
            at(a - 0.9 + n * 0.6, board * 1.15, port * beam * 0.95),
            at(a + rake * 0.5, high * 0.59, port * 0.12),
            0.026,
            rope,
          ),
        );
      }
      masts.push(
        strut(at(a - 0.2, board, port * beam * 0.9), at(a + rake, high * 0.97, 0), 0.02, rope),
      );
      // Ratlines.
      for (let n = 1; n < 11; n++) {
        const t = n / 13;
        masts.push(
          strut(
            at(
              a + (-0.9 * (1 - t) + rake * 0.5 * t),
              board * 1.15 * (1 - t) + high * 0.59 * t,
              port * (beam * 0.95 * (1 - t) + 0.12 * t),
            ),
            at(
              a + (0.9 * (1 - t) + rake * 0.5 * t),
              board * 1.15 * (1 - t) + high * 0.59 * t,
              port * (beam * 0.95 * (1 - t) + 0.12 * t),
            ),
            0.014,
            rope,
          ),
        );
      }
    }
  });
  const [fore, main] = places.map((p) => p * length);
  const bow = half * 0.98;
  masts.push(
    strut(at(bow - 0.8, board * 1.75, 0), at(bow + length * 0.22, board * 2.9, 0), 0.14, spar),
    strut(
      at(bow + length * 0.21, board * 2.85, 0),
      at(fore - 0.02 * tall, tall * 0.93, 0),
      0.022,
      rope,
    ),
    strut(at(bow + length * 0.1, board * 2.3, 0), at(fore, tall * 0.57, 0), 0.026, rope),
    strut(
      at(fore - 0.02 * tall, tall * 0.92, 0),
      at(main - 0.02 * tall, tall * 0.98, 0),
      0.02,
      rope,
    ),
    strut(at(main - 0.02 * tall, tall * 0.97, 0), at(-half, board * 1.4, 0), 0.02, rope),
    modelled(
      [cx - 1.6 - Math.abs(c) * 0.5, board * 0.8, cz - 1.6],
      [cx + 1.6 + Math.abs(c) * 0.5, board * 1.75, cz + 1.6],
      spar,
      (wx, y, wz) => {
        const a = (wx - cx) * c + (wz - cz) * s;
        const b = -(wx - cx) * s + (wz - cz) * c;
        return (
          Math.max(Math.abs(a) - 1.3, Math.abs(y - board) - 0.8, Math.abs(b) - beam * 0.4) * 0.9
        );
      },
    ),
  );
  return [hull, ...masts];
}
