/** Houses and warehouses: walls with recessed windows in rows, and pitched roofs. */
import { box } from './distance.ts';
import { lattice } from './noise.ts';
import { modelled, type Solid, type Surface } from './solid.ts';

export interface Building {
  /** Ground plan and height of the eaves, metres. */
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
  /** Height of the ridge above the eaves; it runs along the longer side unless said. */
  readonly ridge: number;
  readonly ridgeAlong: 'x' | 'z';
  /** Faces with windows: `z` for the face towards -z, `x` for both faces across x. */
  readonly front: 'z' | 'x';
  /** Spacing of windows along the face and of floors, metres; size of a window. */
  readonly bay: number;
  readonly storey: number;
  readonly window: readonly [number, number];
  readonly wall: Surface;
  readonly roof: Surface;
  readonly seed: number;
}

/** Depth of a window below the wall's face. */
const recess = 0.22;

export function building(b: Building): Solid[] {
  const { min, max, front } = b;
  const cx = (min[0] + max[0]) / 2;
  const cy = (min[1] + max[1]) / 2;
  const cz = (min[2] + max[2]) / 2;
  const hx = (max[0] - min[0]) / 2;
  const hy = (max[1] - min[1]) / 2;
  const hz = (max[2] - min[2]) / 2;
  const origin = front === 'z' ? min[0] : min[2];
  const span = front === 'z' ? 2 * hx : 2 * hz;
  const bays = Math.max(1, Math.floor(span / b.bay));
  const margin = (span - bays * b.bay) / 2;
  const floors = Math.max(1, Math.floor((2 * hy - 0.2) / b.storey));

  /** Distance to the opening of the bay that a point of the face belongs to. */
  const opening = (u: number, y: number): number => {
    const bay = Math.min(bays - 1, Math.max(0, Math.floor((u - origin - margin) / b.bay)));
    const floor = Math.min(floors - 1, Math.max(0, Math.floor((y - min[1]) / b.storey)));
    const door = floor === 0 && lattice(bay, 1, 4, b.seed) < 0.34;
    const mu = origin + margin + (bay + 0.5) * b.bay;
    const my = min[1] + (floor + 0.55) * b.storey;
    const dy = door ? y - min[1] - 1.1 : y - my;
    return Math.max(
      Math.abs(u - mu) - b.window[0] / 2,
      Math.abs(dy) - (door ? 1.15 : b.window[1] / 2),
    );
  };
  const face = (x: number, z: number): number =>
    front === 'z' ? z - min[2] : hx - Math.abs(x - cx);
  const wall = modelled(min, max, { ...b.wall, albedo, relief }, (x, y, z) => {
    const u = front === 'z' ? x : z;
    const d = box(x - cx, y - cy, z - cz, hx, hy, hz);
    const hole = Math.max(opening(u, y), face(x, z) - recess);
    return Math.max(d, -hole);
  });
  function albedo(x: number, y: number, z: number, f: number): number {
    const u = front === 'z' ? x : z;
    const open = opening(u, y);
    if (open < 0.03 && face(x, z) > recess * 0.6) {
      // Panes behind a painted frame: one upright bar, two across.
      const bay = Math.floor((u - origin - margin) / b.bay);
      const mu = u - origin - margin - (bay + 0.5) * b.bay;
      const floor = Math.floor((y - min[1]) / b.storey);
      const my = y - min[1] - (floor + 0.55) * b.storey;
      const bar = 0.03 + f * 0.3;
      if (open > -0.07 || Math.abs(mu) < bar) return 0.45;
      if (Math.abs(my) < bar || Math.abs(Math.abs(my) - b.window[1] * 0.25) < bar) return 0.45;
      return (
        0.03 + 0.12 * lattice(bay, floor, 8, b.seed) * lattice(Math.floor(mu * 4), floor, 9, b.seed)
      );
    }
    // Damp at the foot, sills that have run.
    const foot = 0.75 + 0.25 * Math.min(1, (y - min[1]) / 1.4);
    return b.wall.albedo(x, y, z, f) * foot;
  }
  function relief(x: number, y: number, z: number, f: number): number {
    return face(x, z) > recess * 0.6 ? 0 : (b.wall.relief?.(x, y, z, f) ?? 0);
  }
  const eaves = 0.35;
  const across = b.ridgeAlong === 'x' ? hz : hx;
  const slope = Math.atan2(b.ridge, across + eaves);
  const cs = Math.cos(slope);
  const sn = Math.sin(slope);
  const roof = modelled(
    [min[0] - eaves, max[1] - 0.05, min[2] - eaves],
    [max[0] + eaves, max[1] + b.ridge + 0.1, max[2] + eaves],
    b.roof,
    (x, y, z) => {
      const q = Math.abs(b.ridgeAlong === 'x' ? z - cz : x - cx);
      const along =
        Math.abs(b.ridgeAlong === 'x' ? x - cx : z - cz) -
        (b.ridgeAlong === 'x' ? hx : hz) -
        eaves * 0.6;
      const above = (y - max[1]) * cs - (across + eaves - q) * sn;
      return Math.max(above, along, max[1] - 0.05 - y);
    },
  );
  return [wall, roof];
}

/** A chimney stack with pots. */
export function chimney(x: number, y: number, z: number, tall: number, surface: Surface): Solid {
  return modelled(
    [x - 0.6, y, z - 0.6],
    [x + 0.6, y + tall + 0.9, z + 0.6],
    surface,
    (wx, wy, wz) => {
      const stack = box(wx - x, wy - y - tall / 2, wz - z, 0.5, tall / 2, 0.4);
      const collar = box(wx - x, wy - y - tall + 0.15, wz - z, 0.58, 0.12, 0.48);
      const pot = Math.hypot(Math.abs(wx - x) - 0.24, wz - z) - 0.14;
      const pots = Math.max(pot, wy - y - tall - 0.85, y + tall - 0.1 - wy);
      return Math.min(stack, collar, pots);
    },
  );
}
