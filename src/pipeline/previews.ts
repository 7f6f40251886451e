/**
 * The picture that stands for a plate's page elsewhere: both readings side by side. Made from
 * the tiles' whole pictures once, kept by digest. A covered plate has none.
 */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { rightsPacket } from '../raster/rights-packet.ts';
import { sideBySide } from '../raster/side-by-side.ts';
import type { CollectionRecord } from '../records/collection.ts';
import type { PlateRecord } from '../records/plate.ts';
import { previewViews } from '../records/preview-views.ts';
import type { PlateResult, ViewResult } from '../records/result.ts';
import { isPublicDomain, rightsLabel } from '../records/vocabulary.ts';
import { keyOf } from './key.ts';
import type { Places } from './places.ts';
import { keepFolder, type Store } from './store.ts';

/** Raised when the same pictures would give another preview. */
const previewVersion = 1;
/** Size that previews of pages are shown at, pixels. */
export const previewSize = { width: 1200, height: 630 } as const;
const margin = 24;
/** `--velvet` in src/styles/tokens.css. */
const ground = '#16110f';

/** Folder in the store and name within it. */
export const previewFolder = 'previews';
export const previewFile = 'preview.jpg';

interface PreviewedPlate {
  readonly slug: string;
  readonly record: PlateRecord;
  readonly result: PlateResult;
}

/** Make what is missing; the key of each plate's preview by slug. */
export async function makePreviews(
  places: Places,
  plates: readonly PreviewedPlate[],
  collection: CollectionRecord | null,
): Promise<ReadonlyMap<string, string>> {
  const store: Store = { root: places.cache, scratch: places.scratch };
  const keys = new Map<string, string>();
  for (const { slug, record, result } of plates) {
    const views = previewViews(record, result);
    if (views.length === 0) continue;
    const packet = previewPacket(record, collection);
    const tiles = views.map((view) => view.tiles);
    const key = keyOf({ version: previewVersion, tiles, packet, ...previewSize, margin, ground });
    await keepFolder(store, previewFolder, key, async (folder) => {
      const pictures = views.map((view) => wholePicture(places, view));
      const jpeg = await sideBySide({ pictures, ...previewSize, margin, ground, packet });
      await writeFile(join(folder, previewFile), jpeg);
    });
    keys.set(slug, key);
  }
  return keys;
}

function wholePicture(places: Places, { tiles, sizes }: ViewResult): string {
  const size = sizes.find(({ width }) => width >= previewSize.width / 2) ?? sizes[sizes.length - 1];
  return join(places.tiles, tiles, 'full', `${size.width},${size.height}`, '0', 'default.jpg');
}

function previewPacket(record: PlateRecord, collection: CollectionRecord | null): string {
  const language = collection?.languages[0] ?? 'x-default';
  const { positive, negative } = record.description;
  return rightsPacket({
    title: { [language]: record.title },
    alt: { [language]: `${positive} ${negative}` },
    rights: { [language]: rightsLabel(record.rights) ?? record.rights },
    credit: record.credit ?? collection?.credit ?? collection?.institution.name ?? null,
    creator: record.maker.map(({ name }) => name),
    statement: record.rights,
    publicDomain: isPublicDomain(record.rights),
  });
}
