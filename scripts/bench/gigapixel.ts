/**
 * Plates of 900 megapixels (30000 × 30000): a strip TIFF and a tiled TIFF of 16 bits, a JPEG and
 * a TIFF with JPEG in its tiles, each tiled by us and by sharp's own pyramid, which shrinks encoded
 * values. Runs take turns and the least CPU time of each counts, since other work on the machine
 * only ever adds.
 *
 * The plate is a rendered capture, repeated: grain and scratches, neither noise nor flat. The
 * files are written by the `vips` command (12 GB in the temporary folder, for the time being).
 * `BENCH_SIDE` sets the side, `BENCH_TURNS` the turns (default 1), `BENCH_KINDS` the files.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureDemonstration } from '../../src/pipeline/demonstration.ts';
import { findPlaces } from '../../src/pipeline/places.ts';
import { createReporter } from '../../src/pipeline/reporter.ts';
import { lower, type BenchRow } from './row.ts';
import { measured } from './tiling/measured.ts';

const side = Number(process.env['BENCH_SIDE'] ?? 30_000);
const turns = Number(process.env['BENCH_TURNS'] ?? 1);

/** All of them where nothing is said. */
const kinds = (process.env['BENCH_KINDS'] ?? 'strip,tiled,jpeg,packed').split(',');

/** File and options of the kinds, as `vips` takes them. */
const all = {
  strip: 'strip.tif[bigtiff]',
  tiled: 'tiled.tif[bigtiff,tile,tile-width=256,tile-height=256]',
  jpeg: 'picture.jpg[Q=92]',
  packed: 'packed.tif[bigtiff,tile,tile-width=256,tile-height=256,compression=jpeg,Q=92]',
} as const;

/** Kinds that have to be decoded: scratch is no fault of theirs. */
const compressed = ['jpeg', 'packed'];

export default async function gigapixel(): Promise<BenchRow[]> {
  if (spawnSync('vips', ['--version']).error) {
    console.error('The gigapixel files are written by `vips`, which is not installed: left out.');
    return [];
  }
  const folder = mkdtempSync(join(tmpdir(), 'mirrorleaf-bench-'));
  try {
    const repeated = await repeatedCapture(folder);
    const rows: BenchRow[] = [];
    for (const [kind, file] of Object.entries(all)) {
      if (!kinds.includes(kind)) continue;
      const out = join(folder, file);
      execFileSync('vips', ['crop', repeated, out, '0', '0', String(side), String(side)]);
      const path = out.replace(/\[.*/, '');
      rows.push(...compared(kind, path, folder));
      rmSync(path);
    }
    return rows;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The capture again and again, as a file of libvips' own, somewhat larger than asked. */
async function repeatedCapture(folder: string): Promise<string> {
  const places = findPlaces();
  const capture = join(places.content, 'plates/inner-basin/captures/normal.tif');
  if (!existsSync(capture)) {
    await ensureDemonstration(places, createReporter(process.stderr, { quiet: true }));
  }
  const sides = ['width', 'height'].map((name) =>
    Number(execFileSync('vipsheader', ['-f', name, capture], { encoding: 'utf8' })),
  );
  const times = sides.map((pixels) => String(Math.ceil(side / pixels)));
  const repeated = join(folder, 'repeated.v');
  execFileSync('vips', ['replicate', capture, repeated, ...times]);
  return repeated;
}

function compared(kind: string, path: string, folder: string): BenchRow[] {
  // The trees stay until the end: ext4 looks long for inodes after many have been removed.
  const run = (mode: 'ours' | 'plain', turn: number) =>
    measured(mode, path, join(folder, `${kind}-${mode}-${turn}`));
  const pairs = Array.from({ length: turns }, (_, n) => [run('ours', n), run('plain', n)] as const);
  const least = (which: 0 | 1) => Math.min(...pairs.map((pair) => pair[which].cpuSeconds));
  const most = (which: 0 | 1) => Math.max(...pairs.map((pair) => pair[which].anonymousMegabytes));
  const scratch = Math.max(...pairs.map(([ours]) => ours.scratchMegabytes));
  const plain = 'sharp tile(), encoded light';
  return [
    lower('scale', `giga_${kind}_cpu_ratio`, 'x', least(0) / least(1), 1.25, {
      name: `${plain}, CPU s`,
      value: least(1),
    }),
    lower('scale', `giga_${kind}_anon_mb`, 'MB', most(0), 300, { name: plain, value: most(1) }),
    lower('scale', `giga_${kind}_scratch_mb`, 'MB', scratch, compressed.includes(kind) ? null : 0),
  ];
}
