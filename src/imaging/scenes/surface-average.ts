/**
 * Averages over neighbours on the same surface: light is spread over a plane and a curve that
 * turns slowly, and stops where the plane or the normal changes.
 *
 * References
 * - Kopf, J. et al. (2007). Joint bilateral upsampling. ACM Trans. Graphics 26 (3), 96 (from memory).
 */

/** Points of a grid: position, unit normal and distance from the camera, and which body, -1 for none. */
export interface SurfaceGrid {
  readonly across: number;
  readonly down: number;
  /** x, y, z, nx, ny, nz, distance of each point. */
  readonly places: Float32Array;
  readonly bodies: Int16Array;
}

/** Numbers in `places` for each point. */
export const placeStride = 7;

/**
 * How far a grid point lies in the plane of a surface point and faces the same way, 0 to 1.
 *
 * @param reach Distance from the plane at which agreement has fallen to 1/e, metres.
 */
export function agreement(
  { places }: SurfaceGrid,
  point: number,
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
  reach: number,
): number {
  const q = point * placeStride;
  const turn = places[q + 3] * nx + places[q + 4] * ny + places[q + 5] * nz;
  if (turn <= 0.3) return 0;
  const off = ((places[q] - x) * nx + (places[q + 1] - y) * ny + (places[q + 2] - z) * nz) / reach;
  if (off > 3 || off < -3) return 0;
  const t2 = turn * turn;
  const t4 = t2 * t2;
  return t4 * t4 * Math.exp(-off * off);
}

/**
 * Averages some of the values of each point with its 24 neighbours, `step` points apart.
 * The outer neighbours count half, so that with step 1 each of 4 x 4 turns counts alike.
 *
 * @param values `stride` numbers for each point; those from `from` to before `to` are averaged.
 * @param reach Width of a cell at unit distance, times a factor; see {@link agreement}.
 */
export function averageOver(
  grid: SurfaceGrid,
  values: Float32Array,
  stride: number,
  [from, to]: readonly [number, number],
  step: number,
  reach: number,
): Float32Array {
  const { across, down, places, bodies } = grid;
  const out = values.slice();
  const sum = new Float64Array(stride);
  for (let gy = 2 * step; gy < down - 2 * step; gy++) {
    for (let gx = 0; gx < across; gx++) {
      const g = gy * across + gx;
      if (bodies[g] < 0) continue;
      const p = g * placeStride;
      const x = places[p];
      const y = places[p + 1];
      const z = places[p + 2];
      const nx = places[p + 3];
      const ny = places[p + 4];
      const nz = places[p + 5];
      const near = reach * places[p + 6];
      let total = 0;
      sum.fill(0);
      for (let dy = -2; dy <= 2; dy++) {
        for (let dx = -2; dx <= 2; dx++) {
          const hx = gx + dx * step;
          if (hx < 0 || hx >= across) continue;
          const h = g + (dy * across + dx) * step;
          if (bodies[h] < 0) continue;
          const edge = (Math.abs(dx) === 2 ? 0.5 : 1) * (Math.abs(dy) === 2 ? 0.5 : 1);
          const w = edge * agreement(grid, h, x, y, z, nx, ny, nz, near);
          if (w <= 0) continue;
          total += w;
          for (let c = from; c < to; c++) sum[c] += w * values[h * stride + c];
        }
      }
      for (let c = from; c < to; c++) out[g * stride + c] = sum[c] / total;
    }
  }
  return out;
}
