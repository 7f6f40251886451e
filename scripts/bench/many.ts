/**
 * Ten thousand plates: what the first build takes, and then one of which a sentence has changed,
 * three times. Plates are small and share their captures, so that the stages do their work once
 * and what is measured is what comes again with every plate. `BENCH_PLATES` sets the number.
 *
 * What linking tiles costs is told by the time of all pages made anew over that of the same pages
 * without tiles: the folders of the tiles are then empty. Both follow builds that have read and
 * checked every text, which the first one has not.
 */
import { execFile, spawn } from 'node:child_process';
import { appendFile, mkdir, readdir, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { promisify } from 'node:util';
import { findPlaces, type Places } from '../../src/pipeline/places.ts';
import { tiltFolder } from '../../src/pipeline/tilt-stills.ts';
import { manyPlates } from './publish/many-plates.ts';
import { lower, type BenchRow } from './row.ts';

const count = Number(process.env['BENCH_PLATES'] ?? 10_000);
const scripts = join(import.meta.dirname, '..');
const changed = 'plate-0500';
const changeCount = 3;
/** Longer than a file must have been left alone before what was read of it is kept. */
const settled = 3_000;

export default async function many(): Promise<BenchRow[]> {
  // Beside the project: results, pages and exhibit on one disk, as with a museum.
  const home = join(scripts, '..', '.cache', 'bench');
  await mkdir(home, { recursive: true });
  const folder = await manyPlates(count, home);
  const places = findPlaces({
    content: join(folder, 'content'),
    cache: join(folder, 'cache'),
    out: join(folder, 'exhibit'),
  });
  try {
    const plates = await run('plates.ts', places);
    const first = await run('build.ts', places);
    const changes: Run[] = [];
    for (let k = 0; k < changeCount; k += 1) changes.push(await changeOne(places, k));
    const [, middle, slowest] = changes.sort((a, b) => a.seconds - b.seconds);
    await forgetPages(places);
    const anew = await run('build.ts', places);
    await emptyTiles(places);
    await forgetPages(places);
    const bare = await run('build.ts', places);
    const name = `many_${count}`;
    return [
      lower('scale', `${name}_stages_s`, 's', plates.seconds, null),
      lower('scale', `${name}_first_pages_s`, 's', first.seconds, null),
      lower('scale', `${name}_first_mb`, 'MB', Math.max(plates.megabytes, first.megabytes), null),
      lower('scale', `${name}_one_changed_s`, 's', middle.seconds, 20, {
        name: 'median; the slowest of three, s',
        value: Number(slowest.seconds.toFixed(1)),
      }),
      lower('scale', `${name}_one_changed_cpu_s`, 's', middle.cpuSeconds, null),
      lower('scale', `${name}_one_changed_mb`, 'MB', slowest.megabytes, null),
      lower('scale', `${name}_link_ratio`, 'x', anew.seconds / bare.seconds, 1.1, {
        name: 'the same without tiles, s',
        value: Math.round(bare.seconds),
      }),
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** @throws Error if the change is not on the plate's page. */
async function changeOne(places: Places, k: number): Promise<Run> {
  const sentence = `One more sentence, number ${k + 1}.`;
  await appendFile(join(places.content, 'plates', changed, 'plate.md'), `\n${sentence}\n`);
  await quietDisk();
  await sleep(settled);
  const taken = await run('build.ts', places);
  const page = await readFile(join(places.out, 'plates', changed, 'index.html'), 'utf8');
  if (!page.includes(sentence)) throw new Error('The changed plate was not made.');
  return taken;
}

/** A museum builds again some other day: the disk has long written what was made and removed. */
const quietDisk = () => promisify(execFile)('sync');

async function forgetPages({ pages, out }: Places): Promise<void> {
  for (const made of [pages, out]) await rm(made, { recursive: true, force: true });
  await quietDisk();
}

/** Empties the folders of tiles and stills. */
async function emptyTiles({ cache, tiles }: Places): Promise<void> {
  for (const kept of [tiles, join(cache, tiltFolder)]) {
    for (const name of await readdir(kept)) {
      for (const file of await readdir(join(kept, name))) {
        if (file === 'info.json') continue;
        await rm(join(kept, name, file), { recursive: true });
      }
    }
  }
}

interface Run {
  readonly seconds: number;
  /** Of this process and all that it began. */
  readonly cpuSeconds: number;
  /** The most that all of them together had in memory, 10^6 bytes. */
  readonly megabytes: number;
}

async function run(script: string, { content, cache, out }: Places): Promise<Run> {
  const started = performance.now();
  const child = spawn(process.execPath, [join(scripts, script), '--quiet'], {
    env: {
      ...process.env,
      MIRRORLEAF_CONTENT: content,
      MIRRORLEAF_CACHE: cache,
      MIRRORLEAF_OUT: out,
    },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  let code: number | null | undefined;
  child.on('exit', (ended) => (code = ended));
  let most = 0;
  let cpuSeconds = 0;
  while (code === undefined) {
    const now = await processTree(child.pid!);
    most = Math.max(most, now.megabytes);
    cpuSeconds = Math.max(cpuSeconds, now.cpuSeconds);
    await sleep(250);
  }
  if (code !== 0) throw new Error(`${script} ended with code ${String(code)}.`);
  return { seconds: (performance.now() - started) / 1000, cpuSeconds, megabytes: most };
}

/** Memory and processor time of a process and those it began (Linux; nothing elsewhere). */
async function processTree(root: number): Promise<{ megabytes: number; cpuSeconds: number }> {
  const found = await readdir('/proc').catch(() => [] as string[]);
  const stats = await Promise.all(
    found.filter((name) => /^\d+$/.test(name)).map((pid) => statOf(Number(pid))),
  );
  const tree = new Set([root]);
  const processes = stats.filter((stat) => stat !== null).sort((a, b) => a.pid - b.pid);
  for (const { pid, parent } of processes) if (tree.has(parent)) tree.add(pid);
  const own = processes.filter(({ pid }) => tree.has(pid));
  return {
    megabytes: own.reduce((sum, { megabytes }) => sum + megabytes, 0),
    cpuSeconds: own.reduce((sum, stat) => sum + stat.cpuSeconds, 0),
  };
}

/** From /proc/PID/stat (proc(5)): parent, ticks of 10 ms its own and its ended children's, pages of 4 kB. */
async function statOf(pid: number) {
  const text = await readFile(`/proc/${pid}/stat`, 'utf8').catch(() => '');
  const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
  if (fields.length < 22) return null;
  const ticks = fields.slice(11, 15).reduce((sum, field) => sum + Number(field), 0);
  return {
    pid,
    parent: Number(fields[1]),
    cpuSeconds: ticks / 100,
    megabytes: (Number(fields[21]) * 4096) / 1e6,
  };
}
