/** Previews from the store into the finished folder, beside their plates' pages. */
import { join } from 'node:path';
import { readContent } from '../pipeline/content.ts';
import type { Places } from '../pipeline/places.ts';
import { makePreviews, previewFile, previewFolder } from '../pipeline/previews.ts';
import { linkOrCopy } from './link-tiles.ts';

export async function linkPreviews(
  places: Places,
  published: ReadonlySet<string>,
  out: string,
): Promise<void> {
  const previews = await makePreviews(places, await readContent(places.content));
  for (const [slug, key] of previews) {
    if (!published.has(slug)) continue;
    const target = join(out, 'plates', slug, previewFile);
    await linkOrCopy(join(places.cache, previewFolder, key, previewFile), target);
  }
}
