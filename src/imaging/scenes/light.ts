/**
 * Light that arrives at a point: straight from the source with soft shadow edges, and once
 * scattered by the bodies around. Sampled along a fixed low-discrepancy sequence, so that the
 * same point and the same turn of the sequence always give the same number.
 *
 * References
 * - Kajiya, J. T. (1986). The rendering equation. Proc. SIGGRAPH 86, 143-150 (from memory).
 * - Roberts, M. (2018). The unreasonable effectiveness of quasirandom sequences: the R2
 *   sequence with steps 1/p and 1/p^2, p = 1.32471795724 (from memory).
 */
import { type Scene, type Source } from './scene.ts';
import { type Ray } from './solid.ts';
import { type Tracer } from './tracer.ts';

/** Steps of the R2 sequence. */
const step1 = 0.7548776662466927;
const step2 = 0.5698402909980532;

export interface Arrival {
  /** Irradiance straight from the source, divided by pi: times the albedo it is radiance. */
  level: number;
  /** The same from the surroundings. */
  around: number;
  /** Direct irradiance per direction, divided by pi: tells how `level` changes as the normal turns. */
  vx: number;
  vy: number;
  vz: number;
}

export interface Lighting {
  /** Sets the direction and gives the weight of one sample of the source from a point; 0 when it cannot reach. */
  readonly direct: (
    x: number,
    y: number,
    z: number,
    nx: number,
    ny: number,
    nz: number,
    u: number,
    v: number,
    shadow: Ray,
  ) => number;
  readonly arriving: (
    x: number,
    y: number,
    z: number,
    nx: number,
    ny: number,
    nz: number,
    turn: number,
    /** Samples of the source, and of the surroundings. */
    samples: number,
    aroundSamples: number,
    out: Arrival,
  ) => void;
  /** Radiance that a ray brings, each surface met scattering evenly; the source itself included where `seen`. */
  readonly along: (ray: Ray, near: number, turn: number, seen: boolean) => number;
}

/** Radiance of the source where a ray runs into it before `far`, or 0. */
function sourceAlong(source: Source, ray: Ray, far: number): number {
  if (source.kind === 'sun') {
    const [sx, sy, sz] = source.towards;
    const across = 1 - (ray.dx * sx + ray.dy * sy + ray.dz * sz);
    if (far < 3000 || across > source.radius ** 2 / 2) return 0;
    return source.irradiance / (Math.PI * source.radius ** 2);
  }
  const { centre, across, up, facing } = source;
  const towards = ray.dx * facing[0] + ray.dy * facing[1] + ray.dz * facing[2];
  if (towards >= 0) return 0;
  const px = centre[0] - ray.ox;
  const py = centre[1] - ray.oy;
  const pz = centre[2] - ray.oz;
  const t = (px * facing[0] + py * facing[1] + pz * facing[2]) / towards;
  if (t <= 0 || t > far) return 0;
  const hx = ray.dx * t - px;
  const hy = ray.dy * t - py;
  const hz = ray.dz * t - pz;
  const a =
    (hx * across[0] + hy * across[1] + hz * across[2]) / across.reduce((q, c) => q + c * c, 0);
  const b = (hx * up[0] + hy * up[1] + hz * up[2]) / up.reduce((q, c) => q + c * c, 0);
  if (Math.abs(a) > 1 || Math.abs(b) > 1) return 0;
  // The bars of the window: one upright, one across.
  return Math.abs(a) < 0.05 || Math.abs(b) < 0.04 ? 0 : source.radiance;
}

export function makeLighting(scene: Scene, tracer: Tracer): Lighting {
  const shadow: Ray = { ox: 0, oy: 0, oz: 0, dx: 0, dy: 0, dz: 1 };
  const bounce: Ray = { ox: 0, oy: 0, oz: 0, dx: 0, dy: 0, dz: 1 };
  const n = new Float64Array(3);
  const { source, solids } = scene;
  const inv = 1 / Math.PI;

  const direct: Lighting['direct'] = (x, y, z, nx, ny, nz, u, v, ray) => {
    ray.ox = x;
    ray.oy = y;
    ray.oz = z;
    if (source.kind === 'sun') {
      const r = source.radius * Math.sqrt(u);
      const a = 2 * Math.PI * v;
      const [sx, sy, sz] = source.towards;
      // Two directions across the sun's own.
      const hx = Math.abs(sy) < 0.9 ? -sz : 1;
      const hz = Math.abs(sy) < 0.9 ? sx : 0;
      const hl = 1 / Math.hypot(hx, hz);
      const ax = hx * hl;
      const az = hz * hl;
      const bx = sy * az;
      const by = sz * ax - sx * az;
      const bz = -sy * ax;
      const c = r * Math.cos(a);
      const s = r * Math.sin(a);
      const dx = sx + ax * c + bx * s;
      const dy = sy + by * s;
      const dz = sz + az * c + bz * s;
      const l = 1 / Math.sqrt(dx * dx + dy * dy + dz * dz);
      ray.dx = dx * l;
      ray.dy = dy * l;
      ray.dz = dz * l;
      const cosine = ray.dx * nx + ray.dy * ny + ray.dz * nz;
      if (cosine <= 0 || tracer.blocked(ray, 1e-4, 3000)) return 0;
      return source.irradiance * inv;
    }
    const a = 2 * u - 1;
    const b = 2 * v - 1;
    const dx = source.centre[0] + source.across[0] * a + source.up[0] * b - x;
    const dy = source.centre[1] + source.across[1] * a + source.up[1] * b - y;
    const dz = source.centre[2] + source.across[2] * a + source.up[2] * b - z;
    const d2 = dx * dx + dy * dy + dz * dz;
    const d = Math.sqrt(d2);
    ray.dx = dx / d;
    ray.dy = dy / d;
    ray.dz = dz / d;
    const cosine = ray.dx * nx + ray.dy * ny + ray.dz * nz;
    const face = -(
      ray.dx * source.facing[0] +
      ray.dy * source.facing[1] +
      ray.dz * source.facing[2]
    );
    if (cosine <= 0 || face <= 0 || tracer.blocked(ray, 1e-4, d * 0.999)) return 0;
    const area =
      4 *
      Math.hypot(source.across[0], source.across[1], source.across[2]) *
      Math.hypot(source.up[0], source.up[1], source.up[2]);
    return (source.radiance * face * area * inv) / d2;
  };

  const scattered = (ray: Ray, near: number, turn: number, seen: boolean): number => {
    const body = tracer.first(ray, near, 3000);
    const t = tracer.distance();
    if (seen) {
      const glare = sourceAlong(scene.source, ray, body < 0 ? 3000 : t);
      if (glare > 0) return glare;
    }
    if (body < 0) return (seen ? (scene.seen ?? scene.sky) : scene.sky)(ray.dx, ray.dy, ray.dz);
    const solid = solids[body];
    let x = ray.ox + ray.dx * t;
    let y = ray.oy + ray.dy * t;
    let z = ray.oz + ray.dz * t;
    solid.normal(x, y, z, n);
    const lift = 1e-4 + t * 1e-4;
    x += n[0] * lift;
    y += n[1] * lift;
    z += n[2] * lift;
    const nx = n[0];
    const ny = n[1];
    const nz = n[2];
    const u = (0.5 + turn * step1) % 1;
    const v = (0.5 + turn * step2) % 1;
    const weight = direct(x, y, z, nx, ny, nz, u, v, shadow);
    const cosine = shadow.dx * nx + shadow.dy * ny + shadow.dz * nz;
    // A corner close to the source would send single sparks into the shade; what is cut off here
    // is a few thousandths of the light.
    const level = weight > 0 ? Math.min(2, weight * cosine) : 0;
    const radiance = solid.surface.mean * (level + scene.ambient);
    const veil = scene.haze < Infinity ? Math.exp(-t / scene.haze) : 1;
    return radiance * veil + scene.hazeRadiance * (1 - veil);
  };

  return {
    direct,
    along: scattered,
    arriving(x, y, z, nx, ny, nz, turn, samples, aroundSamples, out) {
      let level = 0;
      let vx = 0;
      let vy = 0;
      let vz = 0;
      for (let s = 0; s < samples; s++) {
        const k = turn * samples + s;
        const u = (0.5 + k * step1) % 1;
        const v = (0.5 + k * step2) % 1;
        const weight = direct(x, y, z, nx, ny, nz, u, v, shadow) / samples;
        if (weight > 0) {
          level += weight * (shadow.dx * nx + shadow.dy * ny + shadow.dz * nz);
          vx += weight * shadow.dx;
          vy += weight * shadow.dy;
          vz += weight * shadow.dz;
        }
      }
      // A frame about the normal (Duff et al. 2017, from memory).
      const sign = nz >= 0 ? 1 : -1;
      const a = -1 / (sign + nz);
      const b = nx * ny * a;
      let around = 0;
      for (let s = 0; s < aroundSamples; s++) {
        const k = turn * aroundSamples + s + 7919;
        const u = (0.5 + k * step1) % 1;
        const v = (0.5 + k * step2) % 1;
        const r = Math.sqrt(u);
        const cx = r * Math.cos(2 * Math.PI * v);
        const cy = r * Math.sin(2 * Math.PI * v);
        const cz = Math.sqrt(1 - u);
        bounce.ox = x;
        bounce.oy = y;
        bounce.oz = z;
        bounce.dx = cx * (1 + sign * nx * nx * a) + cy * b + cz * nx;
        bounce.dy = cx * sign * b + cy * (sign + ny * ny * a) + cz * ny;
        bounce.dz = cx * -sign * nx + cy * -ny + cz * nz;
        around += scattered(bounce, 1e-4, k, false);
      }
      out.level = level;
      out.around = around / aroundSamples;
      out.vx = vx;
      out.vy = vy;
      out.vz = vz;
    },
  };
}
