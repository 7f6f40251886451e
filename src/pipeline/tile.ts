/**
 * Stage *tile*: each view as a IIIF Image API 3.0 level 0 service, its levels shrunk in linear
 * light. Kept under a key of the captures' digests and of everything else that changes bytes.
 */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { type Homography } from '../imaging/conventions.ts';
import type { Radial } from '../imaging/radial.ts';
import type { PictureRights } from '../raster/rights-packet.ts';
import { tilePicture } from '../raster/tile-picture.ts';
import { isPublicDomain, rightsLabel } from '../records/vocabulary.ts';
import type { ViewResult } from '../records/result.ts';
import type { CombinedPlate } from './combine.ts';
import type { PlannedView } from './combine/part.ts';
import { mapInTurn } from './content/map-in-turn.ts';
import { keyOf, type KeyPart } from './key.ts';
import type { StageContext } from './stage-context.ts';
import { keepFolder } from './store.ts';

/** Raised when the same picture would give other tiles. */
export const tileVersion = 1;

/** Side of a tile, pixels. */
const tileSize = 512;
/** JPEG quality; at 85 the grain of a plate keeps 98 % of its energy. */
const quality = 85;

/** Views of one plate at the same time: a core that has no plate of its own left finds work. */
const viewsTogether = 2;
/** Pixels from which a view is tiled alone, for the sake of memory. */
const aloneFrom = 100e6;

export interface TiledPlate extends CombinedPlate {
  readonly tiled: readonly ViewResult[];
}

const infoSchema = z.object({
  sizes: z.array(z.object({ width: z.number(), height: z.number() })).min(1),
});

export async function tilePlate(plate: CombinedPlate, context: StageContext): Promise<TiledPlate> {
  const largest = Math.max(...plate.views.map(({ width, height }) => width * height));
  const together = largest > aloneFrom ? 1 : viewsTogether;
  let begun = 0;
  const tiled = await mapInTurn(plate.views, together, (view) => {
    begun += 1;
    context.progress(`${plate.plate.slug}: tiles ${begun}/${plate.views.length}`);
    return tileView(plate, view, context);
  });
  return { ...plate, tiled };
}

async function tileView(
  plate: CombinedPlate,
  planned: PlannedView,
  context: StageContext,
): Promise<ViewResult> {
  const { path, sha256, warp, composedFrom, radial = null, ...view } = planned;
  const metadata = pictureRights(plate, view, context);
  const frame = frameOf(warp, radial, view);
  const options = { tile: tileSize, quality, metadata };
  const key = keyOf({ version: tileVersion, sha256, ...options, frame } as unknown as KeyPart);
  const folder = await keepFolder(
    context.store,
    'tiles',
    key,
    async (draft) => {
      // The id is filled in where the tiles are published (src/integration/service-info.ts).
      const { scratch } = context.store;
      const job = { path, composedFrom, folder: draft, id: view.id, scratch };
      await tilePicture({ ...job, ...options, frame });
    },
    context.tally,
  );
  const info = infoSchema.parse(JSON.parse(await readFile(join(folder, 'info.json'), 'utf8')));
  return { ...view, tiles: key, sizes: info.sizes };
}

function frameOf(
  homography: Homography | null,
  radial: Radial | null,
  { width, height }: PlannedSize,
) {
  return homography ? { homography, width, height, ...(radial ? { radial } : {}) } : undefined;
}

interface PlannedSize {
  readonly width: number;
  readonly height: number;
}

/** What is written into the whole pictures: whose they are and what they show. */
export function pictureRights(
  { plate: { record } }: CombinedPlate,
  view: Pick<ViewResult, 'reading'>,
  { collection }: StageContext,
): PictureRights {
  const { positive, negative } = record.description;
  const language = collection?.languages[0] ?? 'x-default';
  return {
    title: { [language]: record.title },
    alt: { [language]: view.reading === 'negative' ? negative : positive },
    rights: { [language]: rightsLabel(record.rights) ?? record.rights },
    credit: record.credit ?? collection?.credit ?? collection?.institution.name ?? null,
    creator: record.maker.map((maker) => maker.name),
    statement: record.rights,
    publicDomain: isPublicDomain(record.rights),
  };
}
