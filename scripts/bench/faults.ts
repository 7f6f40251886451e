/**
 * Pulling the plug: a build is killed again and again at random moments, with all its processes.
 * After each kill whatever has a name among the results must be whole, and the captures as they
 * were; at the end one build must give what an undisturbed one gives, byte for byte, pages too.
 *
 * The content is two plates of 0.3 megapixels, not the demonstration, so that 500 kills fall into
 * all stages within half an hour; every 25th build has its pages made as well, and is killed on
 * the way there. `BENCH_KILLS` sets the number (default 500).
 */
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { seeded } from '../../tests/raster/test-pictures.ts';
import { folderDigests } from '../../tests/pipeline/folder-digests.ts';
import { writeSmallContent } from '../../tests/pipeline/small-content.ts';
import type { BenchRow } from './row.ts';

const scripts = join(import.meta.dirname, '..');
/** One build in so many makes pages too. */
const pagesEvery = 25;
const kills = Number(process.env['BENCH_KILLS'] ?? 500);
/** Where the random moments begin: a long run may be made in parts. */
const seed = Number(process.env['BENCH_SEED'] ?? 11);

export default async function faults(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-bench-'));
  try {
    const content = join(folder, 'content');
    await writeSmallContent(content);
    const captures = await folderDigests(content);
    const whole = join(folder, 'whole');
    const timed = async (script: Script) => {
      const started = performance.now();
      await build(script, content, whole).ended;
      return performance.now() - started;
    };
    const duration = { 'plates.ts': await timed('plates.ts'), 'build.ts': await timed('build.ts') };
    const expected = await results(whole);

    const cache = join(folder, 'cache');
    const random = seeded(seed);
    let corrupt = 0;
    let lost = 0;
    let since = 0;
    for (let k = 1; k <= kills; k += 1) {
      // A build that was completed leaves nothing to disturb: begin anew now and then.
      if (since === 8) {
        await rm(cache, { recursive: true, force: true });
        since = 0;
      }
      since += 1;
      const script = k % pagesEvery === 0 ? 'build.ts' : 'plates.ts';
      const { child, ended } = build(script, content, cache);
      await Promise.race([sleep(random() * duration[script]), ended]);
      try {
        process.kill(-child.pid!, 'SIGKILL');
      } catch {
        // It had ended.
      }
      await ended;
      const found = await folderDigests(join(cache, 'tiles'));
      for (const [path, digest] of Object.entries(found))
        if (expected.tiles[path] !== digest) corrupt += 1;
      if (JSON.stringify(await folderDigests(content)) !== JSON.stringify(captures)) lost += 1;
      if (k % 10 === 0) console.error(`${k} kills: ${corrupt} corrupt, ${lost} lost`);
    }
    await build('build.ts', content, cache).ended;
    const last = await results(cache);
    if (JSON.stringify(last.tiles) !== JSON.stringify(expected.tiles)) corrupt += 1;
    const files = Object.entries(expected.exhibit);
    const others = Object.keys(last.exhibit).length - files.length;
    const differing = files.filter(([path, digest]) => last.exhibit[path] !== digest).length;
    return [
      row('kills', kills, null),
      row('corrupt_results', corrupt, 0),
      row('lost_captures', lost, 0),
      row('exhibit_files_differing', differing + Math.abs(others), 0),
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function row(name: string, value: number, goal: number | null): BenchRow {
  const better = name === 'kills' ? 'higher' : 'lower';
  return { group: 'faults', name, value, unit: 'times', reference: null, goal, better };
}

type Script = 'plates.ts' | 'build.ts';

async function results(cache: string) {
  return {
    tiles: await folderDigests(join(cache, 'tiles')),
    exhibit: await folderDigests(join(cache, 'exhibit')),
  };
}

/** A process group of its own, so that a kill takes Astro's process along. */
function build(script: Script, content: string, cache: string) {
  const child = spawn(process.execPath, [join(scripts, script), '--quiet'], {
    env: {
      ...process.env,
      MIRRORLEAF_CONTENT: content,
      MIRRORLEAF_CACHE: cache,
      MIRRORLEAF_OUT: join(cache, 'exhibit'),
    },
    stdio: 'ignore',
    detached: true,
  });
  const ended = new Promise<void>((resolve) => {
    child.on('exit', () => {
      resolve();
    });
  });
  return { child, ended };
}
