/**
 * All plates of a content folder through all stages. Decides what is already done, shares the
 * rest among threads, and writes one result or one failure for each plate.
 */
import { rm, stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { readContent, type ContentPlate, type ContentResult } from './content.ts';
import { contentLost } from './content/content-lost.ts';
import { mapInTurn } from './content/map-in-turn.ts';
import { openFileDigests } from './file-digests.ts';
import { openReadings, type KeptReadings } from './kept-readings.ts';
import { withShareLock, withWholeLock } from './run-locks.ts';
import { knownState, type PlateState } from './known-state.ts';
import { shareOf, type Costed, type Share } from './share.ts';
import type { Places } from './places.ts';
import { captureDigests, knownPlateKey, plateKey } from './plate-key.ts';
import { lostReport, passingFaults } from './plate-faults.ts';
import { openPlatePool } from './plate-pool.ts';
import type { PlateJob, PlateReport } from './plate-worker.ts';
import type { Reporter } from './reporter.ts';
import {
  failureFile,
  listResults,
  readResults,
  recordFile,
  writeFailure,
  writeResult,
} from './results.ts';
import { WrongUse } from './wrong-use.ts';
import { clearScratch, type Store } from './store.ts';

export interface RunOptions {
  readonly places: Places;
  readonly reporter: Reporter;
  /** Only these plates; all where the list is empty. */
  readonly slugs?: readonly string[];
  /** Plates at the same time; as many as there are cores where nothing is said. */
  readonly jobs?: number | undefined;
  /** The i-th of n parts of the plates, from 1. */
  readonly share?: Share | undefined;
  /** Memory for the objects of one plate's thread; Node's own limit where nothing is said. */
  readonly threadMegabytes?: number | undefined;
  /** What is known of files from before; opened here where nothing is given. */
  readonly readings?: KeptReadings | undefined;
}

export interface RunSummary {
  readonly content: ContentResult;
  readonly plates: readonly PlateState[];
  /** Results that stages made, and that they found ready. */
  readonly made: number;
  readonly found: number;
  readonly seconds: number;
}

/** @throws Error when another build keeps the cache folder too long; WrongUse for unknown slugs. */
export async function runPlates(options: RunOptions): Promise<RunSummary> {
  const { places, reporter, share } = options;
  const onWait = (sentence: string) => {
    reporter.line(sentence);
  };
  const part = share ? `${share.part}-of-${share.of}` : 'all';
  const store: Store = { root: places.cache, scratch: join(places.scratch, part) };
  const work = () => runLocked(options, store);
  return share
    ? withShareLock(places.cache, part, work, { onWait })
    : withWholeLock(places.cache, work, { onWait });
}

/** Plates whose files are looked at side by side. */
const filesAtOnce = 16;

interface Task {
  readonly plate: ContentPlate;
  readonly known: PlateState | null;
}

async function runLocked(options: RunOptions, store: Store): Promise<RunSummary> {
  const started = performance.now();
  const { places, reporter } = options;
  await clearScratch(store);
  const readings = options.readings ?? (await openReadings(places));
  const content = await readContent(places.content, readings);
  const chosen = await choosePlates(content, options);
  const results = new Map(
    (await readResults(places, readings)).map((result) => [result.slug, result]),
  );
  const digests = await openFileDigests(store);
  const { collection } = content;
  const tasks = await mapInTurn(chosen, filesAtOnce, async (plate): Promise<Task> => {
    const key = await knownPlateKey(plate, digests, collection, readings);
    return { plate, known: await knownState(places, plate, key, results.get(plate.slug)) };
  });
  await readings.save();
  const unknown = tasks.filter(({ known }) => known === null);
  const jobs = await mapInTurn(unknown, filesAtOnce, async ({ plate }): Promise<PlateJob> => {
    const files = await captureDigests(plate, digests);
    return { plate, key: plateKey(plate, files, collection), places, store, collection, files };
  });
  await digests.save();
  const all = !options.slugs?.length && !options.share;
  if (all && contentLost(content) === null) await removeAbandoned(places, content);

  const work = await longestFirst(jobs);
  const tally = { made: 0, found: 0 };
  const fresh = await runJobs(work, store, options, (report) => {
    tally.made += report.tally.made;
    tally.found += report.tally.found;
  });
  const plates = tasks.map(({ plate, known }) => known ?? fresh.get(plate.slug)!);
  const seconds = (performance.now() - started) / 1000;
  reporter.line(summarySentence(plates, tally.made, seconds));
  return { content, plates, ...tally, seconds };
}

async function choosePlates(
  content: ContentResult,
  { slugs = [], share }: RunOptions,
): Promise<readonly ContentPlate[]> {
  const missing = slugs.find((slug) => !content.plates.some((p) => p.slug === slug));
  if (missing !== undefined) {
    const known = content.plates.map((p) => p.slug).join(', ');
    throw new WrongUse(`There is no plate "${missing}". The plates are: ${known || 'none'}.`);
  }
  const named = content.plates.filter((plate) => slugs.length === 0 || slugs.includes(plate.slug));
  if (!share) return named;
  const mine = shareOf(await mapInTurn(named, filesAtOnce, costOf), share);
  return named.filter(({ slug }) => mine.has(slug));
}

/** What a capture costs whatever its size, as bytes: it is compared, aligned and described. */
const costOfFile = 2e6;

/** Bytes of the captures, and something for each: every stage's work grows with them. */
async function costOf({ slug, folder, captureFiles }: ContentPlate): Promise<Costed> {
  const sizes = await mapInTurn(captureFiles, filesAtOnce, (name) =>
    stat(join(folder, 'captures', name)).then(
      ({ size }) => size + costOfFile,
      () => 0,
    ),
  );
  return { slug, cost: sizes.reduce((sum, size) => sum + size, 0) };
}

/** The plates that take longest begin, so that at the end all threads have something to do. */
async function longestFirst(jobs: readonly PlateJob[]): Promise<PlateJob[]> {
  const costed = await mapInTurn(jobs, filesAtOnce, async (job) => ({
    job,
    cost: (await costOf(job.plate)).cost,
  }));
  return costed.sort((a, b) => b.cost - a.cost).map(({ job }) => job);
}

/** Results of plates that the content folder no longer has. Their tiles stay for a later clean-up. */
async function removeAbandoned(places: Places, content: ContentResult): Promise<void> {
  const kept = new Set(content.plates.map((plate) => plate.slug));
  for (const slug of await listResults(places)) {
    if (!kept.has(slug)) await rm(join(places.records, slug), { recursive: true, force: true });
  }
}

/** Records on their way to the disk. */
const recordsAtOnce = 16;

async function runJobs(
  work: readonly PlateJob[],
  store: Store,
  { places, reporter, jobs = availableParallelism(), threadMegabytes }: RunOptions,
  onReport: (report: PlateReport) => void,
): Promise<Map<string, PlateState>> {
  const states = new Map<string, PlateState>();
  if (work.length === 0) return states;
  const threads = Math.max(1, Math.min(jobs, work.length));
  let done = 0;
  const pool = openPlatePool(threads, threadMegabytes, (progress) => {
    reporter.step(progress, done, work.length);
  });
  const writing = new Map<string, Promise<void>>();
  const keep = async (job: PlateJob, report: PlateReport) => {
    const { slug } = job.plate;
    const state = await keepOutcome(places, store, job, report);
    states.set(slug, state);
    done += 1;
    reporter.line(`${slug}: ${state.state} (${done} of ${work.length})`);
    writing.delete(slug);
  };
  try {
    // The pool is given no more than it can begin: what waits in it loses its order (measured).
    await mapInTurn(work, threads, async (job) => {
      const report = await pool.run(job).catch((error: unknown) => lostReport(job.plate, error));
      onReport(report);
      // A busy disk takes longer to confirm a record than a thread to make one.
      const kept = keep(job, report);
      // Heard below, and not before another record has been waited for.
      kept.catch(() => undefined);
      writing.set(job.plate.slug, kept);
      if (writing.size >= recordsAtOnce) await Promise.race(writing.values());
    });
    await Promise.all(writing.values());
  } finally {
    await pool.close();
  }
  return states;
}

async function keepOutcome(
  places: Places,
  store: Store,
  { plate: { slug }, key }: PlateJob,
  { outcome }: PlateReport,
): Promise<PlateState> {
  if (outcome.ok) {
    await writeResult(places, store, outcome.result);
    await rm(failureFile(places, slug), { force: true });
    return { slug, state: 'made', findings: outcome.result.findings };
  }
  const findings = [...outcome.findings];
  // What was wrong with the machine and not with the plate may be mended before the next build.
  const passing = findings.some((f) => f.level === 'error' && passingFaults.has(f.code));
  if (passing) await rm(failureFile(places, slug), { force: true });
  else await writeFailure(places, store, { slug, key, findings });
  await rm(recordFile(places, slug), { force: true });
  return { slug, state: 'failed', findings };
}

function summarySentence(plates: readonly PlateState[], made: number, seconds: number): string {
  const count = (state: PlateState['state']) => plates.filter((p) => p.state === state).length;
  const results = made === 1 ? '1 result made' : `${made} results made`;
  return (
    `Plates: ${count('made')} made, ${count('unchanged')} unchanged, ${count('failed')} failed; ` +
    `${results} in ${seconds.toFixed(2)} s.`
  );
}
