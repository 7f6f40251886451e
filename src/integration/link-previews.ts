/** Previews from the store into the finished folder, beside their plates' pages. */
import { join } from 'node:path';
import type { ContentResult } from '../pipeline/content.ts';
import type { Places } from '../pipeline/places.ts';
import { makePreviews, previewFile, previewFolder } from '../pipeline/previews.ts';
import type { PublishedPlate } from '../publish/published-plates.ts';
import { linkOrCopy } from './link-tiles.ts';

export async function linkPreviews(
  places: Places,
  { collection }: ContentResult,
  plates: readonly PublishedPlate[],
  out: string,
): Promise<void> {
  for (const [slug, key] of await makePreviews(places, plates, collection)) {
    const target = join(out, 'plates', slug, previewFile);
    linkOrCopy(join(places.cache, previewFolder, key, previewFile), target);
  }
}
