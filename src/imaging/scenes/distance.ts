/**
 * Signed distances to simple bodies: the clay of the scenes. Each returns the distance in
 * the units of its arguments, negative inside; none overstates the distance by more than
 * the note beside it says, so that a ray may step by it.
 *
 * References
 * - Hart, J. C. (1996). Sphere tracing. The Visual Computer 12, 527-545. doi:10.1007/s003710050084
 *   (from memory).
 */

/** A box of half sizes (a, b, c) about the origin, its edges rounded by r. */
export function box(
  x: number,
  y: number,
  z: number,
  a: number,
  b: number,
  c: number,
  r = 0,
): number {
  const qx = Math.abs(x) - a + r;
  const qy = Math.abs(y) - b + r;
  const qz = Math.abs(z) - c + r;
  const ox = qx > 0 ? qx : 0;
  const oy = qy > 0 ? qy : 0;
  const oz = qz > 0 ? qz : 0;
  const inside = Math.max(qx, qy, qz);
  return Math.sqrt(ox * ox + oy * oy + oz * oz) + (inside < 0 ? inside : 0) - r;
}

/** A ball of radius r about the origin. */
export function ball(x: number, y: number, z: number, r: number): number {
  return Math.sqrt(x * x + y * y + z * z) - r;
}

/** An ellipsoid of half axes (a, b, c). First order: right at the surface, steps need a factor below 1. */
export function ellipsoid(
  x: number,
  y: number,
  z: number,
  a: number,
  b: number,
  c: number,
): number {
  const px = x / a;
  const py = y / b;
  const pz = z / c;
  const k = Math.sqrt(px * px + py * py + pz * pz);
  const gx = px / a;
  const gy = py / b;
  const gz = pz / c;
  const g = Math.sqrt(gx * gx + gy * gy + gz * gz);
  return g > 1e-9 ? (k * (k - 1)) / g : -Math.min(a, b, c);
}

/** An upright cylinder of radius r and half height h about the origin, edges rounded by e. */
export function cylinder(x: number, y: number, z: number, r: number, h: number, e = 0): number {
  const dr = Math.sqrt(x * x + z * z) - r + e;
  const dy = Math.abs(y) - h + e;
  const or = dr > 0 ? dr : 0;
  const oy = dy > 0 ? dy : 0;
  const inside = Math.max(dr, dy);
  return Math.sqrt(or * or + oy * oy) + (inside < 0 ? inside : 0) - e;
}

/** A rod of radius from ra at a to rb at b: round at both ends. */
export function rod(
  x: number,
  y: number,
  z: number,
  a: readonly [number, number, number],
  b: readonly [number, number, number],
  ra: number,
  rb = ra,
): number {
  const vx = b[0] - a[0];
  const vy = b[1] - a[1];
  const vz = b[2] - a[2];
  const px = x - a[0];
  const py = y - a[1];
  const pz = z - a[2];
  let t = (px * vx + py * vy + pz * vz) / (vx * vx + vy * vy + vz * vz);
  t = t < 0 ? 0 : t > 1 ? 1 : t;
  const dx = px - vx * t;
  const dy = py - vy * t;
  const dz = pz - vz * t;
  return Math.sqrt(dx * dx + dy * dy + dz * dz) - ra - (rb - ra) * t;
}

/** A ring about the y axis: radius of the circle, radius of its section. */
export function ring(x: number, y: number, z: number, radius: number, section: number): number {
  const q = Math.sqrt(x * x + z * z) - radius;
  return Math.sqrt(q * q + y * y) - section;
}

/** Elements of a turned body's table along its larger side. */
const tableSide = 220;

/**
 * A turned body about the y axis from a profile of (radius, height) points, first to last,
 * closed through the axis. Distances are tabulated over the half plane of the profile and
 * read off between four entries; outside the table they are at most too small.
 */
export function turned(corners: readonly (readonly [number, number])[]) {
  const points = smoothProfile(corners);
  const widest = Math.max(...points.map(([r]) => r));
  const low = Math.min(...points.map(([, y]) => y));
  const high = Math.max(...points.map(([, y]) => y));
  const margin = 0.1 * Math.max(widest, high - low);
  const spacing = Math.max(widest, high - low) / tableSide;
  const columns = Math.ceil((widest + margin) / spacing) + 2;
  const rows = Math.ceil((high - low + 2 * margin) / spacing) + 2;
  const table = new Float32Array(columns * rows);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      table[j * columns + i] = toProfile(points, i * spacing, low - margin + j * spacing);
    }
  }
  const right = (columns - 1.001) * spacing;
  const top = low - margin + (rows - 1.001) * spacing;
  return (x: number, y: number, z: number): number => {
    const r = Math.sqrt(x * x + z * z);
    const cr = r > right ? right : r;
    const cy = y < low - margin ? low - margin : y > top ? top : y;
    const u = cr / spacing;
    const v = (cy - low + margin) / spacing;
    const iu = Math.floor(u);
    const iv = Math.floor(v);
    const k = iv * columns + iu;
    const lower = table[k] + (table[k + 1] - table[k]) * (u - iu);
    const upper = table[k + columns] + (table[k + columns + 1] - table[k + columns]) * (u - iu);
    const d = lower + (upper - lower) * (v - iv);
    const beyond = Math.max(r - cr, Math.abs(y - cy));
    return beyond > 0 ? Math.max(beyond, d) : d;
  };
}

/** Rounds a profile: three points between each two, along a Catmull-Rom curve. */
function smoothProfile(p: readonly (readonly [number, number])[]): [number, number][] {
  const out: [number, number][] = [[0, p[0][1]]];
  for (let k = 0; k < p.length - 1; k++) {
    const [a, b, c, d] = [p[Math.max(0, k - 1)], p[k], p[k + 1], p[Math.min(p.length - 1, k + 2)]];
    for (let s = 0; s < 4; s++) {
      const t = s / 4;
      const at = (m: 0 | 1): number =>
        b[m] +
        0.5 *
          t *
          (c[m] -
            a[m] +
            t * (2 * a[m] - 5 * b[m] + 4 * c[m] - d[m] + t * (3 * (b[m] - c[m]) + d[m] - a[m])));
      out.push([Math.max(0, at(0)), at(1)]);
    }
  }
  const last = p[p.length - 1];
  out.push([last[0], last[1]], [0, last[1]]);
  return out;
}

/** Signed distance in the half plane to a profile whose ends lie on the axis. */
function toProfile(points: readonly (readonly [number, number])[], r: number, y: number): number {
  let best = Infinity;
  let inside = false;
  for (let k = 0; k < points.length - 1; k++) {
    const [ar, ay] = points[k];
    const [br, by] = points[k + 1];
    const er = br - ar;
    const ey = by - ay;
    const length = er * er + ey * ey;
    if (length > 0) {
      let t = ((r - ar) * er + (y - ay) * ey) / length;
      t = t < 0 ? 0 : t > 1 ? 1 : t;
      const dr = r - ar - er * t;
      const dy = y - ay - ey * t;
      best = Math.min(best, dr * dr + dy * dy);
    }
    if (ay > y !== by > y && r < ar + ((y - ay) / (by - ay)) * er) inside = !inside;
  }
  return inside ? -Math.sqrt(best) : Math.sqrt(best);
}

/** Union with a fillet of about k. */
export function blend(a: number, b: number, k: number): number {
  const h = Math.max(k - Math.abs(a - b), 0) / k;
  return Math.min(a, b) - h * h * k * 0.25;
}

/** The part of a that is outside b, with a fillet of about k. */
export function carve(a: number, b: number, k: number): number {
  return -blend(-a, b, k);
}
