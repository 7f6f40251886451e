/** Tiling one file in one way, in a process of its own, measured. */
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';

export interface TilingRun {
  /** User and system time of the whole process, its threads included. */
  readonly cpuSeconds: number;
  /** Largest resident size, 10^6 bytes. */
  readonly residentMegabytes: number;
  /** Largest memory that no file backs, 10^6 bytes. */
  readonly anonymousMegabytes: number;
  /** Largest size of the scratch files, 10^6 bytes. */
  readonly scratchMegabytes: number;
}

/** Ours, sharp's own pyramid without and with conversion of the profile, the command of libvips. */
export type TilingMode = 'ours' | 'plain' | 'plain-icc' | 'vips';

/** @throws Error with what the process said where it failed. */
export function measured(mode: TilingMode, path: string, out: string): TilingRun {
  rmSync(out, { recursive: true, force: true });
  if (mode === 'vips') return measuredVips(path, out);
  const program = join(import.meta.dirname, 'run.ts');
  const run = spawnSync(process.execPath, [program, mode, path, out, `${out}-scratch`], {
    encoding: 'utf8',
  });
  if (run.status !== 0) throw new Error(`Tiling by "${mode}" failed: ${run.stderr}`);
  return JSON.parse(run.stdout) as TilingRun;
}

/** The command line of libvips, its CPU time taken by bash. */
function measuredVips(path: string, out: string): TilingRun {
  const command =
    'TIMEFORMAT="%U %S"; time vips dzsave "$0" "$1" --layout iiif3 --tile-size 512 --suffix ".jpg[Q=85,optimize_coding]"';
  const run = spawnSync('bash', ['-c', command, path, out], { encoding: 'utf8' });
  const times = /([\d.]+) ([\d.]+)\s*$/.exec(run.stderr);
  if (run.status !== 0 || !times) throw new Error(`vips dzsave failed: ${run.stderr}`);
  return {
    cpuSeconds: Number(times[1]) + Number(times[2]),
    residentMegabytes: NaN,
    anonymousMegabytes: NaN,
    scratchMegabytes: 0,
  };
}
