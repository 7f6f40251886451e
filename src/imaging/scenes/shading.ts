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

/** Shades one point of the picture; (column, row) may lie between elements. */
function makeShader(frame: GridFrame, grid: LightGrid) {
  const { scene, tracer, view, lighting, columns, rows } = frame;
  const visible = makeVisible(scene.solids, view, columns, rows);
  const ray: Ray = { ox: 0, oy: 0, oz: 0, dx: 0, dy: 0, dz: 1 };
  const mirror: Ray = { ox: 0, oy: 0, oz: 0, dx: 0, dy: 0, dz: 1 };
  const n = new Float64Array(3);
  const light: GridLight = { level: 0, around: 0, vx: 0, vy: 0, vz: 0, mirror: 0 };
  const element = view.element(rows);
  const met = { body: -1, distance: 0, facing: 0 };

  function shade(column: number, row: number): number {
    view.aim((column + 0.5) / columns, (row + 0.5) / rows, ray);
    const body = tracer.first(ray, 0.01, 3000, visible(column, row));
    met.body = body;
    if (body < 0) {
      met.distance = 3000;
      return (scene.seen ?? scene.sky)(ray.dx, ray.dy, ray.dz);
    }
    const t = tracer.distance();
    met.distance = t;
    const solid = scene.solids[body];
    const surface = solid.surface;
    const x = ray.ox + ray.dx * t;
    const y = ray.oy + ray.dy * t;
    const z = ray.oz + ray.dz * t;
    solid.normal(x, y, z, n);
    const footprint = t * element;
    grid.at(column, row, x, y, z, n, t, ray, body, light);
    let level = light.level + light.around;
    let bx = n[0];
    let by = n[1];
    let bz = n[2];
    if (surface.relief) {
      const e = Math.max(footprint * 0.5, 2e-5);
      const h = surface.relief(x, y, z, footprint);
      const gx = (surface.relief(x + e, y, z, footprint) - h) / e;
      const gy = (surface.relief(x, y + e, z, footprint) - h) / e;
      const gz = (surface.relief(x, y, z + e, footprint) - h) / e;
      const along = gx * n[0] + gy * n[1] + gz * n[2];
      bx -= gx - along * n[0];
      by -= gy - along * n[1];
      bz -= gz - along * n[2];
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
  return { shade, met, normal: n };
}

/** Radiance for rows [first, last) of the worked frame, with edges smoothed. */
export function radianceRows(frame: GridFrame, first: number, last: number): Float32Array {
  const { columns } = frame;
  const grid = makeLightGrid(frame, first - 1, last + 1);
  const { shade, met, normal } = makeShader(frame, grid);
  const height = last - first + 2;
  const radiance = new Float32Array(columns * height);
  const bodies = new Int16Array(columns * height);
  const distances = new Float32Array(columns * height);
  const normals = new Float32Array(columns * height * 3);
  for (let r = 0; r < height; r++) {
    for (let c = 0; c < columns; c++) {
      const k = r * columns + c;
      radiance[k] = shade(c, first - 1 + r);
      bodies[k] = met.body;
      distances[k] = met.distance;
      if (met.body >= 0) normals.set(normal, k * 3);
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
  const out = new Float32Array(columns * (last - first));
  for (let r = 1; r < height - 1; r++) {
    for (let c = 0; c < columns; c++) {
      const k = r * columns + c;
      const edge =
        (c > 0 && differs(k, k - 1)) ||
        (c < columns - 1 && differs(k, k + 1)) ||
        differs(k, k - columns) ||
        differs(k, k + columns);
      let value = radiance[k];
      if (edge) {
        let sum = 0;
        for (const [dx, dy] of within) sum += Math.min(3, shade(c + dx, first - 1 + r + dy));
        value = sum / 4;
      }
      out[(r - 1) * columns + c] = value;
    }
  }
  return out;
}
