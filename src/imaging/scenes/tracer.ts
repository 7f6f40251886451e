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
  const entries = new Float64Array(64);
  let found = Infinity;
  let enter = 0;
  let leave = 0;
  // The ray in hand: its origin, and the inverse of its direction.
  let [ox, oy, oz, ix, iy, iz] = [0, 0, 0, 0, 0, 0];

  function take(ray: Ray): void {
    ox = ray.ox;
    oy = ray.oy;
    oz = ray.oz;
    ix = 1 / ray.dx;
    iy = 1 / ray.dy;
    iz = 1 / ray.dz;
  }

  /** Clips the ray in hand to box b of a list; sets `enter` and `leave`. */
  function clip(list: Float64Array, b: number, near: number, far: number): boolean {
    let t0 = (list[b] - ox) * ix;
    let t1 = (list[b + 3] - ox) * ix;
    let low = t0 < t1 ? t0 : t1;
    let high = t0 < t1 ? t1 : t0;
    t0 = (list[b + 1] - oy) * iy;
    t1 = (list[b + 4] - oy) * iy;
    const y0 = t0 < t1 ? t0 : t1;
    const y1 = t0 < t1 ? t1 : t0;
    if (y0 > low) low = y0;
    if (y1 < high) high = y1;
    t0 = (list[b + 2] - oz) * iz;
    t1 = (list[b + 5] - oz) * iz;
    const z0 = t0 < t1 ? t0 : t1;
    const z1 = t0 < t1 ? t1 : t0;
    if (z0 > low) low = z0;
    if (z1 < high) high = z1;
    enter = low > near ? low : near;
    leave = high < far ? high : far;
    return enter <= leave;
  }

  /** The nearest body of a leaf, or with `any` the first one met; -1 for none. */
  function askLeaf(ray: Ray, box: number, near: number, any: boolean): number {
    let body = -1;
    const end = tree.start[box] + tree.count[box];
    for (let i = tree.start[box]; i < end; i++) {
      const k = tree.order[i];
      if (!clip(bounds, k * 6, near, found)) continue;
      const t = solids[k].meet(ray, enter, leave);
      if (t < found) {
        found = t;
        body = k;
        if (any) return body;
      }
    }
    return body;
  }

  /** Walks the tree, nearer boxes first; with `any` it stops at the first body met before far. */
  function walk(ray: Ray, near: number, far: number, any: boolean): number {
    let body = -1;
    found = far;
    if (solids.length === 0) return body;
    take(ray);
    if (!clip(tree.bounds, 0, near, found)) return body;
    let depth = 0;
    stack[depth] = 0;
    entries[depth++] = enter;
    while (depth > 0) {
      const box = stack[--depth];
      if (entries[depth] > found) continue;
      const second = tree.second[box];
      if (second < 0) {
        const met = askLeaf(ray, box, near, any);
        if (met >= 0) body = met;
        if (any && met >= 0) return body;
        continue;
      }
      const inFirst = clip(tree.bounds, (box + 1) * 6, near, found);
      const first = enter;
      const inSecond = clip(tree.bounds, second * 6, near, found);
      const nearer = inFirst && inSecond && first > enter ? second : box + 1;
      if (inFirst && nearer !== box + 1) {
        stack[depth] = box + 1;
        entries[depth++] = first;
      }
      if (inSecond) {
        stack[depth] = second;
        entries[depth++] = enter;
      }
      if (inFirst && nearer === box + 1) {
        stack[depth] = box + 1;
        entries[depth++] = first;
      }
    }
    return body;
  }

  return {
    first(ray, near, far, only) {
      if (!only) return walk(ray, near, far, false);
      let body = -1;
      found = far;
      take(ray);
      for (const k of only) {
        if (!clip(bounds, k * 6, near, found)) continue;
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
