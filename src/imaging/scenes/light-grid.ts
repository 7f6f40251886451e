/**
 * The light in a scene, found on a coarse grid of picture points and spread from there.
 *
 * Light changes slowly over a surface, so it is sampled at every third picture element only,
 * each point taking its own few samples out of sixteen turns of one sequence; averaging over
 * 4 x 4 neighbours on the same surface gives all of them. Light from the surroundings changes
 * more slowly still, and is averaged once more.
 *
 * References
 * - Keller, A. and Heidrich, W. (2001). Interleaved sampling. Proc. EGWR 2001, 269-276 (from memory).
 */
import { type Arrival, type Lighting } from './light.ts';
import { type Scene } from './scene.ts';
import { type Ray } from './solid.ts';
import { spreadReflection } from './spread-reflection.ts';
import { agreement, averageOver, placeStride, type SurfaceGrid } from './surface-average.ts';
import { type Tracer } from './tracer.ts';
import { type View } from './view.ts';

/** Picture elements per grid cell, each way. */
export const cell = 3;
/** Samples of the source, and of the surroundings, per grid point; the latter are averaged twice. */
const samples = 4;
const aroundSamples = 2;
/** Samples of each for a point that gathers for itself: it is one of four in its picture element. */
const ownSamples = 3;
/** Grid rows beyond those asked for that the averages reach: 2, then 4, then 1 to read between. */
const margin = 7;
/** Kept for each point: level, vx, vy, vz, mirror, around. */
const stride = 6;

export interface GridLight extends Arrival {
  /** Radiance of a spread reflection. */
  mirror: number;
}

export interface GridFrame {
  readonly columns: number;
  readonly rows: number;
  readonly scene: Scene;
  readonly tracer: Tracer;
  readonly view: View;
  readonly lighting: Lighting;
}

export interface LightGrid {
  /** Light at a surface point seen at picture element (column, row). */
  readonly at: (
    column: number,
    row: number,
    x: number,
    y: number,
    z: number,
    normal: Float64Array,
    distance: number,
    ray: Ray,
    body: number,
    /** Which part of the sequence is used by a point that gathers for itself. */
    turn: number,
    out: GridLight,
  ) => void;
}

/** Light that a point gathers for itself, with its reflection where it has a spread one. */
function gather(
  frame: GridFrame,
  body: number,
  x: number,
  y: number,
  z: number,
  n: Float64Array,
  distance: number,
  ray: Ray,
  turn: number,
  count: number,
  aroundCount: number,
  out: GridLight,
): void {
  const lift = 2e-4 + distance * 2e-4;
  const px = x + n[0] * lift;
  const py = y + n[1] * lift;
  const pz = z + n[2] * lift;
  frame.lighting.arriving(px, py, pz, n[0], n[1], n[2], turn, count, aroundCount, out);
  const { surface } = frame.scene.solids[body];
  out.mirror =
    surface.shine && surface.spread
      ? spreadReflection(frame.lighting, surface, px, py, pz, n, ray, turn, count)
      : 0;
}

/** The light of grid rows that picture rows [first, last) need. */
export function makeLightGrid(frame: GridFrame, first: number, last: number): LightGrid {
  const { columns, rows, scene, tracer, view } = frame;
  const across = Math.ceil(columns / cell) + 1;
  const top = Math.floor(first / cell) - margin;
  const down = Math.ceil(last / cell) + margin + 1 - top;
  const grid: SurfaceGrid = {
    across,
    down,
    places: new Float32Array(across * down * placeStride),
    bodies: new Int16Array(across * down).fill(-1),
  };
  const raw = new Float32Array(across * down * stride);
  const ray: Ray = { ox: 0, oy: 0, oz: 0, dx: 0, dy: 0, dz: 1 };
  const n = new Float64Array(3);
  const light: GridLight = { level: 0, around: 0, vx: 0, vy: 0, vz: 0, mirror: 0 };

  for (let gy = 0; gy < down; gy++) {
    for (let gx = 0; gx < across; gx++) {
      view.aim((gx * cell + 0.5) / columns, ((gy + top) * cell + 0.5) / rows, ray);
      const body = tracer.first(ray, 0.01, 3000);
      const g = gy * across + gx;
      grid.bodies[g] = body;
      if (body < 0) continue;
      const t = tracer.distance();
      const x = ray.ox + ray.dx * t;
      const y = ray.oy + ray.dy * t;
      const z = ray.oz + ray.dz * t;
      scene.solids[body].normal(x, y, z, n);
      const turn = (gx & 3) + 4 * ((gy + top) & 3);
      gather(frame, body, x, y, z, n, t, ray, turn, samples, aroundSamples, light);
      grid.places.set([x, y, z, n[0], n[1], n[2], t], g * placeStride);
      const { level, vx, vy, vz, mirror, around } = light;
      raw.set([level, vx, vy, vz, mirror, around], g * stride);
    }
  }

  const reach = view.element(rows) * cell * 1.5;
  const once = averageOver(grid, raw, stride, [0, stride], 1, reach);
  const smooth = averageOver(grid, once, stride, [stride - 1, stride], 2, reach);
  const sum = new Float64Array(stride);

  return {
    at(column, row, x, y, z, normal, distance, seenAlong, body, turn, out) {
      const fx = column / cell;
      const fy = row / cell - top;
      const ix = Math.floor(fx);
      const iy = Math.floor(fy);
      let total = 0;
      sum.fill(0);
      for (let k = 0; k < 4; k++) {
        const hx = ix + (k & 1);
        const hy = iy + (k >> 1);
        if (hx < 0 || hx >= across) continue;
        const h = hy * across + hx;
        if (grid.bodies[h] < 0) continue;
        const near = (1 - Math.abs(fx - hx)) * (1 - Math.abs(fy - hy)) + 1e-3;
        const w =
          near * agreement(grid, h, x, y, z, normal[0], normal[1], normal[2], reach * distance);
        if (w <= 0) continue;
        total += w;
        for (let c = 0; c < stride; c++) sum[c] += w * smooth[h * stride + c];
      }
      // Too thin or too curved for the grid: this point gathers for itself.
      if (total <= 0.004) {
        const own = ownSamples;
        gather(frame, body, x, y, z, normal, distance, seenAlong, turn, own, own, out);
        return;
      }
      out.level = sum[0] / total;
      out.vx = sum[1] / total;
      out.vy = sum[2] / total;
      out.vz = sum[3] / total;
      out.mirror = sum[4] / total;
      out.around = sum[5] / total;
    },
  };
}
