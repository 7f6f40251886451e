/**
 * Tiles from the store into the finished folder, as hard links: no second copy on the disk.
 * Copied where the file system cannot link. Synchronous: a promise for each of three hundred
 * thousand files takes ten times as long as its link (measured). Other work has its turn after
 * each plate.
 */
import {
  copyFileSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Places } from '../pipeline/places.ts';
import { tiltFolder } from '../pipeline/tilt-stills.ts';
import type { PlateResult } from '../records/result.ts';
import { placedInfo, serviceId, type Address } from './service-info.ts';

/** Codes of file systems that cannot link: another device, too many links, not supported. */
const unlinkable = new Set(['EXDEV', 'EMLINK', 'EPERM', 'ENOTSUP', 'ENOSYS', 'EOPNOTSUPP']);

/** The number of files put in place. */
export async function linkTiles(
  places: Places,
  results: readonly PlateResult[],
  out: string,
  address: Address,
): Promise<number> {
  let count = 0;
  for (const { slug, views, pair } of results) {
    await setImmediate();
    if (pair?.stills) {
      const stills = join(places.cache, tiltFolder, pair.stills.folder);
      count += linkFolder(stills, join(out, 'plates', slug, 'tilt'));
    }
    for (const view of views) {
      const from = join(places.tiles, view.tiles);
      const to = join(out, 'plates', slug, 'views', view.id);
      count += linkFolder(from, to);
      const info = readFileSync(join(from, 'info.json'), 'utf8');
      writeFileSync(join(to, 'info.json'), placedInfo(info, serviceId(slug, view.id, address)));
      for (const layer of view.layers) {
        count += linkFolder(join(places.layers, layer.folder), join(to, layer.name));
      }
    }
  }
  return count;
}

/** `info.json` differs from place to place and must not share its bytes; the other is for the build. */
const notLinked = new Set(['info.json', 'steps.json']);

/** All files that are published as they are. */
function linkFolder(from: string, to: string): number {
  mkdirSync(to, { recursive: true });
  let count = 0;
  for (const entry of readdirSync(from, { withFileTypes: true })) {
    const source = join(from, entry.name);
    const target = join(to, entry.name);
    if (entry.isDirectory()) {
      count += linkFolder(source, target);
    } else if (!notLinked.has(entry.name)) {
      linkOrCopy(source, target);
      count += 1;
    }
  }
  return count;
}

/** @param linker Makes the link; another one in tests, for file systems that refuse. */
export function linkOrCopy(
  source: string,
  target: string,
  linker: (from: string, to: string) => void = linkSync,
): void {
  try {
    linker(source, target);
  } catch (error) {
    if (!unlinkable.has((error as NodeJS.ErrnoException).code ?? '')) throw error;
    copyFileSync(source, target);
  }
}
