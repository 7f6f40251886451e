/**
 * The content folder as the stages see it: every record parsed, every name in it looked up, and
 * whatever is wrong said as a finding. A plate with an error is still listed, so that its
 * findings are heard; the others go on.
 */
import { lstat, realpath } from 'node:fs/promises';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { CollectionRecord } from '../records/collection.ts';
import { finding, type Finding } from '../records/finding.ts';
import type { PageRecord } from '../records/page.ts';
import type { PlateRecord } from '../records/plate.ts';
import type { SittingRecord } from '../records/sitting.ts';
import { collectionFindings } from './content/collection-findings.ts';
import { listFolder } from './content/list-folder.ts';
import { mapInTurn } from './content/map-in-turn.ts';
import { noCollection, readCollection } from './content/read-collection.ts';
import { readOverlays, type ContentOverlay } from './content/read-overlays.ts';
import { readPages } from './content/read-pages.ts';
import { readPlateFolder } from './content/read-plate.ts';
import type { Theme } from './content/read-theme.ts';
import { folderPrint } from './file-print.ts';
import type { KeptReadings } from './kept-readings.ts';

export interface ContentSitting {
  /** `sitting`, or the name of the file under `sittings/` without its ending. */
  readonly id: string;
  /** Relative to the plate's folder. */
  readonly file: string;
  readonly record: SittingRecord;
}

export interface ContentPlate {
  readonly slug: string;
  /** Absolute. */
  readonly folder: string;
  /** Null exactly when a finding of level error says why. */
  readonly record: PlateRecord | null;
  /** The Markdown of plate.md. */
  readonly body: string;
  /** Line of plate.md on which it begins. */
  readonly bodyLine: number;
  /** In the order of their names; without those that could not be read. */
  readonly sittings: readonly ContentSitting[];
  /** Everything in `captures/`, named relative to it, sorted; without what must not be read. */
  readonly captureFiles: readonly string[];
  readonly findings: readonly Finding[];
}

export interface ContentPage {
  readonly kind: 'technique' | 'lesson' | 'page';
  readonly id: string;
  /** Relative to the content folder. */
  readonly file: string;
  readonly record: PageRecord;
  readonly body: string;
  readonly bodyLine: number;
}

export interface ContentResult {
  /** Absolute. */
  readonly folder: string;
  /** Null exactly when a finding of level error says why. */
  readonly collection: CollectionRecord | null;
  readonly collectionBody: string;
  readonly collectionBodyLine: number;
  /** Its looks, where the museum sets them; null where the collection is. */
  readonly theme: Theme | null;
  /** Sorted by slug. */
  readonly plates: readonly ContentPlate[];
  readonly pages: readonly ContentPage[];
  /** The texts of all of them in further languages, without those that have a fault. */
  readonly overlays: readonly ContentOverlay[];
  /** Those that are about no single plate. */
  readonly findings: readonly Finding[];
}

/** Folders that are looked at, without a promise each, between two turns of other work. */
const turnEvery = 32;

/** Folders that are read at the same time. */
const width = 16;

/**
 * Read and cross-check a content folder. Never throws for what is in it.
 *
 * @param readings Plates whose files have not changed are taken from here.
 */
export async function readContent(
  contentFolder: string,
  readings?: KeptReadings,
): Promise<ContentResult> {
  const absent = await absence(contentFolder);
  if (absent) return { ...nothing(contentFolder), findings: [absent] };
  const root = await realpath(contentFolder);
  const findings: Finding[] = [];
  const collection = await readCollection(contentFolder, root);
  findings.push(...collection.findings);
  const { entries, findings: listing } = await listFolder(
    join(contentFolder, 'plates'),
    root,
    '',
    'plates',
  );
  findings.push(...listing);
  const plates: ContentPlate[] = [];
  const kept = keptBy(readings, root);
  await mapInTurn(entries, width, async (entry) => {
    const folder = join(contentFolder, 'plates', entry.name);
    const read = await kept(
      'plate',
      { folder, slug: entry.name, with: '' },
      () => readPlateFolder(folder, entry, root),
      (value) => value.ok && !value.plate.findings.some(({ level }) => level === 'error'),
    );
    if (read.ok) plates.push(read.plate);
    else findings.push(read.finding);
  });
  plates.sort((a, b) => (a.slug < b.slug ? -1 : 1));
  const { pages, findings: pageFaults } = await readPages(contentFolder, root);
  const originals = { folder: contentFolder, ...collection, plates, pages };
  const { overlays, findings: overlayFaults } = await readOverlays(
    originals,
    root,
    (slug, read) => {
      const folder = join(contentFolder, 'plates', slug);
      const languages = (collection.collection?.languages ?? []).join();
      const about = { folder, slug, with: languages };
      return kept('overlays', about, read, ({ findings: faults }) => faults.length === 0);
    },
  );
  const read = { ...originals, overlays };
  findings.push(...pageFaults, ...overlayFaults);
  return { ...read, findings: [...findings, ...collectionFindings(read)] };
}

/** What was read of a plate's folder, from before where nothing in the folder has changed. */
function keptBy(readings: KeptReadings | undefined, root: string) {
  const prints = new Map<string, string | null>();
  return async <T>(
    kind: 'plate' | 'overlays',
    { folder, slug, with: more }: { folder: string; slug: string; with: string },
    read: () => Promise<T>,
    isSound: (value: T) => boolean,
  ): Promise<T> => {
    if (!readings) return read();
    // Other work, such as telling others that a lock is alive, has its turn now and then.
    if (prints.size % turnEvery === 0) await setImmediate();
    const print = prints.get(slug) ?? folderPrint(folder);
    prints.set(slug, print);
    const whole = print === null ? null : [root, folder, more, print].join('\n');
    return readings.of(kind, slug, whole, read, isSound);
  };
}

function nothing(folder: string): Omit<ContentResult, 'findings'> {
  return { folder, ...noCollection([]), plates: [], pages: [], overlays: [] };
}

async function absence(folder: string): Promise<Finding | null> {
  const about = { level: 'error', plate: '', code: 'no-content' } as const;
  const remedy =
    'Name another folder with --content, or make a first plate with `npm run new -- SLUG --from FOLDER`.';
  try {
    const stats = await lstat(await realpath(folder));
    if (stats.isDirectory()) return null;
    return finding({ ...about, message: `The content folder ${folder} is not a folder.`, remedy });
  } catch (error) {
    const { code = 'unknown' } = error as NodeJS.ErrnoException;
    const message = `The content folder ${folder} cannot be opened (${code}).`;
    return finding({ ...about, message, remedy });
  }
}
