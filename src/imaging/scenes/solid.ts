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
