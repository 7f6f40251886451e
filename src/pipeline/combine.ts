/**
 * Stage *combine*: which pictures the site can show of a plate, and what each is made from.
 * A view in register lies in the base frame; one that is not keeps its own.
 */
import type { Finding } from '../records/finding.ts';
import type { PlateResult } from '../records/result.ts';
import type { CaptureRecord } from '../records/sitting.ts';
import type { AlignedPlate } from './align.ts';
import { bracketViews } from './combine/bracket.ts';
import { captureViews } from './combine/captures.ts';
import { handColouringViews } from './combine/hand-colouring.ts';
import { lightsViews } from './combine/lights.ts';
import { mosaicViews } from './combine/mosaic.ts';
import { pairTurn, type Pair } from './combine/pair-turn.ts';
import type { CaptureMaker, PlannedView, PlateMaker } from './combine/part.ts';
import { rakingViews } from './combine/raking.ts';
import type { StageContext } from './stage-context.ts';

/** Raised when the same captures would give other views. */
export const combineVersion = 8;

export interface CombinedPlate extends AlignedPlate {
  readonly views: readonly PlannedView[];
  readonly pair: Omit<NonNullable<PlateResult['pair']>, 'stills'> | null;
}

const captureMakers: Readonly<Record<CaptureRecord['kind'], CaptureMaker>> = {
  single: captureViews,
  bracket: bracketViews,
  lights: lightsViews,
  mosaic: mosaicViews,
};

const plateMakers: readonly PlateMaker[] = [rakingViews, handColouringViews];

export async function combinePlate(
  aligned: AlignedPlate,
  context: StageContext,
): Promise<CombinedPlate> {
  const withheld = new Set(aligned.plate.record.withheld);
  const taken = new Set<string>();
  const views: PlannedView[] = [];
  const findings: Finding[] = [...aligned.findings];
  for (const sitting of aligned.plate.sittings) {
    for (const capture of sitting.record.captures) {
      if (withheld.has(capture.id)) continue;
      const part = await captureMakers[capture.kind](aligned, sitting, capture, context);
      for (const view of part.views) {
        // A second sitting repeats the names of the first; its date keeps the addresses apart.
        const id = taken.has(view.id) ? `${view.id}-${sitting.id}` : view.id;
        taken.add(id);
        views.push({ ...view, id });
      }
      findings.push(...part.findings);
    }
  }
  for (const make of plateMakers) {
    const part = await make(aligned, views, context);
    views.push(...part.views);
    findings.push(...part.findings);
  }
  const pair = findPair(views);
  const turn = pair && (await pairTurn(aligned, views, pair, context));
  return { ...aligned, findings, views, pair: pair && { ...pair, turn } };
}

/**
 * The first positive and the first negative that lie in register, preferring the set-ups made for
 * it, and photographs: a rendering's tones are not the light that Tilt adds up.
 */
export function findPair(views: readonly PlannedView[]): Pair | null {
  const best = (reading: 'positive' | 'negative', setupKind: string): string | undefined => {
    const all = views.filter((v) => v.registered && v.reading === reading);
    const plain = all.filter((v) => v.kind === 'capture');
    const found = plain.length > 0 ? plain : all;
    return (found.find((v) => v.setupKind === setupKind) ?? found[0])?.id;
  };
  const positive = best('positive', 'normal');
  const negative = best('negative', 'axial');
  return positive !== undefined && negative !== undefined ? { positive, negative } : null;
}
