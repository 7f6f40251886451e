/** One plate in a thread of its own, so that two plates use two cores. */
import { parentPort } from 'node:worker_threads';
import type { CollectionRecord } from '../records/collection.ts';
import type { ContentPlate } from './content.ts';
import type { Places } from './places.ts';
import { crash } from './plate-faults.ts';
import { runStages, type PlateOutcome } from './plate-stages.ts';
import type { Store, StoreTally } from './store.ts';
import { join } from 'node:path';

export interface PlateJob {
  readonly plate: ContentPlate;
  readonly key: string;
  readonly places: Places;
  readonly store: Store;
  readonly collection: CollectionRecord | null;
  /** SHA-256 of each capture file by its name in `captures/`. */
  readonly files: Readonly<Record<string, string | null>>;
}

export interface PlateReport {
  readonly outcome: PlateOutcome;
  readonly tally: StoreTally;
}

export default async function runPlate(job: PlateJob): Promise<PlateReport> {
  const { plate, key, places, store, collection, files } = job;
  const tally = { made: 0, found: 0 };
  const known = new Map(
    Object.entries(files).map(([name, digest]) => [join(plate.folder, 'captures', name), digest]),
  );
  const digests = {
    of: (path: string) => {
      const digest = known.get(path);
      return digest ? Promise.resolve(digest) : Promise.reject(new Error('it cannot be opened'));
    },
    save: () => Promise.resolve(),
  };
  const progress = (label: string) => parentPort?.postMessage({ progress: label });
  try {
    const context = { places, store, digests, tally, collection, progress };
    return { outcome: await runStages(plate, key, context), tally };
  } catch (error) {
    return { outcome: { ok: false, findings: [...plate.findings, crash(plate, error)] }, tally };
  }
}
