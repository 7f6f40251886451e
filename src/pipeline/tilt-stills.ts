/**
 * The stills of a plate's Tilt, made once from the tiled pictures of its pair: for readers
 * without WebGL 2, and without script.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type z } from 'zod';
import { readingContrast, tiltReading, tonesOf } from '../imaging/tilt.ts';
import { tiltSteps, type TiltStep } from '../imaging/tilt-steps.ts';
import { mixStills, type MixedStills } from '../raster/mix-stills.ts';
import { rightsPacket } from '../raster/rights-packet.ts';
import { tiltStillsSchema, type TiltStills } from '../records/pair-result.ts';
import type { ViewResult } from '../records/result.ts';
import { keyOf } from './key.ts';
import type { StageContext } from './stage-context.ts';
import { keepFolder } from './store.ts';
import { pictureRights, type TiledPlate } from './tile.ts';

/** Raised when the same pictures would give other stills. */
const version = 1;
/** Longest side, pixels: enough for a telephone and for half a page. */
const side = 800;

/** Folder in the store. */
export const tiltFolder = 'tilt';

const kept = tiltStillsSchema.omit({ folder: true });

/** Null where the plate has no pair, or one of the two is not published. */
export async function tiltStills(
  plate: TiledPlate,
  context: StageContext,
): Promise<TiltStills | null> {
  const { pair } = plate;
  const [positive, negative] = [pair?.positive, pair?.negative].map((id) =>
    plate.tiled.find((view) => view.id === id),
  );
  if (!pair || !positive || !negative) return null;
  const steps = tiltSteps(pair.turn?.value ?? null);
  const packet = rightsPacket(pictureRights(plate, positive, context));
  const key = keyOf({
    ...{ version, side, packet, tiles: [positive.tiles, negative.tiles] },
    steps: steps.map(({ tilt, b }) => [tilt, b]),
  });
  const folder = await keepFolder(
    context.store,
    tiltFolder,
    key,
    async (draft) => {
      const stills = await mixStills({
        positive: wholePicture(context.store.root, positive),
        negative: wholePicture(context.store.root, negative),
        mixes: steps.map(({ b }) => b),
        packets: steps.map(() => packet),
        ...{ side, folder: draft },
      });
      await writeFile(join(draft, 'steps.json'), JSON.stringify(described(stills, steps)));
    },
    context.tally,
  );
  const text = await readFile(join(folder, 'steps.json'), 'utf8');
  return { folder: key, ...kept.parse(JSON.parse(text)) };
}

function wholePicture(root: string, { tiles, sizes }: ViewResult): string {
  const size =
    sizes.find(({ width, height }) => Math.max(width, height) >= side) ?? sizes[sizes.length - 1];
  return join(root, 'tiles', tiles, 'full', `${size.width},${size.height}`, '0', 'default.jpg');
}

/** What each still shows, told as the viewer tells it. */
function described(stills: MixedStills, steps: readonly TiltStep[]): z.output<typeof kept> {
  const { width, height } = stills;
  const inner = { x: 0.05 * width, y: 0.05 * height, width: 0.9 * width, height: 0.9 * height };
  const tones = tonesOf(stills.positive, stills.negative, inner);
  return {
    ...{ width, height },
    steps: steps.map(({ tilt, b }) => ({
      tilt: Number(tilt.toFixed(2)),
      reading: tones.ok ? tiltReading(readingContrast(tones.value, 1, b)) : null,
    })),
  };
}
