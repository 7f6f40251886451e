/**
 * Bodies that a ray can meet: each has a bounding box, a way to find the first meeting, a
 * normal, and a surface. Boxes and planes are met in closed form; modelled bodies are
 * walked along their signed distance inside their box.
 */

/** What a surface is made of. Positions are metres in the scene, footprint is the width of a picture element there. */
export interface Surface {
  /** Share of light that is scattered, 0 to 1. */
  readonly albedo: (x: number, y: number, z: number, footprint: number) => number;
  /** Mean of {@link albedo}, for light that has already been scattered once. */
  readonly mean: number;
  /** Relief in metres, for the finest texture. */
  readonly relief?: (x: number, y: number, z: number, footprint: number) => number;
  /** Reflectance at normal incidence of a smooth skin over it (varnish, glass, brass), 0 to 1. */
  readonly shine?: number;
  /** How far reflections spread, radians. */
  readonly spread?: number;
  /** Still water after a long exposure: reflections are drawn out towards the camera. */
  readonly water?: boolean;
}

export interface Solid {
  /** Bounding box, metres. */
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
  readonly surface: Surface;
  /** Distance along the ray to the first meeting between near and far, or Infinity. */
  readonly meet: (ray: Ray, near: number, far: number) => number;
  /** Unit normal at a surface point, into `out`. */
  readonly normal: (x: number, y: number, z: number, out: Float64Array) => void;
}

/** Origin and unit direction. */
export interface Ray {
  ox: number;
  oy: number;
  oz: number;
  dx: number;
  dy: number;
  dz: number;
}

type Triple = readonly [number, number, number];

/** A body given by its signed distance. `step` below 1 is for distances that are only first order. */
export function modelled(
  min: Triple,
  max: Triple,
  surface: Surface,
  distance: (x: number, y: number, z: number) => number,
  step = 1,
): Solid {
  const size = Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2]);
  const close = Math.max(1e-5, size * 6e-5);
  const e = close;
  return {
    min,
    max,
    surface,
    meet(ray, near, far) {
      let t = near;
      for (let k = 0; k < 96 && t < far; k++) {
        const d = distance(ray.ox + ray.dx * t, ray.oy + ray.dy * t, ray.oz + ray.dz * t);
        if (d < close + t * 2e-5) return t;
        t += d * step;
      }
      return Infinity;
    },
    normal(x, y, z, out) {
      const gx = distance(x + e, y, z) - distance(x - e, y, z);
      const gy = distance(x, y + e, z) - distance(x, y - e, z);
      const gz = distance(x, y, z + e) - distance(x, y, z - e);
      const length = Math.sqrt(gx * gx + gy * gy + gz * gz) || 1;
      out[0] = gx / length;
      out[1] = gy / length;
      out[2] = gz / length;
    },
  };
}

/** A plain box with sharp edges. */
export function block(min: Triple, max: Triple, surface: Surface): Solid {
  const cx = (min[0] + max[0]) / 2;
  const cy = (min[1] + max[1]) / 2;
  const cz = (min[2] + max[2]) / 2;
  const hx = (max[0] - min[0]) / 2;
  const hy = (max[1] - min[1]) / 2;
  const hz = (max[2] - min[2]) / 2;
  return {
    min,
    max,
    surface,
    // The tracer has already clipped the ray to the box.
    meet: (_ray, near, far) => (near > 1e-6 && near <= far ? near : Infinity),
    normal(x, y, z, out) {
      const ax = Math.abs(Math.abs(x - cx) - hx);
      const ay = Math.abs(Math.abs(y - cy) - hy);
      const az = Math.abs(Math.abs(z - cz) - hz);
      out[0] = out[1] = out[2] = 0;
      if (ay <= ax && ay <= az) out[1] = y > cy ? 1 : -1;
      else if (ax <= az) out[0] = x > cx ? 1 : -1;
      else out[2] = z > cz ? 1 : -1;
    },
  };
}

/** A level floor at height y, without end. */
export function floor(y: number, surface: Surface): Solid {
  const far = 4000;
  return {
    min: [-far, y - 1e-3, -far],
    max: [far, y + 1e-3, far],
    surface,
    meet(ray, near, end) {
      if (ray.dy >= -1e-7) return Infinity;
      const t = (y - ray.oy) / ray.dy;
      return t > 1e-6 && t >= near - 0.1 && t <= end + 0.1 ? t : Infinity;
    },
    normal(_x, _y, _z, out) {
      out[0] = 0;
      out[1] = 1;
      out[2] = 0;
    },
  };
}

/** A straight round bar between two points: masts, ropes, handles. Met in closed form, ends open. */
export function strut(a: Triple, b: Triple, radius: number, surface: Surface): Solid {
  const lx = b[0] - a[0];
  const ly = b[1] - a[1];
  const lz = b[2] - a[2];
  const length = Math.hypot(lx, ly, lz);
  const ux = lx / length;
  const uy = ly / length;
  const uz = lz / length;
  const low = (k: 0 | 1 | 2): number => Math.min(a[k], b[k]) - radius;
  const high = (k: 0 | 1 | 2): number => Math.max(a[k], b[k]) + radius;
  return {
    min: [low(0), low(1), low(2)],
    max: [high(0), high(1), high(2)],
    surface,
    meet(ray, near, far) {
      const px = ray.ox - a[0];
      const py = ray.oy - a[1];
      const pz = ray.oz - a[2];
      const du = ray.dx * ux + ray.dy * uy + ray.dz * uz;
      const pu = px * ux + py * uy + pz * uz;
      // The ray and its origin with what runs along the bar taken away.
      const ex = ray.dx - ux * du;
      const ey = ray.dy - uy * du;
      const ez = ray.dz - uz * du;
      const qx = px - ux * pu;
      const qy = py - uy * pu;
      const qz = pz - uz * pu;
      const e2 = ex * ex + ey * ey + ez * ez;
      if (e2 < 1e-12) return Infinity;
      const half = ex * qx + ey * qy + ez * qz;
      const rest = half * half - e2 * (qx * qx + qy * qy + qz * qz - radius * radius);
      if (rest < 0) return Infinity;
      const t = (-half - Math.sqrt(rest)) / e2;
      const along = pu + t * du;
      return t >= near && t <= far && along >= 0 && along <= length ? t : Infinity;
    },
    normal(x, y, z, out) {
      const px = x - a[0];
      const py = y - a[1];
      const pz = z - a[2];
      const u = px * ux + py * uy + pz * uz;
      const nx = px - ux * u;
      const ny = py - uy * u;
      const nz = pz - uz * u;
      const l = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
      out[0] = nx / l;
      out[1] = ny / l;
      out[2] = nz / l;
    },
  };
}
