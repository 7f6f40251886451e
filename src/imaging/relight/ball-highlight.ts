/**
 * Where a lamp stood, from its highlight on a glossy ball beside the plate.
 *
 * The lens is taken as far away, so the line of sight is along z everywhere; the lamp is not:
 * what the ball sees is brought to the plate's centre with the lamp's distance.
 *
 * References
 * - Plane mirror law on a sphere: normal n = (x/r, y/r, sqrt(1 - ...)), lamp L = 2 (n.v) n - v.
 */
import type { Estimate } from '../plane.ts';
import type { Direction } from './light-place.ts';

export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

export interface Highlight {
  /** From the ball to the lamp. */
  readonly direction: Direction;
  /** Sum of the highlight's linear light, to compare lamps of one set by; a lower bound if clipped. */
  readonly light: number;
  /** Pixels that are brighter than half-way from the ball to the peak. */
  readonly pixels: number;
  readonly clipped: boolean;
}

/** The rim of a ball mirrors the horizon and below: no lamp is looked for beyond this radius. */
const searched = 0.93;
/** A highlight stands out of the ball by this factor at least. */
const contrast = 3;

/**
 * @param luminance Linear, white at `white`, row-major with `width` columns.
 * @param ball Centre and radius in these pixels.
 */
export function ballHighlight(
  luminance: ArrayLike<number>,
  width: number,
  ball: Circle,
  white: number,
): Estimate<Highlight> {
  const height = luminance.length / width;
  const inside = (visit: (at: number, dx: number, dy: number) => void): void => {
    const reach = searched * ball.radius;
    for (
      let y = Math.max(0, Math.ceil(ball.y - reach));
      y <= ball.y + reach && y < height;
      y += 1
    ) {
      for (
        let x = Math.max(0, Math.ceil(ball.x - reach));
        x <= ball.x + reach && x < width;
        x += 1
      ) {
        const dx = x - ball.x;
        const dy = y - ball.y;
        if (dx * dx + dy * dy <= reach * reach) visit(y * width + x, dx, dy);
      }
    }
  };
  let peak = 0;
  const values: number[] = [];
  inside((at) => {
    peak = Math.max(peak, luminance[at]);
    values.push(luminance[at]);
  });
  if (values.length < 50) return { ok: false, reason: 'the ball is smaller than 8 pixels across' };
  values.sort((a, b) => a - b);
  const ground = values[values.length >> 1];
  if (peak < contrast * ground + 0.01 * white) {
    return { ok: false, reason: 'no highlight stands out on the ball' };
  }
  // Weights grow from half of the peak: the fringe of another reflection has no part in it.
  const from = (ground + peak) / 2;
  let [sum, sx, sy, pixels] = [0, 0, 0, 0];
  inside((at, dx, dy) => {
    const weight = luminance[at] - from;
    if (weight <= 0) return;
    pixels += 1;
    sum += weight;
    sx += weight * dx;
    sy += weight * dy;
  });
  // The lamp's image with its blurred edge, without what the ball scatters elsewhere.
  const around = 2 * Math.sqrt(pixels / Math.PI) + 2;
  let light = 0;
  inside((at, dx, dy) => {
    if (Math.hypot(dx - sx / sum, dy - sy / sum) <= around) light += luminance[at] - ground;
  });
  const nx = sx / sum / ball.radius;
  const ny = -sy / sum / ball.radius;
  const nz = Math.sqrt(1 - nx * nx - ny * ny);
  const direction: Direction = [2 * nz * nx, 2 * nz * ny, 2 * nz * nz - 1];
  if (!(direction[2] > 0)) return { ok: false, reason: 'the highlight lies below the horizon' };
  return { ok: true, value: { direction, light, pixels, clipped: peak >= 0.98 * white } };
}

/**
 * The direction from the plate's centre to a lamp that a ball beside it sees in `direction`.
 *
 * @param ball Where the ball is from the plate's centre, mm, y up.
 * @param distance Of the lamp from the plate's centre, mm; null when it is not known.
 */
export function fromPlateCentre(
  direction: Direction,
  ball: readonly [x: number, y: number],
  distance: number | null,
): Direction {
  if (distance === null) return direction;
  // Where the ray from the ball meets the sphere of lamps about the plate's centre.
  const along = direction[0] * ball[0] + direction[1] * ball[1];
  const reach = along * along + distance * distance - ball[0] ** 2 - ball[1] ** 2;
  if (!(reach > 0)) return direction;
  const t = Math.sqrt(reach) - along;
  return [
    (ball[0] + t * direction[0]) / distance,
    (ball[1] + t * direction[1]) / distance,
    (t * direction[2]) / distance,
  ];
}
