/**
 * Pictures of a plate's surface alone, without its picture, from measured slopes and gloss: what
 * the reader compares with the plate as lit. Three renderings, all grey:
 *
 * - **relief**: a matte surface of that shape under the lamp. Slopes are drawn steeper by
 *   `0.6 / steepest`, or a plate would look flat; a flat place is middle grey under any lamp.
 * - **slope**: the slope towards the lamp's bearing, from the steepest fall (black) to the
 *   steepest rise (white); level is middle grey.
 * - **gloss**: the gloss, brighter where a facet sends the lamp to the lens.
 *
 * References
 * - Lambert, J. H. (1760). Photometria (cosine law), from memory.
 * - Blinn, J. F. (1977). Models of light reflection for computer synthesized pictures. Proc.
 *   SIGGRAPH 77, 192-198. doi:10.1145/563858.563893 (half vector). The exponent 8 is our choice.
 */
import { decodeSrgb, encodeSrgb } from './colour/srgb-curve.ts';

type Vector = readonly [x: number, y: number, z: number];

/** What the planes say of one pixel. */
export interface SurfaceSample {
  /** Rise per run to the right, and upwards. */
  readonly slopeX: number;
  readonly slopeY: number;
  /** 0 to 1 on the sRGB curve. */
  readonly gloss: number;
}

/** Steepest slope as drawn: our choice, about 31 degrees. */
const drawnSteepest = 0.6;

function unit([x, y, z]: Vector): Vector {
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}

const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

function drawnNormal({ slopeX, slopeY }: SurfaceSample, steepest: number): Vector {
  const drawn = drawnSteepest / steepest;
  return unit([-slopeX * drawn, -slopeY * drawn, 1]);
}

const code = (linear: number) => 255 * encodeSrgb(Math.min(1, Math.max(0, linear)));

/** @param light Unit vector to the lamp. @returns Grey, 0 to 255, not rounded. */
export function reliefCode(sample: SurfaceSample, light: Vector, steepest: number): number {
  const lit = Math.max(0, dot(drawnNormal(sample, steepest), light)) / Math.max(light[2], 0.1);
  return code(0.2 * lit);
}

/** @param light Unit vector to the lamp. @returns Grey, 0 to 255, not rounded. */
export function slopeCode(sample: SurfaceSample, light: Vector, steepest: number): number {
  const across = Math.max(1e-4, Math.hypot(light[0], light[1]));
  const rise = (-sample.slopeX * light[0] - sample.slopeY * light[1]) / across;
  return 255 * Math.min(1, Math.max(0, 0.5 + (0.5 * rise) / steepest));
}

/** @param light Unit vector to the lamp. @returns Grey, 0 to 255, not rounded. */
export function glossCode(sample: SurfaceSample, light: Vector, steepest: number): number {
  const half = unit([light[0], light[1], light[2] + 1]);
  const facing = Math.max(0, dot(drawnNormal(sample, steepest), half)) / half[2];
  return code(decodeSrgb(Math.min(1, Math.max(0, sample.gloss))) * facing ** 8);
}
