/** One plate in a thread of its own, so that two plates use two cores. */
import { join } from 'node:path';
import { parentPort } from 'node:worker_threads';
import type { CollectionRecord } from '../records/collection.ts';
import type { ContentPlate } from './content.ts';
import type { Places } from './places.ts';
import { crash } from './plate-faults.ts';
import { runStages, type PlateOutcome } from './plate-stages.ts';
import type { Store, StoreTally } from './store.ts';
import { watchFiles } from './watch-files.ts';

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
  const { plate, key, places, collection, files } = job;
  const captures = new Map(
    Object.keys(files).map((name) => [name, join(plate.folder, 'captures', name)]),
  );
  const store = { ...job.store, sound: await watchFiles(captures) };
  const tally = { made: 0, found: 0 };
  const known = new Map(
    Object.entries(files).map(([name, digest]) => [captures.get(name)!, digest]),
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
    // A file that changed under a stage's hands makes it stop in any way.
    const cause = await store.sound().then(
      () => error,
      (changed: unknown) => changed,
    );
    return { outcome: { ok: false, findings: [...plate.findings, crash(plate, cause)] }, tally };
  }
}
