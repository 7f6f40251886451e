/**
 * From a scene to rows of its picture: what each picture element meets, the light there, the
 * finest texture, haze, the lens, and the plate's response.
 *
 * The picture is worked out on a frame of at most {@link longest} elements and then enlarged to
 * the size asked for: the lenses of the time resolve no more on plates of this kind.
 * Every row depends on global coordinates alone, so that a strip equals the whole.
 */
import { makeLightGrid, type GridFrame, type GridLight, type LightGrid } from './light-grid.ts';
import { makeLighting } from './light.ts';
import { type Scene } from './scene.ts';
import { type Ray } from './solid.ts';
import { makeTracer } from './tracer.ts';
import { makeView, type Eye } from './view.ts';
import { makeVisible } from './visible.ts';

/** Elements along the longer side of the frame that is worked out. */
export const longest = 1500;
/** Reach of the lens blur in elements. */
const blurReach = 4;

export interface PictureSize {
  readonly width: number;
  readonly height: number;
  readonly eye?: Eye;
}

/** Rounds of a quarter element for edges: four points, none in line with another. */
const within = [
  [-0.125, -0.375],
  [0.375, -0.125],
  [-0.375, 0.125],
  [0.125, 0.375],
] as const;

interface Worked {
  readonly frame: GridFrame;
  readonly columns: number;
  readonly rows: number;
}

function frameOf(scene: Scene, size: PictureSize): Worked {
  const scale = Math.min(1, longest / Math.max(size.width, size.height));
  const columns = Math.max(1, Math.ceil(size.width * scale));
  const rows = Math.max(1, Math.ceil(size.height * scale));
  const tracer = makeTracer(scene.solids);
  const view = makeView(scene.camera, size.width / size.height, size.eye);
  const lighting = makeLighting(scene, tracer);
  return { frame: { columns, rows, scene, tracer, view, lighting }, columns, rows };
}

/** Shades one point of the picture; (column, row) may lie between elements. */
function makeShader({ frame, columns, rows }: Worked, grid: LightGrid) {
  const { scene, tracer, view, lighting } = frame;
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
function radianceRows(worked: Worked, first: number, last: number): Float32Array {
  const { columns, frame } = worked;
  const grid = makeLightGrid(frame, first - 1, last + 1);
  const { shade, met, normal } = makeShader(worked, grid);
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

/** Gaussian weights of deviation s, to {@link blurReach} elements either side. */
function bell(s: number): Float64Array {
  const w = Float64Array.from({ length: 2 * blurReach + 1 }, (_, k) =>
    Math.exp(-((k - blurReach) ** 2) / (2 * s * s)),
  );
  const sum = w.reduce((a, b) => a + b, 0);
  return w.map((v) => v / sum);
}

/** The plate's response: straight in the shadows, bending over towards 1. */
const respond = (exposure: number): number => 1 - Math.exp(-(exposure ** 1.3));

/**
 * Rows [firstRow, firstRow + rowCount) of the picture, linear 0 to 1, row-major.
 */
export function pictureRows(
  scene: Scene,
  size: PictureSize,
  firstRow: number,
  rowCount: number,
): Float32Array {
  const worked = frameOf(scene, size);
  const { columns, rows } = worked;
  const { width, height } = size;
  const down = rows / height;
  const right = columns / width;
  const first = Math.floor((firstRow + 0.5) * down - 0.5) - blurReach;
  const last = Math.floor((firstRow + rowCount - 0.5) * down - 0.5) + 2 + blurReach;
  const sharp = radianceRows(worked, first, last);
  const count = last - first;
  const deviation = Math.max(0.35, (scene.softness * rows) / 1000);
  const weights = bell(Math.min(deviation, blurReach / 2));
  const sideways = new Float32Array(sharp.length);
  for (let r = 0; r < count; r++) {
    for (let c = 0; c < columns; c++) {
      let sum = 0;
      for (let k = -blurReach; k <= blurReach; k++) {
        const x = Math.min(columns - 1, Math.max(0, c + k));
        sum += weights[k + blurReach] * sharp[r * columns + x];
      }
      sideways[r * columns + c] = sum;
    }
  }
  /** Element of the frame after the lens: sharp in the middle, soft towards the corners. */
  const lens = new Float32Array(columns * (count - 2 * blurReach));
  for (let r = blurReach; r < count - blurReach; r++) {
    const v = (first + r + 0.5) / rows - 0.5;
    for (let c = 0; c < columns; c++) {
      let soft = 0;
      for (let k = -blurReach; k <= blurReach; k++) {
        soft += weights[k + blurReach] * sideways[(r + k) * columns + c];
      }
      const u = ((c + 0.5) / columns - 0.5) * (width / height);
      const away = (u * u + v * v) / (0.25 + (0.25 * width * width) / (height * height));
      const share = 0.15 + 0.85 * Math.min(1, away * 1.1);
      const value = sharp[r * columns + c] * (1 - share) + soft * share;
      // Fall-off of a lens with a long barrel.
      const fall = 1 - 0.45 * away * away - 0.08 * away;
      lens[(r - blurReach) * columns + c] = respond(value * scene.exposure * fall);
    }
  }
  const lensFirst = first + blurReach;
  const lensRows = count - 2 * blurReach;
  const out = new Float32Array(width * rowCount);
  for (let r = 0; r < rowCount; r++) {
    const fy = (firstRow + r + 0.5) * down - 0.5;
    const iy = Math.floor(fy);
    const ty = fy - iy;
    const a = Math.min(lensRows - 1, Math.max(0, iy - lensFirst)) * columns;
    const b = Math.min(lensRows - 1, Math.max(0, iy + 1 - lensFirst)) * columns;
    for (let c = 0; c < width; c++) {
      const fx = (c + 0.5) * right - 0.5;
      const ix = Math.floor(fx);
      const tx = fx - ix;
      const p = Math.min(columns - 1, Math.max(0, ix));
      const q = Math.min(columns - 1, Math.max(0, ix + 1));
      const upper = lens[a + p] + (lens[a + q] - lens[a + p]) * tx;
      const lower = lens[b + p] + (lens[b + q] - lens[b + p]) * tx;
      out[r * width + c] = upper + (lower - upper) * ty;
    }
  }
  return out;
}
