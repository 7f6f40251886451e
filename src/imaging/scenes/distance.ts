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

/**
 * A turned body about the y axis from a profile of (radius, height) points, first to last,
 * closed through the axis. Exact in the half plane of the profile.
 */
export function turned(profile: readonly (readonly [number, number])[]) {
  const count = profile.length;
  const last = profile[count - 1];
  const points = [[0, profile[0][1]] as const, ...profile, [0, last[1]] as const];
  return (x: number, y: number, z: number): number => {
    const r = Math.sqrt(x * x + z * z);
    let best = Infinity;
    let inside = false;
    for (let k = 0; k < points.length; k++) {
      const [ar, ay] = points[k];
      const [br, by] = points[(k + 1) % points.length];
      const er = br - ar;
      const ey = by - ay;
      const wr = r - ar;
      const wy = y - ay;
      const length = er * er + ey * ey;
      // The closing edge lies on the axis and bounds nothing.
      const onAxis = ar === 0 && br === 0;
      if (length > 0 && !onAxis) {
        let t = (wr * er + wy * ey) / length;
        t = t < 0 ? 0 : t > 1 ? 1 : t;
        const dr = wr - er * t;
        const dy = wy - ey * t;
        const d = dr * dr + dy * dy;
        if (d < best) best = d;
      }
      if (ay > y !== by > y && r < ar + ((y - ay) / (by - ay)) * er) inside = !inside;
    }
    return inside ? -Math.sqrt(best) : Math.sqrt(best);
  };
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
