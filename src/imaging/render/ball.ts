/**
 * A glossy black ball beside the plate: its highlight tells where the lamp stood.
 *
 * References
 * - Normal at the highlight n = ((x - xc)/r, (y - yc)/r, sqrt(...)), light L = 2 (n.v) n - v,
 *   here the other way round: for each pixel of the ball the direction that it mirrors.
 */
import { lightDirection } from '../conventions.ts';
import { type Channels } from './blur.ts';
import { type Lamp } from './lamp.ts';
import { type View } from './view.ts';

/** Centre and radius, pixels of the capture. */
export interface Ball {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Black glass reflects this share head-on (index 1.5: 0.04) and scatters almost nothing. */
const gloss = 0.04;
const scattered = 0.004;

/** Draw the ball's part of a row over what is there. The lens is taken as far away. */
export function addBall(
  out: Channels,
  ball: Ball,
  row: number,
  margin: number,
  lamps: readonly Lamp[],
  view: View,
): void {
  const dy = (row - ball.y) / ball.radius;
  if (Math.abs(dy) > 1.1) return;
  const first = Math.max(0, Math.floor(ball.x - ball.radius * 1.1) + margin);
  const last = Math.min(out[0].length - 1, Math.ceil(ball.x + ball.radius * 1.1) + margin);
  const lights = lamps.map((lamp) => lampFromBall(lamp, ball, view));
  for (let i = first; i <= last; i += 1) {
    const dx = (i - margin - ball.x) / ball.radius;
    const square = dx * dx + dy * dy;
    const edge = Math.min(1, Math.max(0, (1 - Math.sqrt(square)) * ball.radius + 0.5));
    if (edge === 0) continue;
    const nz = Math.sqrt(Math.max(0, 1 - square));
    let light = 0.0006;
    for (const lamp of lights) {
      const [lx, ly, lz] = lamp.direction;
      const rx = 2 * nz * dx;
      const ry = 2 * nz * dy;
      const rz = 2 * nz * nz - 1;
      const miss = Math.hypot(rx - lx, ry - ly, rz - lz);
      // The lamp's face in the ball, with an edge as soft as a tenth of it.
      const seen = 1 / (1 + Math.exp((miss - lamp.radius) / (0.06 * lamp.radius)));
      const cosine = Math.max(0, dx * lx + dy * ly + nz * lz);
      light += gloss * lamp.luminance * seen + scattered * lamp.strength * cosine;
    }
    for (const channel of out) channel[i] += (light - channel[i]) * edge;
  }
}

interface LampFromBall {
  /** Unit vector, y down. */
  readonly direction: readonly [number, number, number];
  /** Angular radius, as a length on the unit sphere. */
  readonly radius: number;
  readonly luminance: number;
  readonly strength: number;
}

function lampFromBall(lamp: Lamp, ball: Ball, view: View): LampFromBall {
  const [ux, uy, uz] = lightDirection(lamp.bearing, lamp.height);
  const bx = (ball.x - (view.width - 1) / 2) / view.pixelsPerMillimetre;
  const by = (ball.y - (view.height - 1) / 2) / view.pixelsPerMillimetre;
  const x = ux * lamp.distance - bx;
  const y = -uy * lamp.distance - by;
  const z = uz * lamp.distance;
  const far = Math.hypot(x, y, z);
  const radius = lamp.size / 2 / far;
  const strength = lamp.strength * (lamp.distance / far) ** 2;
  return {
    direction: [x / far, y / far, z / far],
    radius,
    // Luminance of a disc that gives this irradiance: E = pi L r^2.
    luminance: strength / (radius * radius),
    strength,
  };
}
