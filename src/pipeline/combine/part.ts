/** What each kind of capture adds to the views of a plate. */
import type { Homography } from '../../imaging/conventions.ts';
import type { Radial } from '../../imaging/radial.ts';
import type { Finding } from '../../records/finding.ts';
import type { ViewResult } from '../../records/result.ts';
import type { CaptureRecord } from '../../records/sitting.ts';
import type { AlignedPlate } from '../align.ts';
import type { ContentSitting } from '../content.ts';
import type { StageContext } from '../stage-context.ts';

/** A view before its tiles are made. */
export interface PlannedView extends Omit<ViewResult, 'tiles' | 'sizes'> {
  /** The picture, as a path: a capture, or a derived picture in the store. */
  readonly path: string;
  /** SHA-256 of the capture's file, or the key of the derived picture. */
  readonly sha256: string;
  /** Folder of the captures, where `path` is the plan of a mosaic and not a picture. */
  readonly composedFrom?: string;
  /** Takes a pixel of the picture to the base frame; null where the picture stays as it is. */
  readonly warp: Homography | null;
  /** Where the lens changed: done to a pixel of the frame before the way back through `warp`. */
  readonly radial?: Radial | null;
}

export interface Part {
  readonly views: readonly PlannedView[];
  readonly findings: readonly Finding[];
}

/** Views of one capture, in the order in which a reader should meet them. */
export type CaptureMaker = (
  plate: AlignedPlate,
  sitting: ContentSitting,
  capture: CaptureRecord,
  context: StageContext,
) => Promise<Part>;

/** Views that need several captures: made when those of each capture are there. */
export type PlateMaker = (
  plate: AlignedPlate,
  views: readonly PlannedView[],
  context: StageContext,
) => Promise<Part>;

/** The fields of a derived picture, for a view that is a capture as it was taken. */
export const notDerived = { step: null, settings: [], figures: [], layers: [], archive: [] };
