/** Shells and a starfish, as a studio keeps them in a drawer. */
import { blend, box, carve, ellipsoid, rod } from './distance.ts';
import { modelled, type Solid } from './solid.ts';
import { plaster } from './surfaces.ts';

/** A turret shell lying on its side: a tapering profile whose whorls climb with the angle. */
export function turret(x0: number, z0: number, long: number, turn: number, seed: number): Solid {
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
export function starfish(x0: number, z0: number, size: number, turn: number, seed: number): Solid {
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
export function scallop(
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
