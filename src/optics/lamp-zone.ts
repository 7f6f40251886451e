/**
 * Where a lamp must not stand: the places from which the mirror sends it to the lens.
 *
 * A place of the plate throws the lamp into the lens when its normal halves the angle between
 * the two. What is measured here is by how much the surface would have to lean for that, at the
 * plate's most unlucky place: a lamp is safe when this is more than the plate's warp.
 *
 * Frame and angles as in `src/imaging/conventions.ts`; lengths in mm, angles in degrees.
 *
 * References
 * - Law of reflection: the normal lies along the half-vector of both directions.
 */
import { lightDirection } from '../imaging/conventions.ts';

export interface LampPlace {
  readonly bearing: number;
  readonly height: number;
  /** From the plate's centre. */
  readonly distance: number;
  /** Diameter of the lit face. */
  readonly size: number;
}

export interface Stand {
  /** Width and height of the plate. */
  readonly plate: readonly [width: number, height: number];
  readonly cameraDistance: number;
}

/**
 * The least lean of the surface at which some place of the plate shows the lamp, degrees.
 * At or below 0 where a flat plate shows it.
 */
export function mirrorClearance(lamp: LampPlace, stand: Stand): number {
  const [x, y, z] = lightDirection(lamp.bearing, lamp.height).map((c) => c * lamp.distance);
  const [halfWidth, halfHeight] = [stand.plate[0] / 2, stand.plate[1] / 2];
  const lean = (px: number, py: number) => halfVectorLean(x - px, y - py, z, -px, -py, stand);
  // Where a flat mirror shows the lamp, if the plate is large enough; else the nearest edge.
  const share = stand.cameraDistance / (z + stand.cameraDistance);
  let px = clamp(x * share, halfWidth);
  let py = clamp(y * share, halfHeight);
  let least = lean(px, py);
  for (let step = Math.max(halfWidth, halfHeight) / 2; step > 0.01; step /= 2) {
    for (const [dx, dy] of sides) {
      const [qx, qy] = [clamp(px + dx * step, halfWidth), clamp(py + dy * step, halfHeight)];
      const there = lean(qx, qy);
      if (there < least) [least, px, py] = [there, qx, qy];
    }
  }
  // A face of angular radius r lies within r/2 of half-vectors.
  const face = Math.atan(lamp.size / 2 / Math.hypot(x - px, y - py, z));
  return ((least - face / 2) * 180) / Math.PI;
}

const sides = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

/** Angle between the plate's normal and the half-vector of lamp and lens, radians. */
function halfVectorLean(
  lx: number,
  ly: number,
  lz: number,
  vx: number,
  vy: number,
  { cameraDistance }: Stand,
): number {
  const toLamp = 1 / Math.hypot(lx, ly, lz);
  const toLens = 1 / Math.hypot(vx, vy, cameraDistance);
  const hx = lx * toLamp + vx * toLens;
  const hy = ly * toLamp + vy * toLens;
  return Math.atan2(Math.hypot(hx, hy), lz * toLamp + cameraDistance * toLens);
}

function clamp(value: number, most: number): number {
  return Math.min(most, Math.max(-most, value));
}

/** Less lean than this is none: what rounding leaves, degrees. */
const noise = 1e-4;

/**
 * The height above the plate from which a lamp is seen in the mirror, degrees; lower ones are
 * safe. 90 where even a lamp along the lens would be safe, 0 where no height is.
 *
 * @param warp Largest lean of the surface that must not matter, degrees.
 */
export function excludedFrom(lamp: Omit<LampPlace, 'height'>, stand: Stand, warp: number): number {
  const safe = (height: number) => mirrorClearance({ ...lamp, height }, stand) > warp + noise;
  if (safe(90)) return 90;
  if (!safe(0)) return 0;
  let [low, high] = [0, 90];
  while (high - low > 1e-4) {
    const middle = (low + high) / 2;
    if (safe(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Whether some part of the lamp's face stands between the lens and the plate. */
export function standsInView(lamp: LampPlace, stand: Stand): boolean {
  const [x, y, z] = lightDirection(lamp.bearing, lamp.height).map((c) => c * lamp.distance);
  if (z >= stand.cameraDistance) return false;
  const left = 1 - z / stand.cameraDistance;
  const radius = lamp.size / 2;
  return (
    Math.abs(x) - radius < (stand.plate[0] / 2) * left &&
    Math.abs(y) - radius < (stand.plate[1] / 2) * left
  );
}
