/**
 * One row of pixels laid on a plate: what each pixel finds there. A capture of any size is
 * rendered row by row from these, so memory follows its width only.
 */
import type { Homography } from '../conventions.ts';

export interface PlateRow {
  readonly length: number;
  /** Place on the plate, mm from its centre, y down. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Pixel's share that lies on the plate, 0 to 1. */
  readonly inside: Float64Array;
  /** Share covered by particles, 0 to 1. */
  readonly coverage: Float64Array;
  /** Tarnish, nm. */
  readonly film: Float64Array;
  /** Share of the mirror's light spread by polishing lines, 0 to 1. */
  readonly gloss: Float64Array;
  /** Slope of the surface, rise per run, along x and y (down). */
  readonly slopeX: Float64Array;
  readonly slopeY: Float64Array;
  /** Share taken by scratches, and their direction along the plate. */
  readonly scratch: Float64Array;
  readonly alongX: Float64Array;
  readonly alongY: Float64Array;
  /** Share covered by dust, 0 to 1. */
  readonly dust: Float64Array;
  /** Share covered by pigment, and the linear sRGB albedo of that pigment. */
  readonly tint: Float64Array;
  readonly tintColour: readonly [Float64Array, Float64Array, Float64Array];
}

export function emptyRow(length: number): PlateRow {
  const line = () => new Float64Array(length);
  return {
    length,
    x: line(),
    y: line(),
    inside: line(),
    coverage: line(),
    film: line(),
    gloss: line(),
    slopeX: line(),
    slopeY: line(),
    scratch: line(),
    alongX: line(),
    alongY: line(),
    dust: line(),
    tint: line(),
    tintColour: [line(), line(), line()],
  };
}

/** Fill in where the pixels of row `row` lie. `toMillimetres` takes pixels to the plate. */
export function placeRow(line: PlateRow, toMillimetres: Homography, row: number): void {
  const m = toMillimetres;
  const a = m[1] * row + m[2];
  const b = m[4] * row + m[5];
  const c = m[7] * row + m[8];
  for (let i = 0; i < line.length; i += 1) {
    const w = 1 / (m[6] * i + c);
    line.x[i] = (m[0] * i + a) * w;
    line.y[i] = (m[3] * i + b) * w;
  }
}
