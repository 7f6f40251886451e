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
  // Numbers that change with every box are kept in arrays, where a write makes no object.
  /** Distance of the nearest body so far, and where the ray enters and leaves the last box. */
  const span = new Float64Array(3);
  /** The ray in hand: its origin, and the inverse of its direction. */
  const hand = new Float64Array(6);

  function take(ray: Ray): void {
    hand[0] = ray.ox;
    hand[1] = ray.oy;
    hand[2] = ray.oz;
    hand[3] = 1 / ray.dx;
    hand[4] = 1 / ray.dy;
    hand[5] = 1 / ray.dz;
  }

  /** Clips the ray in hand to box b of a list; sets where it enters and leaves. */
  function clip(list: Float64Array, b: number, near: number, far: number): boolean {
    let t0 = (list[b] - hand[0]) * hand[3];
    let t1 = (list[b + 3] - hand[0]) * hand[3];
    let low = t0 < t1 ? t0 : t1;
    let high = t0 < t1 ? t1 : t0;
    t0 = (list[b + 1] - hand[1]) * hand[4];
    t1 = (list[b + 4] - hand[1]) * hand[4];
    const y0 = t0 < t1 ? t0 : t1;
    const y1 = t0 < t1 ? t1 : t0;
    if (y0 > low) low = y0;
    if (y1 < high) high = y1;
    t0 = (list[b + 2] - hand[2]) * hand[5];
    t1 = (list[b + 5] - hand[2]) * hand[5];
    const z0 = t0 < t1 ? t0 : t1;
    const z1 = t0 < t1 ? t1 : t0;
    if (z0 > low) low = z0;
    if (z1 < high) high = z1;
    if (low < near) low = near;
    if (high > far) high = far;
    span[1] = low;
    span[2] = high;
    return low <= high;
  }

  /** The nearest body of a leaf, or with `any` the first one met; -1 for none. */
  function askLeaf(ray: Ray, box: number, near: number, any: boolean): number {
    let body = -1;
    const end = tree.start[box] + tree.count[box];
    for (let i = tree.start[box]; i < end; i++) {
      const k = tree.order[i];
      if (!clip(bounds, k * 6, near, span[0])) continue;
      const t = solids[k].meet(ray, span[1], span[2]);
      if (t < span[0]) {
        span[0] = t;
        body = k;
        if (any) return body;
      }
    }
    return body;
  }

  /** Walks the tree, nearer boxes first; with `any` it stops at the first body met before far. */
  function walk(ray: Ray, near: number, far: number, any: boolean): number {
    let body = -1;
    span[0] = far;
    if (solids.length === 0) return body;
    take(ray);
    if (!clip(tree.bounds, 0, near, far)) return body;
    let depth = 0;
    stack[depth] = 0;
    entries[depth++] = span[1];
    while (depth > 0) {
      const box = stack[--depth];
      if (entries[depth] > span[0]) continue;
      const second = tree.second[box];
      if (second < 0) {
        const met = askLeaf(ray, box, near, any);
        if (met >= 0) body = met;
        if (any && met >= 0) return body;
        continue;
      }
      const inFirst = clip(tree.bounds, (box + 1) * 6, near, span[0]);
      const first = span[1];
      const inSecond = clip(tree.bounds, second * 6, near, span[0]);
      const nearer = inFirst && inSecond && first > span[1] ? second : box + 1;
      if (inFirst && nearer !== box + 1) {
        stack[depth] = box + 1;
        entries[depth++] = first;
      }
      if (inSecond) {
        stack[depth] = second;
        entries[depth++] = span[1];
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
      span[0] = far;
      take(ray);
      for (const k of only) {
        if (!clip(bounds, k * 6, near, span[0])) continue;
        const t = solids[k].meet(ray, span[1], span[2]);
        if (t < span[0]) {
          span[0] = t;
          body = k;
        }
      }
      return body;
    },
    distance: () => span[0],
    blocked: (ray, near, far) => walk(ray, near, far, true) >= 0,
  };
}
