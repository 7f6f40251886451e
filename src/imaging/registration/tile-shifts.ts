/**
 * Shifts of many small windows, each by phase correlation: the raw evidence for fits and checks.
 */
import { octaveFields, type GradientField } from './gradient-field.ts';
import type { MaskedPlane } from './masked-plane.ts';
import { localPeaks, type Correlator, type Peak, type Spectrum } from './phase-correlation.ts';

/** Finest smoothing before the gradient, pixels, and number of bands. */
const finestSigma = 1;
const bands = 2;
/** The field itself is not smoothed: a correlation that keeps the phases alone would undo it. */
const tileFieldSigma = 0;
/** Low-pass of the tile correlation, cycles per pixel. */
export const tileLowPass = 0.16;

/** Fields of a plane in the bands of the tile stages. */
export function tileFields(plane: MaskedPlane): readonly GradientField[] {
  return octaveFields(plane, finestSigma, bands, tileFieldSigma);
}

export interface Tile {
  /** Centre of the tile in the base, pixels. */
  readonly x: number;
  readonly y: number;
  /** Displacements that the tile may have, most likely first; may be empty. */
  readonly peaks: readonly Peak[];
}

/** Less usable samples than this share, and a tile is not tried. */
export const leastUsable = 0.35;

export interface TileSettings {
  /** Least distance between neighbouring tiles, pixels. */
  readonly step: number;
  /** Largest displacement looked at, pixels. */
  readonly reach: number;
  /** Peaks kept of each tile. */
  readonly peaks: number;
}

/** Places of tiles of side `side`, spread evenly with about `step` between them. */
export function tilePlaces(length: number, side: number, step: number): readonly number[] {
  if (length <= side) return [0];
  const count = Math.max(2, Math.round((length - side) / step) + 1);
  return Array.from({ length: count }, (_, i) => Math.round(((length - side) * i) / (count - 1)));
}

/**
 * @param still Fields of the base, one per smoothing.
 * @param drawn Fields of the moving capture drawn in the base frame, the same smoothings.
 * @param correlator Its size is the side of a tile.
 */
export function tileShifts(
  still: readonly GradientField[],
  drawn: readonly GradientField[],
  correlator: Correlator,
  settings: TileSettings,
): readonly Tile[] {
  const side = correlator.size;
  const { width, height } = still[0];
  const tiles: Tile[] = [];
  for (const y of tilePlaces(height, side, settings.step)) {
    for (const x of tilePlaces(width, side, settings.step)) {
      const peaks = tilePeaks(still, drawn, correlator, x, y, settings);
      if (peaks) tiles.push({ x: x + (side - 1) / 2, y: y + (side - 1) / 2, peaks });
    }
  }
  return tiles;
}

/** Peaks of the tile with its top-left sample at (x, y), or null when too little is usable. */
export function tilePeaks(
  still: readonly GradientField[],
  drawn: readonly GradientField[],
  correlator: Correlator,
  x: number,
  y: number,
  settings: Pick<TileSettings, 'reach' | 'peaks'>,
): readonly Peak[] | null {
  const first = tileSpectra(still, correlator, x, y);
  return first && peaksAgainst(first, drawn, correlator, x, y, settings);
}

/** Spectra of the tile with its top-left sample at (x, y), or null when too little is usable. */
export function tileSpectra(
  fields: readonly GradientField[],
  correlator: Correlator,
  x: number,
  y: number,
): readonly Spectrum[] | null {
  const side = correlator.size;
  const spectra: Spectrum[] = [];
  for (const field of fields) {
    const spectrum = correlator.spectrum(field, x, y, side, side);
    if (spectrum.usable < leastUsable) return null;
    spectra.push(spectrum);
  }
  return spectra;
}

/** The same as {@link tilePeaks} where the base's spectra are known already. */
export function peaksAgainst(
  still: readonly Spectrum[],
  drawn: readonly GradientField[],
  correlator: Correlator,
  x: number,
  y: number,
  settings: Pick<TileSettings, 'reach' | 'peaks'>,
): readonly Peak[] | null {
  const other = tileSpectra(drawn, correlator, x, y);
  if (!other) return null;
  const correlation = correlator.correlate(still, other);
  return localPeaks(correlation, correlator.size, settings.reach, settings.peaks);
}
