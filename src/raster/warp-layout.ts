/**
 * How a picture lies under a homography: which rows of it each row of the frame needs, and
 * whether it has to be read from its last row.
 */
import { invert3, multiply3 } from '../imaging/colour/matrix3.ts';
import { project, type Homography } from '../imaging/conventions.ts';
import { bend, type Radial } from '../imaging/radial.ts';
import type { RowSource } from './row-source.ts';

/** Largest band of source rows: a capture turned by a right angle would need all of them. */
const bandLimitBytes = 512 * 1024 * 1024;

/** A source laid under a frame. */
export interface WarpLayout {
  readonly order: 'down' | 'up';
  /** From the frame to the source as it is read. */
  readonly toSource: Homography;
  readonly radial: Radial | null;
  /** First and last source row that each row of the frame needs. */
  readonly bands: readonly (readonly [number, number])[];
  /** Source rows that have to be held at once. */
  readonly bandRows: number;
  readonly width: number;
}

/** @throws RangeError if the homography has no inverse or lays the source across the frame. */
export function layUnderFrame(
  source: RowSource,
  homography: Homography,
  radial: Radial | null,
  width: number,
  height: number,
): WarpLayout {
  const inverse = invert3(homography);
  // A capture that lay half turned is read from its last row, so that rows come as they are needed.
  const upsideDown = project(inverse, width / 2, height - 1)[1] < project(inverse, width / 2, 0)[1];
  const toSource: Homography = upsideDown
    ? multiply3([1, 0, 0, 0, -1, source.height - 1, 0, 0, 1], inverse)
    : inverse;
  const bands = neededBands(toSource, radial, source.height, width, height);
  const bandRows = widestBand(bands);
  if (bandRows * source.width * source.channels * 2 > bandLimitBytes) {
    throw new RangeError(
      `The homography needs ${bandRows} rows of the capture for one row of the frame, more than is held at once. ` +
        'Turn the capture so that it lies as the base does, then align it again.',
    );
  }
  return { order: upsideDown ? 'up' : 'down', toSource, radial, bands, bandRows, width };
}

/**
 * First and last source row that each row of the frame needs. Through a homography v is monotone
 * along a row; a bent row is looked at every 64 pixels, between which it leaves the straight
 * line by less than the one row more that is held.
 */
function neededBands(
  m: Homography,
  radial: Radial | null,
  sourceHeight: number,
  width: number,
  height: number,
): (readonly [number, number])[] {
  const clamped = (v: number): number => Math.min(sourceHeight - 1, Math.max(0, v));
  const count = radial ? Math.ceil(width / 64) + 1 : 2;
  const spare = radial ? 1 : 0;
  return Array.from({ length: height }, (_, y) => {
    let [first, last] = [Infinity, -Infinity];
    for (let k = 0; k < count; k += 1) {
      const x = ((width - 1) * k) / (count - 1);
      const [bx, by] = radial ? bend(radial, x, y) : [x, y];
      const v = project(m, bx, by)[1];
      first = Math.min(first, v);
      last = Math.max(last, v);
    }
    return [clamped(Math.floor(first) - 1 - spare), clamped(Math.floor(last) + 2 + spare)] as const;
  });
}

/** Rows between the last one that has come and the first one that is still needed, at most. */
function widestBand(bands: readonly (readonly [number, number])[]): number {
  let come = 0;
  let widest = 1;
  for (const [from, to] of bands) {
    come = Math.max(come, to);
    widest = Math.max(widest, come - from + 1);
  }
  return widest;
}
