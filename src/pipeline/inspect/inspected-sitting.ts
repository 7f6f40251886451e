/** One sitting with everything that was measured of it: what the judges look at. */
import type { Ghost } from '../../imaging/inspect/ghost-step.ts';
import type { BlurComparison } from '../../imaging/inspect/shared-edges.ts';
import type { OwnBackground } from '../../imaging/inspect/own-background.ts';
import type { Estimate } from '../../imaging/plane.ts';
import { finding, type Finding } from '../../records/finding.ts';
import type { PlateRecord } from '../../records/plate.ts';
import type { FileResult } from '../../records/result.ts';
import type { CaptureRecord, SittingRecord } from '../../records/sitting.ts';
import type { Edition, Tolerances } from '../../records/tolerances.ts';
import { editionName } from '../../records/tolerances.ts';
import type { SetupKind } from '../../records/vocabulary.ts';
import type { Measures } from './measures.ts';

export interface InspectedCapture {
  readonly record: CaptureRecord;
  readonly setupKind: SetupKind;
  /** The frames that could be read, in the order of the sitting. */
  readonly frames: readonly FileResult[];
  /** Null where no frame could be read. */
  readonly measures: Measures | null;
}

export interface InspectedSitting {
  readonly slug: string;
  readonly plate: PlateRecord | null;
  readonly id: string;
  readonly record: SittingRecord;
  readonly base: string;
  readonly captures: readonly InspectedCapture[];
  /** Light from a positive and a negative reading together, and whose they are. */
  readonly background: {
    readonly positive: string;
    readonly negative: string;
    readonly light: Estimate<OwnBackground>;
  } | null;
  /** How much softer than the base each capture is, where they could be compared. */
  readonly softness: ReadonlyMap<string, Estimate<BlurComparison>>;
  /** The ghost of the glass, of captures through one. */
  readonly ghosts: ReadonlyMap<string, Estimate<Ghost>>;
  readonly tolerances: Tolerances;
}

export type Judge = (sitting: InspectedSitting) => Finding[];

/** A finding about a capture of the sitting, in as few words as it needs. */
export function about(
  sitting: InspectedSitting,
  capture: string | null,
  file: string | null,
  parts: Pick<Finding, 'level' | 'code' | 'message' | 'remedy'> &
    Partial<Pick<Finding, 'measured'>> & { readonly from?: Edition },
): Finding {
  const { from, ...rest } = parts;
  return finding({
    plate: sitting.slug,
    capture,
    file: file === null ? null : `captures/${file}`,
    edition: from ? editionName(from) : null,
    ...rest,
  });
}

/** A number as a reader wants it: three figures that count, no more. */
export function said(value: number): string {
  const size = Math.abs(value);
  if (size >= 100) return String(Math.round(value));
  if (size >= 10) return String(Math.round(value * 10) / 10);
  return String(Math.round(value * 100) / 100);
}

/** A number to keep: enough places for any comparison, no noise. */
export function kept(value: number): number {
  return Number(value.toPrecision(6));
}
