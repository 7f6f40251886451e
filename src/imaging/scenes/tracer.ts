/**
 * Which body a ray meets first, and whether anything stands between two points.
 * A ray is clipped to each body's box before the body itself is asked.
 *
 * References
 * - Kay, T. L. and Kajiya, J. T. (1986). Ray tracing complex scenes. Proc. SIGGRAPH 86, 269-278
 *   (the slab test; from memory).
 */
import { type Ray, type Solid } from './solid.ts';

export interface Tracer {
  /** Index of the first body met beyond `near`, or -1; the distance is left in `distance()`. */
  readonly first: (ray: Ray, near: number, far: number, only?: readonly number[]) => number;
  /** Distance of the body that `first` found last. */
  readonly distance: () => number;
  /** Whether anything lies along the ray between near and far. */
  readonly blocked: (ray: Ray, near: number, far: number) => boolean;
}

export function makeTracer(solids: readonly Solid[]): Tracer {
  const count = solids.length;
  const bounds = new Float64Array(count * 6);
  solids.forEach((s, k) => bounds.set([...s.min, ...s.max], k * 6));
  const everything = solids.map((_, k) => k);
  let found = Infinity;
  let enter = 0;
  let leave = 0;

  function clip(ray: Ray, k: number, near: number, far: number): boolean {
    const b = k * 6;
    const ix = 1 / ray.dx;
    const iy = 1 / ray.dy;
    const iz = 1 / ray.dz;
    let t0 = (bounds[b] - ray.ox) * ix;
    let t1 = (bounds[b + 3] - ray.ox) * ix;
    let lo = t0 < t1 ? t0 : t1;
    let hi = t0 < t1 ? t1 : t0;
    t0 = (bounds[b + 1] - ray.oy) * iy;
    t1 = (bounds[b + 4] - ray.oy) * iy;
    if (t0 > t1) {
      const t = t0;
      t0 = t1;
      t1 = t;
    }
    if (t0 > lo) lo = t0;
    if (t1 < hi) hi = t1;
    t0 = (bounds[b + 2] - ray.oz) * iz;
    t1 = (bounds[b + 5] - ray.oz) * iz;
    if (t0 > t1) {
      const t = t0;
      t0 = t1;
      t1 = t;
    }
    if (t0 > lo) lo = t0;
    if (t1 < hi) hi = t1;
    enter = lo > near ? lo : near;
    leave = hi < far ? hi : far;
    return enter <= leave;
  }

  return {
    first(ray, near, far, only = everything) {
      let body = -1;
      found = far;
      for (const k of only) {
        if (!clip(ray, k, near, found)) continue;
        const t = solids[k].meet(ray, enter, leave);
        if (t < found) {
          found = t;
          body = k;
        }
      }
      return body;
    },
    distance: () => found,
    blocked(ray, near, far) {
      for (let k = 0; k < count; k++) {
        if (clip(ray, k, near, far) && solids[k].meet(ray, enter, leave) < far) return true;
      }
      return false;
    },
  };
}
