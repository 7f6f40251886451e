/**
 * Bodies sorted into boxes within boxes, so that a ray passes by most of them unasked.
 * Each box of more than a few bodies is halved at the middle body along its longest side.
 *
 * References
 * - Kay, T. L. and Kajiya, J. T. (1986). Ray tracing complex scenes. Proc. SIGGRAPH 86, 269-278
 *   (the slab test; from memory).
 */
import { type Solid } from './solid.ts';

/** Bodies in a box that is not halved further. */
const few = 3;

export interface BoxTree {
  /** Least and greatest corner of each box, six numbers. */
  readonly bounds: Float64Array;
  /** For each box: index of its second half (the first is the next box), or -1 for a leaf. */
  readonly second: Int32Array;
  /** For a leaf: its bodies are order[start] to order[start + count - 1]. */
  readonly start: Int32Array;
  readonly count: Int32Array;
  readonly order: Int32Array;
}

export function makeBoxTree(solids: readonly Solid[]): BoxTree {
  const order = Int32Array.from(solids, (_, k) => k);
  const size = Math.max(1, 2 * solids.length);
  const bounds = new Float64Array(size * 6);
  const second = new Int32Array(size).fill(-1);
  const start = new Int32Array(size);
  const count = new Int32Array(size);
  let used = 0;
  const middle = (k: number, axis: number): number => solids[k].min[axis] + solids[k].max[axis];

  function build(from: number, to: number): number {
    const box = used++;
    const b = box * 6;
    for (let axis = 0; axis < 3; axis++) {
      bounds[b + axis] = Infinity;
      bounds[b + 3 + axis] = -Infinity;
      for (let i = from; i < to; i++) {
        bounds[b + axis] = Math.min(bounds[b + axis], solids[order[i]].min[axis]);
        bounds[b + 3 + axis] = Math.max(bounds[b + 3 + axis], solids[order[i]].max[axis]);
      }
    }
    start[box] = from;
    count[box] = to - from;
    if (to - from <= few) return box;
    const spread = [0, 1, 2].map((axis) => {
      const at = Array.from(order.subarray(from, to), (k) => middle(k, axis));
      return Math.max(...at) - Math.min(...at);
    });
    const axis = spread.indexOf(Math.max(...spread));
    const sorted = Array.from(order.subarray(from, to)).sort(
      (p, q) => middle(p, axis) - middle(q, axis) || p - q,
    );
    order.set(sorted, from);
    const half = (from + to) >> 1;
    build(from, half);
    second[box] = build(half, to);
    return box;
  }
  if (solids.length > 0) build(0, solids.length);
  return { bounds, second, start, count, order };
}
