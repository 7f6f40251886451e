/**
 * Radiance of each picture element: what it meets, the light there, the finest texture, mirror
 * reflections, haze; and four points instead of one where an edge runs through.
 */
import { makeLightGrid, type GridFrame, type GridLight, type LightGrid } from './light-grid.ts';
import { type Ray } from './solid.ts';
import { makeVisible } from './visible.ts';

/** Rounds of a quarter element for edges: four points, none in line with another. */
const within = [
  [-0.125, -0.375],
  [0.375, -0.125],
  [-0.375, 0.125],
  [0.125, 0.375],
] as const;

/** What a ray of the camera has met: a body, or -1, and how far away. */
interface Met {
  body: number;
  distance: number;
}

/** Meets and shades points of the picture; (column, row) may lie between elements. */
function makeShader(frame: GridFrame, grid: LightGrid) {
  const { scene, tracer, view, lighting, columns, rows } = frame;
  const visible = makeVisible(scene.solids, view, columns, rows);
  const ray: Ray = { ox: 0, oy: 0, oz: 0, dx: 0, dy: 0, dz: 1 };
  const mirror: Ray = { ox: 0, oy: 0, oz: 0, dx: 0, dy: 0, dz: 1 };
  const n = new Float64Array(3);
  const light: GridLight = { level: 0, around: 0, vx: 0, vy: 0, vz: 0, mirror: 0 };
  const element = view.element(rows);

  /** What is met at a point of the picture; its normal is left in `n`. */
  function meet(column: number, row: number, met: Met): void {
    view.aim((column + 0.5) / columns, (row + 0.5) / rows, ray);
    const body = tracer.first(ray, 0.01, 3000, visible(column, row));
    met.body = body;
    met.distance = 3000;
    if (body < 0) return;
    const t = tracer.distance();
    met.distance = t;
    scene.solids[body].normal(ray.ox + ray.dx * t, ray.oy + ray.dy * t, ray.oz + ray.dz * t, n);
  }

  /** Radiance of what has been met there; its normal is taken from `n`. */
  function shade(column: number, row: number, { body, distance: t }: Met, turn: number): number {
    view.aim((column + 0.5) / columns, (row + 0.5) / rows, ray);
    if (body < 0) return (scene.seen ?? scene.sky)(ray.dx, ray.dy, ray.dz);
    const surface = scene.solids[body].surface;
    const x = ray.ox + ray.dx * t;
    const y = ray.oy + ray.dy * t;
    const z = ray.oz + ray.dz * t;
    const footprint = t * element;
    grid.at(column, row, x, y, z, n, t, ray, body, turn, light);
    let level = light.level + light.around;
    let bx = n[0];
    let by = n[1];
    let bz = n[2];
    if (surface.relief) {
      const e = Math.max(footprint * 0.5, 2e-5);
      const h = surface.relief(x, y, z, footprint);
      // Two directions in the surface: only slopes along it turn the normal.
      const flat = Math.abs(n[1]) < 0.9;
      const al = 1 / Math.sqrt(flat ? n[0] * n[0] + n[2] * n[2] : n[1] * n[1] + n[2] * n[2]);
      const ax = flat ? n[2] * al : 0;
      const ay = flat ? 0 : -n[2] * al;
      const az = flat ? -n[0] * al : n[1] * al;
      const cx = n[1] * az - n[2] * ay;
      const cy = n[2] * ax - n[0] * az;
      const cz = n[0] * ay - n[1] * ax;
      const ga = (surface.relief(x + e * ax, y + e * ay, z + e * az, footprint) - h) / e;
      const gc = (surface.relief(x + e * cx, y + e * cy, z + e * cz, footprint) - h) / e;
      bx -= ga * ax + gc * cx;
      by -= ga * ay + gc * cy;
      bz -= ga * az + gc * cz;
      const l = 1 / Math.sqrt(bx * bx + by * by + bz * bz);
      bx *= l;
      by *= l;
      bz *= l;
      const change = (bx - n[0]) * light.vx + (by - n[1]) * light.vy + (bz - n[2]) * light.vz;
      level = Math.max(level * 0.12, level + change);
    }
    let radiance = surface.albedo(x, y, z, footprint) * level;
    if (surface.shine) {
      const facing = Math.max(0, -(ray.dx * bx + ray.dy * by + ray.dz * bz));
      const away = (1 - facing) ** 5;
      const share = surface.shine + (1 - surface.shine) * away;
      let seen = light.mirror;
      if (!surface.spread) {
        const c = 2 * (ray.dx * bx + ray.dy * by + ray.dz * bz);
        mirror.dx = ray.dx - c * bx;
        mirror.dy = ray.dy - c * by;
        mirror.dz = ray.dz - c * bz;
        const lift = 2e-4 + t * 2e-4;
        mirror.ox = x + n[0] * lift;
        mirror.oy = y + n[1] * lift;
        mirror.oz = z + n[2] * lift;
        seen = Math.min(6, lighting.along(mirror, 1e-4, 5, true));
      }
      radiance = radiance * (1 - share) + share * seen;
    }
    if (scene.haze < Infinity) {
      const kept = Math.exp(-t / scene.haze);
      radiance = radiance * kept + scene.hazeRadiance * (1 - kept);
    }
    return radiance;
  }
  return { meet, shade, normal: n };
}

/** Radiance for rows [first, last) of the worked frame, with edges smoothed. */
export function radianceRows(frame: GridFrame, first: number, last: number): Float32Array {
  const { columns } = frame;
  const { meet, shade, normal } = makeShader(frame, makeLightGrid(frame, first - 1, last + 1));
  const height = last - first + 2;
  const bodies = new Int16Array(columns * height);
  const distances = new Float64Array(columns * height);
  const normals = new Float64Array(columns * height * 3);
  const met: Met = { body: -1, distance: 0 };
  for (let r = 0; r < height; r++) {
    for (let c = 0; c < columns; c++) {
      const k = r * columns + c;
      meet(c, first - 1 + r, met);
      bodies[k] = met.body;
      distances[k] = met.distance;
      for (let axis = 0; axis < 3; axis++) normals[k * 3 + axis] = normal[axis];
    }
  }
  const differs = (a: number, b: number): boolean => {
    if (bodies[a] !== bodies[b]) return true;
    if (bodies[a] < 0) return false;
    const turn =
      normals[a * 3] * normals[b * 3] +
      normals[a * 3 + 1] * normals[b * 3 + 1] +
      normals[a * 3 + 2] * normals[b * 3 + 2];
    if (turn < 0.8) return true;
    const da = distances[a];
    const db = distances[b];
    return Math.abs(da - db) > 0.02 * Math.min(da, db) && turn < 0.999;
  };
  /** Mean of four points, where one would leave steps. */
  const smoothed = (column: number, row: number): number => {
    let sum = 0;
    within.forEach(([dx, dy], turn) => {
      meet(column + dx, row + dy, met);
      sum += Math.min(3, shade(column + dx, row + dy, met, turn));
    });
    return sum / within.length;
  };
  const plain = (column: number, row: number, k: number): number => {
    met.body = bodies[k];
    met.distance = distances[k];
    for (let axis = 0; axis < 3; axis++) normal[axis] = normals[k * 3 + axis];
    return shade(column, row, met, (column & 3) + 4 * (row & 3));
  };
  const out = new Float32Array(columns * (last - first));
  for (let r = 1; r < height - 1; r++) {
    for (let c = 0; c < columns; c++) {
      const k = r * columns + c;
      const row = first - 1 + r;
      const edge =
        (c > 0 && differs(k, k - 1)) ||
        (c < columns - 1 && differs(k, k + 1)) ||
        differs(k, k - columns) ||
        differs(k, k + columns);
      out[(r - 1) * columns + c] = edge ? smoothed(c, row) : plain(c, row, k);
    }
  }
  return out;
}
