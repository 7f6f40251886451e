/**
 * The light in a scene, found on a coarse grid of picture points and spread from there.
 *
 * Light changes slowly over a surface, so it is sampled at every third picture element only,
 * each point taking its own few samples out of sixteen turns of one sequence; averaging over
 * 4 x 4 neighbours on the same surface gives all of them. Neighbours count by how well their
 * plane and their normal agree, so that light does not leak over an edge.
 *
 * References
 * - Keller, A. and Heidrich, W. (2001). Interleaved sampling. Proc. EGWR 2001, 269-276 (from memory).
 * - Kopf, J. et al. (2007). Joint bilateral upsampling. ACM Trans. Graphics 26 (3), 96 (from memory).
 */
import { type Arrival, type Lighting } from './light.ts';
import { type Scene } from './scene.ts';
import { type Ray } from './solid.ts';
import { type Tracer } from './tracer.ts';
import { type View } from './view.ts';

/** Picture elements per grid cell, each way. */
export const cell = 3;
/** Samples of the source, and of the surroundings, per grid point. */
const samples = 4;
/** Numbers kept per grid point: level, vx, vy, vz, mirror, x, y, z, nx, ny, nz, distance. */
const stride = 12;

export interface GridLight extends Arrival {
  /** Radiance of a spread reflection. */
  mirror: number;
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
    out: GridLight,
  ) => void;
}

export interface GridFrame {
  readonly columns: number;
  readonly rows: number;
  readonly scene: Scene;
  readonly tracer: Tracer;
  readonly view: View;
  readonly lighting: Lighting;
}

/** Radiance of a spread or watery reflection, the mean of a few mirror rays. */
export function spreadReflection(
  frame: GridFrame,
  body: number,
  x: number,
  y: number,
  z: number,
  n: Float64Array,
  ray: Ray,
  turn: number,
  count: number,
): number {
  const surface = frame.scene.solids[body].surface;
  const spread = surface.spread ?? 0;
  const mirror: Ray = { ox: x, oy: y, oz: z, dx: 0, dy: 0, dz: 0 };
  let sum = 0;
  for (let s = 0; s < count; s++) {
    const k = turn * count + s;
    const a = ((0.5 + k * 0.7548776662466927) % 1) - 0.5;
    const b = ((0.5 + k * 0.5698402909980532) % 1) - 0.5;
    // A surface that ripples evenly: slopes uniform over the spread.
    let mx = n[0] + a * spread * (surface.water ? 0.35 : 1);
    let my = n[1] + (surface.water ? 0 : b * spread);
    let mz = n[2] + (surface.water ? b * spread : a * b * 4 * spread);
    const l = 1 / Math.sqrt(mx * mx + my * my + mz * mz);
    mx *= l;
    my *= l;
    mz *= l;
    const c = 2 * (ray.dx * mx + ray.dy * my + ray.dz * mz);
    mirror.dx = ray.dx - c * mx;
    mirror.dy = ray.dy - c * my;
    mirror.dz = ray.dz - c * mz;
    if (mirror.dx * n[0] + mirror.dy * n[1] + mirror.dz * n[2] <= 0) continue;
    sum += Math.min(4, frame.lighting.along(mirror, 1e-4, k, true));
  }
  return sum / count;
}

/** The light of grid rows that picture rows [first, last) need. */
export function makeLightGrid(frame: GridFrame, first: number, last: number): LightGrid {
  const { columns, rows, scene, tracer, view, lighting } = frame;
  const across = Math.ceil(columns / cell) + 1;
  const top = Math.floor(first / cell) - 3;
  const bottom = Math.ceil(last / cell) + 4;
  const down = bottom - top;
  const raw = new Float32Array(across * down * stride);
  const ids = new Int16Array(across * down).fill(-1);
  const ray: Ray = { ox: 0, oy: 0, oz: 0, dx: 0, dy: 0, dz: 1 };
  const n = new Float64Array(3);
  const light: GridLight = { level: 0, vx: 0, vy: 0, vz: 0, mirror: 0 };

  for (let gy = top; gy < bottom; gy++) {
    for (let gx = 0; gx < across; gx++) {
      view.aim((gx * cell + 0.5) / columns, (gy * cell + 0.5) / rows, ray);
      const body = tracer.first(ray, 0.01, 3000);
      const g = (gy - top) * across + gx;
      ids[g] = body;
      if (body < 0) continue;
      const t = tracer.distance();
      const x = ray.ox + ray.dx * t;
      const y = ray.oy + ray.dy * t;
      const z = ray.oz + ray.dz * t;
      scene.solids[body].normal(x, y, z, n);
      const lift = 2e-4 + t * 2e-4;
      const px = x + n[0] * lift;
      const py = y + n[1] * lift;
      const pz = z + n[2] * lift;
      const turn = (gx & 3) + 4 * (gy & 3);
      lighting.arriving(px, py, pz, n[0], n[1], n[2], turn, samples, light);
      const surface = scene.solids[body].surface;
      const mirror =
        surface.shine && surface.spread
          ? spreadReflection(frame, body, px, py, pz, n, ray, turn, samples)
          : 0;
      raw.set(
        [light.level, light.vx, light.vy, light.vz, mirror, x, y, z, n[0], n[1], n[2], t],
        g * stride,
      );
    }
  }

  /** How far the plane and normal of a grid point agree with a surface point, 0 to 1. */
  const agreement = (
    q: number,
    x: number,
    y: number,
    z: number,
    nx: number,
    ny: number,
    nz: number,
    reach: number,
  ): number => {
    const turn = raw[q + 8] * nx + raw[q + 9] * ny + raw[q + 10] * nz;
    if (turn <= 0.3) return 0;
    const off = ((raw[q + 5] - x) * nx + (raw[q + 6] - y) * ny + (raw[q + 7] - z) * nz) / reach;
    if (off > 3 || off < -3) return 0;
    const t2 = turn * turn;
    const t4 = t2 * t2;
    return t4 * t4 * Math.exp(-off * off);
  };

  const element = view.element(rows);
  const smooth = new Float32Array(across * down * 5);
  for (let gy = 2; gy < down - 2; gy++) {
    for (let gx = 0; gx < across; gx++) {
      const g = gy * across + gx;
      if (ids[g] < 0) continue;
      const p = g * stride;
      const reach = raw[p + 11] * element * cell * 1.5;
      let total = 0;
      const sum = [0, 0, 0, 0, 0];
      for (let dy = -2; dy <= 2; dy++) {
        for (let dx = -2; dx <= 2; dx++) {
          const hx = gx + dx;
          if (hx < 0 || hx >= across) continue;
          const h = g + dy * across + dx;
          if (ids[h] < 0) continue;
          const q = h * stride;
          const edge = (dx === -2 || dx === 2 ? 0.5 : 1) * (dy === -2 || dy === 2 ? 0.5 : 1);
          const w =
            edge *
            agreement(
              q,
              raw[p + 5],
              raw[p + 6],
              raw[p + 7],
              raw[p + 8],
              raw[p + 9],
              raw[p + 10],
              reach,
            );
          if (w <= 0) continue;
          total += w;
          for (let c = 0; c < 5; c++) sum[c] += w * raw[q + c];
        }
      }
      for (let c = 0; c < 5; c++) smooth[g * 5 + c] = sum[c] / total;
    }
  }

  return {
    at(column, row, x, y, z, normal, distance, seenAlong, body, out) {
      const fx = column / cell;
      const fy = row / cell - top;
      const ix = Math.floor(fx);
      const iy = Math.floor(fy);
      const reach = distance * element * cell * 1.5;
      let total = 0;
      let level = 0;
      let vx = 0;
      let vy = 0;
      let vz = 0;
      let mirror = 0;
      for (let k = 0; k < 4; k++) {
        const hx = ix + (k & 1);
        const hy = iy + (k >> 1);
        if (hx < 0 || hx >= across) continue;
        const h = hy * across + hx;
        if (ids[h] < 0) continue;
        const near = (1 - Math.abs(fx - hx)) * (1 - Math.abs(fy - hy)) + 1e-3;
        const w = near * agreement(h * stride, x, y, z, normal[0], normal[1], normal[2], reach);
        if (w <= 0) continue;
        const q = h * 5;
        total += w;
        level += w * smooth[q];
        vx += w * smooth[q + 1];
        vy += w * smooth[q + 2];
        vz += w * smooth[q + 3];
        mirror += w * smooth[q + 4];
      }
      if (total > 0.004) {
        out.level = level / total;
        out.vx = vx / total;
        out.vy = vy / total;
        out.vz = vz / total;
        out.mirror = mirror / total;
        return;
      }
      // Too thin or too curved for the grid: this point gathers for itself.
      const lift = 2e-4 + distance * 2e-4;
      const px = x + normal[0] * lift;
      const py = y + normal[1] * lift;
      const pz = z + normal[2] * lift;
      lighting.arriving(px, py, pz, normal[0], normal[1], normal[2], 3, 6, out);
      const surface = scene.solids[body].surface;
      out.mirror =
        surface.shine && surface.spread
          ? spreadReflection(frame, body, px, py, pz, normal, seenAlong, 3, 6)
          : 0;
    },
  };
}
