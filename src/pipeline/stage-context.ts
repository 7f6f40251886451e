/** What every stage is given besides its plate. */
import type { CollectionRecord } from '../records/collection.ts';
import type { FileDigests } from './file-digests.ts';
import type { Places } from './places.ts';
import type { Store, StoreTally } from './store.ts';

export interface StageContext {
  readonly places: Places;
  readonly store: Store;
  readonly digests: FileDigests;
  /** Counts what was made and what was found ready. */
  readonly tally: StoreTally;
  readonly collection: CollectionRecord | null;
  /** Told what is being done, for the progress line. */
  readonly progress: (label: string) => void;
}
