/**
 * Where a neighbour lies, roughly, from two small pictures: phase correlation of the strips that
 * the grid says they share.
 *
 * References: see `../registration/phase-correlation.ts`.
 */
import type { MaskedPlane } from '../registration/masked-plane.ts';
import type { GradientField } from '../registration/gradient-field.ts';
import { createCorrelator, localPeaks } from '../registration/phase-correlation.ts';
import { tileFields, tileLowPass } from '../registration/tile-shifts.ts';
import type { GridPair } from './grid.ts';

export interface Offset {
  /** A pixel (x, y) of the second tile lies at (x + dx, y + dy) of the first. */
  readonly dx: number;
  readonly dy: number;
  /** Height of the peak, in standard deviations of the correlation. */
  readonly z: number;
}

export interface SmallTile {
  readonly fields: readonly GradientField[];
  readonly width: number;
  readonly height: number;
}

/** Offsets that are offered, most likely first. */
const most = 3;

export function smallTile(plane: MaskedPlane): SmallTile {
  return { fields: tileFields(plane), width: plane.width, height: plane.height };
}

/**
 * @param expected Distance from the first tile to the second, pixels of the small pictures.
 * @param slop Distance from there that is looked at, pixels of the small pictures.
 */
export function coarseOffsets(
  first: SmallTile,
  second: SmallTile,
  side: GridPair['side'],
  expected: number,
  slop: number,
): readonly Offset[] {
  const [ex, ey] = side === 'right' ? [expected, 0] : [0, expected];
  // The strip of the first that the second may reach, and the same place of the second.
  const left = side === 'right' ? Math.max(0, Math.floor(ex - slop)) : 0;
  const top = side === 'below' ? Math.max(0, Math.floor(ey - slop)) : 0;
  const width = first.width - left;
  const height = first.height - top;
  const reach = Math.ceil(slop);
  const size = 2 ** Math.ceil(Math.log2(Math.max(width, height, 4 * reach)));
  const correlator = createCorrelator(size, tileLowPass);
  const shift = { x: Math.round(ex), y: Math.round(ey) };
  const a = first.fields.map((f) => correlator.spectrum(f, left, top, width, height));
  const b = second.fields.map((f) =>
    correlator.spectrum(f, left - shift.x, top - shift.y, width, height),
  );
  return localPeaks(correlator.correlate(a, b), size, reach, most).map((peak) => ({
    dx: shift.x - peak.dx,
    dy: shift.y - peak.dy,
    z: peak.z,
  }));
}
