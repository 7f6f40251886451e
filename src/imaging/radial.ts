/**
 * The radial difference between two lenses, or between two settings of one lens.
 *
 * While camera and lens stay as they are, the lens bends every capture alike and the difference
 * is nothing. A changed focus or another lens leaves a displacement along the radius that grows
 * with its third power (the first term of Brown's model), which no homography can take up.
 *
 * References
 * - Brown, D. C. (1966). Decentering distortion of lenses. Photogrammetric Engineering 32(3),
 *   444-462.
 */
import type { Homography } from './conventions.ts';

/** p becomes centre + (p - centre) (1 + coefficient r² / radius²), r the distance to the centre. */
export interface Radial {
  readonly coefficient: number;
  /** Pixels of the frame. */
  readonly centre: readonly [x: number, y: number];
  /** Half the diagonal of the frame, pixels: the coefficient is the share at the corners. */
  readonly radius: number;
}

/** A bend about the middle of a frame of `width` x `height` pixels. */
export function radialAbout(width: number, height: number, coefficient: number): Radial {
  return {
    coefficient,
    centre: [(width - 1) / 2, (height - 1) / 2],
    radius: Math.hypot(width, height) / 2,
  };
}

/** Where a point of the frame is moved to. */
export function bend(radial: Radial, x: number, y: number): readonly [x: number, y: number] {
  const { coefficient, centre, radius } = radial;
  const dx = x - centre[0];
  const dy = y - centre[1];
  const factor = 1 + (coefficient * (dx * dx + dy * dy)) / (radius * radius);
  return [centre[0] + dx * factor, centre[1] + dy * factor];
}

/** The map near (x, y): the first two terms of its Taylor series, as a projective map. */
export function bendNear(radial: Radial, x: number, y: number): Homography {
  const { coefficient, centre, radius } = radial;
  const dx = x - centre[0];
  const dy = y - centre[1];
  const k = coefficient / (radius * radius);
  const factor = 1 + k * (dx * dx + dy * dy);
  const xx = factor + 2 * k * dx * dx;
  const xy = 2 * k * dx * dy;
  const yy = factor + 2 * k * dy * dy;
  const [bx, by] = bend(radial, x, y);
  return [xx, xy, bx - xx * x - xy * y, xy, yy, by - xy * x - yy * y, 0, 0, 1];
}

/** The point that {@link bend} takes to (x, y), by a fixed-point iteration. */
export function unbend(radial: Radial, x: number, y: number): readonly [x: number, y: number] {
  let [px, py] = [x, y];
  // Each round gains a factor of about three times the coefficient: ten are exact to rounding.
  for (let round = 0; round < 10; round += 1) {
    const [bx, by] = bend(radial, px, py);
    px += x - bx;
    py += y - by;
  }
  return [px, py];
}

/** The same bend in a frame with `pitch` times finer pixels, origin at the first pixel's centre. */
export function enlargeRadial({ coefficient, centre, radius }: Radial, pitch: number): Radial {
  const shift = (pitch - 1) / 2;
  return {
    coefficient,
    centre: [pitch * centre[0] + shift, pitch * centre[1] + shift],
    radius: pitch * radius,
  };
}

/** The same bend in a frame drawn at `share` times as many pixels each way. */
export function bendScaled({ coefficient, centre, radius }: Radial, share: number): Radial {
  const scaled = (v: number) => (v + 0.5) * share - 0.5;
  return { coefficient, centre: [scaled(centre[0]), scaled(centre[1])], radius: radius * share };
}
