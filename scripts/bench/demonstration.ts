/**
 * The demonstration twice, from nothing: rendered and put through every stage by one thread and
 * by two. Every file must have the same bytes, whoever made which part of it in whatever order.
 *
 * About six minutes on two cores, and one gigabyte in the system's folder for temporary files.
 * `BENCH_PLATES` (slugs with spaces between them) does it for some of the plates alone.
 */
import { cp, mkdtemp, rename, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureDemonstration } from '../../src/pipeline/demonstration.ts';
import { findPlaces } from '../../src/pipeline/places.ts';
import { createReporter } from '../../src/pipeline/reporter.ts';
import { runPlates } from '../../src/pipeline/run.ts';
import { folderDigests } from '../../tests/pipeline/folder-digests.ts';
import { lower, type BenchRow } from './row.ts';

/** None named: all of them. */
const slugs = (process.env['BENCH_PLATES'] ?? '').split(/\s+/).filter((slug) => slug !== '');

const ownContent = join(import.meta.dirname, '..', '..', 'content');

interface Run {
  /** SHA-256 of each file, by its path. */
  readonly captures: Readonly<Record<string, string>>;
  readonly results: Readonly<Record<string, string>>;
  /** Processor seconds. */
  readonly rendering: number;
  readonly stages: number;
}

export default async function demonstration(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-bench-'));
  try {
    const one = await runWith(folder, 1);
    const two = await runWith(folder, 2);
    return [
      figure('captures_compared', 'files', Object.keys(one.captures).length, null),
      figure('captures_differing', 'files', differing(one.captures, two.captures), 0),
      figure('results_compared', 'files', Object.keys(one.results).length, null),
      figure('results_differing', 'files', differing(one.results, two.results), 0),
      figure('rendering_cpu_s', 's', Math.min(one.rendering, two.rendering), null),
      figure('stages_cpu_s', 's', Math.min(one.stages, two.stages), null),
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Both runs stand at the same place, since a result may name its own. */
async function runWith(folder: string, jobs: number): Promise<Run> {
  const places = findPlaces({ content: join(folder, 'content'), cache: join(folder, 'cache') });
  for (const place of [places.content, places.cache]) {
    await rm(place, { recursive: true, force: true });
  }
  await cp(ownContent, places.content, {
    recursive: true,
    filter: (path) => !/[\\/]captures([\\/]|$)/.test(path),
  });
  const reporter = createReporter(process.stderr, { quiet: true });
  const rendering = await cpuSeconds(() => ensureDemonstration(places, reporter, { jobs, slugs }));
  const captures = await folderDigests(join(places.content, 'plates'));
  await rename(join(places.cache, 'demonstration'), join(folder, `scenes-${jobs}`));
  const stages = await cpuSeconds(() => runPlates({ places, reporter, jobs, slugs }));
  // The notes of digests hold the times of this disk's files.
  const results = Object.entries(await folderDigests(places.cache)).filter(
    ([path]) => !path.endsWith('file-digests.json'),
  );
  const rendered = Object.entries(captures).filter(([path]) => /[\\/]captures[\\/]/.test(path));
  return {
    captures: Object.fromEntries(rendered),
    results: Object.fromEntries(results),
    rendering,
    stages,
  };
}

async function cpuSeconds(work: () => Promise<unknown>): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

function differing(
  one: Readonly<Record<string, string>>,
  two: Readonly<Record<string, string>>,
): number {
  const paths = new Set([...Object.keys(one), ...Object.keys(two)]);
  const unlike = [...paths].filter((path) => one[path] !== two[path]);
  for (const path of unlike.slice(0, 20)) console.error(`differs: ${path}`);
  return unlike.length;
}

function figure(name: string, unit: string, value: number, goal: number | null): BenchRow {
  return lower('demonstration', name, unit, value, goal);
}
