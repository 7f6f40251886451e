/** What registration tells about one capture: the shape of `registration` in a plate's result. */
import type { Homography } from '../conventions.ts';
import type { Radial } from '../radial.ts';
import type { Lay } from './lay.ts';
import type { RadialEvidence } from './lens-change.ts';
import type { PolarityMeasure } from './polarity.ts';
import type { ResidualGrid } from './residual-map.ts';
import type { CheckedTile } from './tile-check.ts';

/** Which way led to an alignment that passed the gate. */
export type Method = 'fast' | 'weak' | 'control points';

export interface RegistrationEstimate {
  /** From the moving capture to the base, pixels of the files. */
  readonly homography: Homography;
  /**
   * Where focus or lens changed: done to a pixel of the base before the inverse homography
   * takes it to the capture, pixels of the base file. Null for the same lens.
   */
  readonly radial: Radial | null;
  /** What a radial term would explain, or has explained; null where the tiles cannot tell. */
  readonly lens: RadialEvidence | null;
  /** How the moving file lies against the base. */
  readonly lay: Lay;
  readonly polarity: PolarityMeasure['polarity'];
  readonly tones: PolarityMeasure;
  /** Upper bound of the error at the corners: twice the predicted deviation, base pixels. */
  readonly boundPixels: number;
  /** The same in micrometres, or null where the scale of the base is not known. */
  readonly boundMicrometres: number | null;
  readonly method: Method;
  readonly tilesAgreed: number;
  readonly tilesTried: number;
  readonly leastPerQuadrant: number;
  /** Agreeing tiles with what they still find, base pixels. */
  readonly tiles: readonly CheckedTile[];
  readonly residual: ResidualGrid;
}

/** How far the best attempt came that did not pass. */
export interface FailedCheck {
  readonly tilesAgreed: number;
  readonly tilesTried: number;
  readonly leastPerQuadrant: number;
  readonly cornerDeviation: number;
}

/** An `Estimate` of a registration whose failure keeps its numbers. */
export type RegistrationOutcome =
  | { readonly ok: true; readonly value: RegistrationEstimate }
  | { readonly ok: false; readonly reason: string; readonly check: FailedCheck | null };
