/**
 * Which body a ray meets first, and whether anything stands between two points.
 * A ray is clipped to each box before what is inside is asked.
 */
import { makeBoxTree } from './box-tree.ts';
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
  const tree = makeBoxTree(solids);
  const bounds = new Float64Array(solids.length * 6);
  solids.forEach((s, k) => bounds.set([...s.min, ...s.max], k * 6));
  const stack = new Int32Array(64);
  let found = Infinity;
  let enter = 0;
  let leave = 0;

  /** Clips the ray to box b of a list; sets `enter` and `leave`. */
  function clip(ray: Ray, list: Float64Array, b: number, near: number, far: number): boolean {
    const ix = 1 / ray.dx;
    const iy = 1 / ray.dy;
    const iz = 1 / ray.dz;
    let t0 = (list[b] - ray.ox) * ix;
    let t1 = (list[b + 3] - ray.ox) * ix;
    let low = t0 < t1 ? t0 : t1;
    let high = t0 < t1 ? t1 : t0;
    t0 = (list[b + 1] - ray.oy) * iy;
    t1 = (list[b + 4] - ray.oy) * iy;
    const y0 = t0 < t1 ? t0 : t1;
    const y1 = t0 < t1 ? t1 : t0;
    if (y0 > low) low = y0;
    if (y1 < high) high = y1;
    t0 = (list[b + 2] - ray.oz) * iz;
    t1 = (list[b + 5] - ray.oz) * iz;
    const z0 = t0 < t1 ? t0 : t1;
    const z1 = t0 < t1 ? t1 : t0;
    if (z0 > low) low = z0;
    if (z1 < high) high = z1;
    enter = low > near ? low : near;
    leave = high < far ? high : far;
    return enter <= leave;
  }

  /** Walks the tree; with `any` it stops at the first body met before far, else finds the nearest. */
  function walk(ray: Ray, near: number, far: number, any: boolean): number {
    let body = -1;
    found = far;
    let depth = 0;
    if (solids.length > 0) stack[depth++] = 0;
    while (depth > 0) {
      const box = stack[--depth];
      if (!clip(ray, tree.bounds, box * 6, near, found)) continue;
      if (tree.second[box] >= 0) {
        stack[depth++] = tree.second[box];
        stack[depth++] = box + 1;
        continue;
      }
      const end = tree.start[box] + tree.count[box];
      for (let i = tree.start[box]; i < end; i++) {
        const k = tree.order[i];
        if (!clip(ray, bounds, k * 6, near, found)) continue;
        const t = solids[k].meet(ray, enter, leave);
        if (t < found) {
          found = t;
          body = k;
          if (any) return body;
        }
      }
    }
    return body;
  }

  return {
    first(ray, near, far, only) {
      if (!only) return walk(ray, near, far, false);
      let body = -1;
      found = far;
      for (const k of only) {
        if (!clip(ray, bounds, k * 6, near, found)) continue;
        const t = solids[k].meet(ray, enter, leave);
        if (t < found) {
          found = t;
          body = k;
        }
      }
      return body;
    },
    distance: () => found,
    blocked: (ray, near, far) => walk(ray, near, far, true) >= 0,
  };
}
