/** What it takes to draw a mosaic: written once, read by the composer row after row. */
import type { Homography } from '../conventions.ts';
import type { GainField } from './gain-field.ts';
import type { Band } from './seams.ts';

export interface MosaicTile {
  /** Name in the captures' folder. */
  readonly file: string;
  readonly width: number;
  readonly height: number;
  /** From the tile to the mosaic, pixels. */
  readonly map: Homography;
  readonly gain: GainField;
}

export interface MosaicPlan {
  readonly width: number;
  readonly height: number;
  /** Pixels of the mosaic per cell of gains and seams. */
  readonly cell: number;
  /** On each side of a seam the two tiles are mixed over so many pixels. */
  readonly feather: number;
  readonly tiles: readonly MosaicTile[];
  /** On each side of a seam its level fades out over so many pixels. */
  readonly levelReach: number;
  readonly bands: readonly PlannedBand[];
  /** Between bands: y in cells for each column of cells, and the level there. */
  readonly between: readonly (readonly number[])[];
  readonly betweenLevels: readonly (readonly number[])[];
}

export interface PlannedBand extends Band {
  /** By seam, for each row of cells: see `seam-levels.ts`. */
  readonly levels: readonly (readonly number[])[];
}
