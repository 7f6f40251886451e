/**
 * Pulling the plug: a build is killed again and again at random moments. After each kill
 * whatever has a name among the results must be whole, and the captures as they were; at the
 * end one build must give what an undisturbed one gives, byte for byte.
 *
 * `BENCH_KILLS` sets the number (default 500; about two seconds each on two cores).
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

const plates = join(import.meta.dirname, '..', 'plates.ts');
const kills = Number(process.env['BENCH_KILLS'] ?? 500);

export default async function faults(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-bench-'));
  try {
    const content = join(folder, 'content');
    await writeSmallContent(content);
    const captures = await folderDigests(content);
    const whole = join(folder, 'whole');
    const started = performance.now();
    await build(content, whole).ended;
    const duration = performance.now() - started;
    const expected = await folderDigests(join(whole, 'tiles'));

    const cache = join(folder, 'cache');
    const random = seeded(11);
    let corrupt = 0;
    let lost = 0;
    let since = 0;
    for (let k = 0; k < kills; k += 1) {
      // A build that was completed leaves nothing to disturb: begin anew now and then.
      if (since === 8) {
        await rm(cache, { recursive: true, force: true });
        since = 0;
      }
      since += 1;
      const { child, ended } = build(content, cache);
      await Promise.race([sleep(random() * duration), ended]);
      child.kill('SIGKILL');
      await ended;
      const found = await folderDigests(join(cache, 'tiles'));
      for (const [path, digest] of Object.entries(found))
        if (expected[path] !== digest) corrupt += 1;
      if (JSON.stringify(await folderDigests(content)) !== JSON.stringify(captures)) lost += 1;
    }
    await build(content, cache).ended;
    const last = await folderDigests(join(cache, 'tiles'));
    if (JSON.stringify(last) !== JSON.stringify(expected)) corrupt += 1;
    return [
      row('kills', kills, null),
      row('corrupt_results', corrupt, 0),
      row('lost_captures', lost, 0),
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function row(name: string, value: number, goal: number | null): BenchRow {
  const better = name === 'kills' ? 'higher' : 'lower';
  return { group: 'faults', name, value, unit: 'times', reference: null, goal, better };
}

function build(content: string, cache: string) {
  const child = spawn(process.execPath, [plates, '--quiet'], {
    env: { ...process.env, MIRRORLEAF_CONTENT: content, MIRRORLEAF_CACHE: cache },
    stdio: 'ignore',
  });
  const ended = new Promise<void>((resolve) => {
    child.on('exit', () => {
      resolve();
    });
  });
  return { child, ended };
}
