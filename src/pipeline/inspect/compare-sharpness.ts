/**
 * The captures of a sitting against its base: how much softer each is at the edges that both
 * show. Only pictures of one size are compared; a mosaic's close-ups have another scale.
 */
import { z } from 'zod';
import { detailAreas } from '../../imaging/inspect/detail-areas.ts';
import { compareBlur } from '../../imaging/inspect/shared-edges.ts';
import { quadOf, scaleQuad } from '../../imaging/inspect/quad.ts';
import type { Area } from '../../imaging/inspect/samples.ts';
import { loadLuminance } from '../../raster/load-plane.ts';
import type { FileResult } from '../../records/result.ts';
import { keyOf } from '../key.ts';
import type { StageContext } from '../stage-context.ts';
import { keepJson } from '../store.ts';
import type { InspectedCapture, InspectedSitting } from './inspected-sitting.ts';
import { clipLevel, overviewSide } from './measure-capture.ts';
import { readLuminanceAreas } from './read-areas.ts';

/** Raised when the same two captures would compare otherwise. */
const comparisonVersion = 2;

/** Side of a compared square, full-resolution pixels, and how many are compared. */
const squareSide = 320;
const squareCount = 12;

const comparisonSchema = z.discriminatedUnion('ok', [
  z.strictObject({
    ok: z.literal(true),
    value: z.strictObject({ extra: z.number(), edges: z.number() }),
  }),
  z.strictObject({ ok: z.literal(false), reason: z.string() }),
]);

/** By capture id; the base itself and what cannot be compared are left out. */
export async function compareSharpness(
  captures: readonly InspectedCapture[],
  base: string,
  pathOf: (name: string) => string,
  context: StageContext,
): Promise<InspectedSitting['softness']> {
  const found = new Map<string, z.output<typeof comparisonSchema>>();
  const reference = captures.find((c) => c.record.id === base);
  if (!reference || reference.record.kind === 'mosaic') return found;
  const first = middleFrame(reference);
  for (const capture of captures) {
    const second = middleFrame(capture);
    if (capture === reference || capture.record.kind === 'mosaic' || !first || !second) continue;
    if (second.width !== first.width || second.height !== first.height) continue;
    const key = keyOf({ version: comparisonVersion, files: [first.sha256, second.sha256] });
    const comparison = await keepJson(
      context.store,
      'sharpness',
      key,
      (value) => comparisonSchema.parse(value),
      () => compare(reference, first, second, pathOf, context),
      context.tally,
    );
    found.set(capture.record.id, comparison);
  }
  return found;
}

function middleFrame({ frames }: InspectedCapture): FileResult | undefined {
  return frames[frames.length >> 1];
}

async function compare(
  reference: InspectedCapture,
  first: FileResult,
  second: FileResult,
  pathOf: (name: string) => string,
  context: StageContext,
) {
  const open = { scratch: context.store.scratch };
  const areas = await squares(reference, first, second, pathOf, open);
  if (areas.length === 0) return { ok: false as const, reason: 'no part of the plate has detail' };
  const parts = [];
  for (const { name } of [first, second]) {
    parts.push(await readLuminanceAreas(pathOf(name), areas, open));
  }
  return compareBlur(parts[0], parts[1]);
}

/** Squares with detail in the first and squares with detail in the second, each seen in both. */
async function squares(
  { measures }: InspectedCapture,
  first: FileResult,
  second: FileResult,
  pathOf: (name: string) => string,
  open: { readonly scratch: string },
): Promise<Area[]> {
  const chosen: Area[] = [];
  for (const { name, width } of [first, second]) {
    const overview = await loadLuminance(pathOf(name), { ...open, maxSide: overviewSide });
    const factor = width / overview.width;
    const corners = measures?.outline.ok ? measures.outline.value.corners : null;
    const outline = corners
      ? scaleQuad(quadOf([corners[0], corners[1], corners[2], corners[3]]), 1 / factor)
      : null;
    const room = (outline?.shorterSide ?? Math.min(overview.width, overview.height)) / 5;
    const side = Math.max(16, Math.floor(Math.min(squareSide / factor, room)));
    for (const area of detailAreas(overview, outline, clipLevel, side, squareCount / 2)) {
      const size = Math.round(side * factor);
      chosen.push({
        x: Math.min(width - size, Math.round(area.x * factor)),
        y: Math.min(first.height - size, Math.round(area.y * factor)),
        width: size,
        height: size,
      });
    }
  }
  return chosen.filter((a, k) => chosen.findIndex((b) => b.x === a.x && b.y === a.y) === k);
}
