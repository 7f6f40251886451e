/** The ghost of the glass in each axial capture, from strips along the plate's edges. */
import { join } from 'node:path';
import { z } from 'zod';
import { edgeProfile, ghostStep, type Ghost } from '../../imaging/inspect/ghost-step.ts';
import type { Point } from '../../imaging/inspect/quad.ts';
import type { Area } from '../../imaging/inspect/samples.ts';
import type { Estimate } from '../../imaging/plane.ts';
import { setupOf, type SetupRecord, type SittingRecord } from '../../records/sitting.ts';
import { keyOf } from '../key.ts';
import type { StageContext } from '../stage-context.ts';
import { keepJson } from '../store.ts';
import type { InspectedCapture } from './inspected-sitting.ts';
import type { Measures } from './measures.ts';
import { readLuminanceAreas } from './read-areas.ts';

/** Raised when the same capture would give another ghost. */
const ghostVersion = 1;

/** Furthest that a ghost is looked for, pixels. */
const furthest = 200;

const ghostSchema = z.discriminatedUnion('ok', [
  z.strictObject({
    ok: z.literal(true),
    value: z.strictObject({ pixels: z.number(), strength: z.number() }),
  }),
  z.strictObject({ ok: z.literal(false), reason: z.string() }),
]);

/** By capture; only those whose set-up has a glass and whose plate's edges were found. */
export async function measureGhosts(
  folder: string,
  record: SittingRecord,
  captures: readonly InspectedCapture[],
  context: StageContext,
): Promise<ReadonlyMap<string, Estimate<Ghost>>> {
  const found = new Map<string, Estimate<Ghost>>();
  for (const { record: capture, measures, frames } of captures) {
    const setup = setupOf(record, capture);
    if (capture.kind !== 'single' || !setup?.glass || !measures?.outline.ok) continue;
    const sides = sidesOf(setup);
    const key = keyOf({
      version: ghostVersion,
      file: frames[0].sha256,
      corners: measures.outline.value.corners,
      sides: [...sides],
    });
    const ghost = await keepJson(
      context.store,
      'ghost',
      key,
      (value) => ghostSchema.parse(value),
      () => measureGhost(join(folder, 'captures', measures.file), measures, sides, context),
      context.tally,
    );
    found.set(capture.id, ghost);
  }
  return found;
}

/** The ghost lies on the line from the panel to the plate's middle: across, down, or unknown. */
function sidesOf(setup: SetupRecord): readonly number[] {
  const bearing = setup.lamps[0]?.bearing;
  if (bearing === undefined) return [0, 1, 2, 3];
  return Math.round(bearing / 90) % 2 === 1 ? [1, 3] : [0, 2];
}

async function measureGhost(
  path: string,
  { outline, width, height }: Measures,
  sides: readonly number[],
  { store }: StageContext,
): Promise<Estimate<Ghost>> {
  if (!outline.ok) return outline;
  const { corners } = outline.value;
  const edges = sides.map((k) => {
    const [from, to] = [corners[k], corners[(k + 1) % 4]];
    const reach = Math.min(furthest, roomBeside(from, to, k, width, height));
    return { from, to, reach, area: areaAlong(from, to, reach, width, height) };
  });
  const planes = await readLuminanceAreas(
    path,
    edges.map(({ area }) => area),
    { scratch: store.scratch },
  );
  const found = edges.map(({ from, to, reach, area }, i) => {
    const within = ([x, y]: Point): Point => [x - area.x, y - area.y];
    return ghostStep(edgeProfile(planes[i], within(from), within(to), reach));
  });
  const strongest = found.filter((ghost) => ghost.ok);
  strongest.sort((a, b) => b.value.strength - a.value.strength);
  return strongest[0] ?? found[0];
}

/** Pixels between an edge (0 top, clockwise) and the picture's border, with one to spare. */
function roomBeside(from: Point, to: Point, side: number, width: number, height: number): number {
  const rooms = [
    Math.min(from[1], to[1]),
    width - 1 - Math.max(from[0], to[0]),
    height - 1 - Math.max(from[1], to[1]),
    Math.min(from[0], to[0]),
  ];
  return Math.max(0, Math.floor(rooms[side]) - 1);
}

function areaAlong(from: Point, to: Point, reach: number, width: number, height: number): Area {
  const slack = reach + 2;
  const x = Math.max(0, Math.floor(Math.min(from[0], to[0]) - slack));
  const y = Math.max(0, Math.floor(Math.min(from[1], to[1]) - slack));
  return {
    x,
    y,
    width: Math.min(width, Math.ceil(Math.max(from[0], to[0]) + slack)) - x,
    height: Math.min(height, Math.ceil(Math.max(from[1], to[1]) + slack)) - y,
  };
}
