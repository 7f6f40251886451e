/**
 * The key of a plate's result: every input that could change it. Equal keys mean that there
 * is nothing to do, and that is found out without decoding a pixel.
 */
import { join } from 'node:path';
import { resultVersion } from '../records/result.ts';
import type { CollectionRecord } from '../records/collection.ts';
import { alignVersion } from './align.ts';
import { combineVersion } from './combine.ts';
import type { ContentPlate } from './content.ts';
import type { FileDigests } from './file-digests.ts';
import { inspectVersion } from './inspect.ts';
import type { KeptReadings } from './kept-readings.ts';
import { keyOf, type KeyPart } from './key.ts';
import { allFiles, readVersion } from './read.ts';
import { tileVersion } from './tile.ts';

const versions = {
  result: resultVersion,
  read: readVersion,
  inspect: inspectVersion,
  align: alignVersion,
  combine: combineVersion,
  tile: tileVersion,
};

/** Digests of all capture files that the sittings name; null for one that cannot be read. */
export async function captureDigests(
  plate: ContentPlate,
  digests: FileDigests,
): Promise<Record<string, string | null>> {
  const names = new Set(
    plate.sittings.flatMap((s) => s.record.captures.flatMap((capture) => allFiles(capture))),
  );
  const entries = await Promise.all(
    [...names].map(async (name) => {
      const path = join(plate.folder, 'captures', name);
      return [name, await digests.of(path).catch(() => null)] as const;
    }),
  );
  return Object.fromEntries(entries);
}

/**
 * The key of a plate from what is known of its files, or worked out.
 *
 * @param readings Where the plate itself was kept, and nothing in its folder has changed, so may
 *   its key be.
 */
export async function knownPlateKey(
  plate: ContentPlate,
  digests: FileDigests,
  collection: CollectionRecord | null,
  readings?: KeptReadings,
): Promise<string> {
  const work = async () => {
    const files = await captureDigests(plate, digests);
    const allRead = Object.values(files).every((digest) => digest !== null);
    return { key: plateKey(plate, files, collection), allRead };
  };
  if (!readings) return (await work()).key;
  const print = readings.printOf('plate', plate.slug);
  const whole = print === null ? null : JSON.stringify([print, versions, creditOf(collection)]);
  const kept = await readings.of('key', plate.slug, whole, work, ({ allRead }) => allRead);
  return kept.key;
}

const creditOf = (collection: CollectionRecord | null): string | null =>
  collection?.credit ?? collection?.institution.name ?? null;

export function plateKey(
  plate: ContentPlate,
  files: Readonly<Record<string, string | null>>,
  collection: CollectionRecord | null,
): string {
  return keyOf({
    versions,
    record: plate.record as unknown as KeyPart,
    sittings: plate.sittings.map(({ id, record }) => ({
      id,
      record: record,
    })),
    findings: plate.findings as unknown as KeyPart,
    files,
    credit: creditOf(collection),
  });
}
