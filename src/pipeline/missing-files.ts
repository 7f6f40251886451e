/**
 * Whether everything that a result names is in the store. Synchronous: ten thousand plates have
 * some forty thousand such files, and a promise for each costs ten times as long.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { PlateResult } from '../records/result.ts';
import type { Places } from './places.ts';
import { tiltFolder } from './tilt-stills.ts';

/** A sentence for each thing that is missing. */
export function missingFiles(places: Places, { slug, views, pair }: PlateResult): string[] {
  const missing: string[] = [];
  const stills = pair?.stills;
  if (stills && !existsSync(join(places.cache, tiltFolder, stills.folder))) {
    missing.push(`The stills of Tilt of plate "${slug}" are missing.`);
  }
  for (const view of views) {
    if (!existsSync(join(places.tiles, view.tiles, 'info.json'))) {
      missing.push(`The tiles of view "${view.id}" of plate "${slug}" are missing.`);
    }
    for (const { name, folder } of view.layers) {
      if (existsSync(join(places.layers, folder, 'layer.json'))) continue;
      missing.push(`The ${name} planes of view "${view.id}" of plate "${slug}" are missing.`);
    }
  }
  return missing;
}
