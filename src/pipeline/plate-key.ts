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
    credit: collection?.credit ?? collection?.institution.name ?? null,
  });
}
