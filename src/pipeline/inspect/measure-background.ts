/** The light on the plate from its own two readings, where a sitting has both in one frame. */
import { join } from 'node:path';
import { z } from 'zod';
import { measureOwnBackground } from '../../imaging/inspect/own-background.ts';
import { quadOf, scaleQuad } from '../../imaging/inspect/quad.ts';
import { loadLuminance } from '../../raster/load-plane.ts';
import { keyOf } from '../key.ts';
import type { ReadPlate } from '../read.ts';
import type { StageContext } from '../stage-context.ts';
import { keepJson } from '../store.ts';
import type { InspectedCapture, InspectedSitting } from './inspected-sitting.ts';
import { clipLevel } from './measure-capture.ts';
import type { Measures } from './measures.ts';

/** Raised when the same two readings would give another light. */
const backgroundVersion = 2;

/** Longest side on which two readings are compared, pixels. */
const comparedSide = 700;

const fallOff = z.strictObject({ percent: z.number(), bearing: z.number() });
const lightSchema = z.discriminatedUnion('ok', [
  z.strictObject({
    ok: z.literal(true),
    value: z.strictObject({ positive: fallOff, negative: fallOff }),
  }),
  z.strictObject({ ok: z.literal(false), reason: z.string() }),
]);

/**
 * The first positive and the first negative reading that are single pictures. Raking light is
 * meant to be one-sided and is left out; so is a light behind a glass plate, which silver
 * stops rather than scatters.
 */
export async function measureBackground(
  read: ReadPlate,
  captures: readonly InspectedCapture[],
  context: StageContext,
): Promise<InspectedSitting['background']> {
  const usable = captures.filter(
    ({ record, setupKind }) =>
      record.kind === 'single' && setupKind !== 'raking' && setupKind !== 'transmitted',
  );
  const positive = usable.find((c) => c.record.reading === 'positive');
  const negative = usable.find((c) => c.record.reading === 'negative');
  if (!positive?.measures || !negative?.measures) return null;
  const key = keyOf({
    version: backgroundVersion,
    files: [positive.frames[0].sha256, negative.frames[0].sha256],
  });
  const measures = [positive.measures, negative.measures] as const;
  const light = await keepJson(
    context.store,
    'background',
    key,
    (value) => lightSchema.parse(value),
    () => compare(read.plate.folder, measures, context),
    context.tally,
  );
  return { positive: positive.record.id, negative: negative.record.id, light };
}

async function compare(
  folder: string,
  [positive, negative]: readonly [Measures, Measures],
  { store }: StageContext,
) {
  const load = (name: string) =>
    loadLuminance(join(folder, 'captures', name), {
      scratch: store.scratch,
      maxSide: comparedSide,
    });
  const planes = [await load(positive.file), await load(negative.file)] as const;
  const { outline, width } = positive;
  if (!outline.ok) return measureOwnBackground(...planes, null, clipLevel);
  const [a, b, c, d] = outline.value.corners;
  const quad = scaleQuad(quadOf([a, b, c, d]), planes[0].width / width);
  return measureOwnBackground(...planes, quad, clipLevel);
}
