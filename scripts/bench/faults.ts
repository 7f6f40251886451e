/**
 * Pulling the plug: builds are killed again and again at random moments, with all their
 * processes. What must hold after each kill, and at the end, is in `faults/kill-builds.ts`.
 *
 * The content is two plates of 0.2 megapixels, of two tiles each, so that hundreds of kills fall
 * into all stages and pages (200 took 55 minutes on two cores that much else used);
 * `BENCH_CONTENT=demonstration` takes the demonstration, all of whose stages are then made from
 * nothing (its captures must have been rendered). `BENCH_KILLS` sets the number,
 * `BENCH_SEED` the moments: a long run may be made in parts.
 */
import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { writeSmallContent } from '../../tests/pipeline/small-content.ts';
import { killBuilds } from './faults/kill-builds.ts';
import { lower, type BenchRow } from './row.ts';

const demonstration = process.env['BENCH_CONTENT'] === 'demonstration';
const kills = Number(process.env['BENCH_KILLS'] ?? (demonstration ? 20 : 500));
const seed = Number(process.env['BENCH_SEED'] ?? 11);

export default async function faults(): Promise<BenchRow[]> {
  if (!existsSync('/proc/self/stat')) {
    console.error('faults: skipped, since the work of a process can be read on Linux alone.');
    return [];
  }
  const folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-bench-'));
  try {
    const content = join(folder, 'content');
    if (demonstration) {
      // A second name for each file, in a folder of its own. Without the mark by which captures
      // are the renderer's: here they are a museum's, and nothing may write them.
      await promisify(execFile)('cp', ['-al', join(import.meta.dirname, '../../content'), content]);
      for (const plate of await readdir(join(content, 'plates')))
        await rm(join(content, 'plates', plate, '.gitignore'), { force: true });
    } else await writeSmallContent(content, { width: 530, height: 430 });
    const count = await killBuilds({
      content,
      folder,
      kills,
      seed,
      reach: demonstration ? 20_000 : Infinity,
      // By work, three kills in a hundred would meet the pages of the demonstration.
      pagesShare: demonstration ? 0.25 : null,
      part: 100,
      log: (line) => {
        console.error(line);
      },
    });
    const name = demonstration ? 'demonstration_' : '';
    const row = (what: string, value: number) =>
      lower('faults', `${name}${what}`, 'times', value, 0);
    return [
      {
        group: 'faults',
        name: `${name}kills`,
        value: count.plates + count.pages,
        unit: 'times',
        reference: { name: 'of them while pages were made', value: count.pages },
        goal: null,
        better: 'higher',
      },
      row('corrupt_results', count.corrupt),
      row('lost_captures', count.lost),
      row('half_published', count.halfPublished),
      row('exhibit_files_differing', count.differing),
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
