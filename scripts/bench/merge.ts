/**
 * How well and how fast brackets are merged: rendered scenes of unknown noise, marks that are
 * rounded as shutters have them; and the recovery of an unknown response beside OpenCV's
 * `createCalibrateDebevec` and `createMergeDebevec`, on one thread each, at 5 x 12 megapixels.
 */
import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { median, quantile } from '../../src/imaging/inspect/quantile.ts';
import { renderBracket } from '../../src/imaging/render/test-bracket.ts';
import { makeBracket } from '../../src/pipeline/combine/bracket-folder.ts';
import { openFloatRows } from '../../src/raster/float-rows.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import type { BenchRow } from './row.ts';

const run = promisify(execFile);
const folder = join(import.meta.dirname, 'merge');
const python = '/usr/bin/python3';
const seconds = [1 / 64, 1 / 16, 1 / 4, 1, 4];
const marked = [1 / 60, 1 / 15, 1 / 4, 1, 4];
const scenes = [11, 12, 13, 14];
/** The response bracket is rendered small and repeated to 12 megapixels: 4 x 4 of 1000 x 750. */
const [tileWidth, tileHeight, repeats] = [1000, 750, 4];

interface Errors {
  readonly median: number;
  readonly p95: number;
}

/** Over light between the noise and the clip level; one factor for the whole is free. */
function errorsOf(
  merged: ArrayLike<number>,
  truth: Float32Array,
  low: number,
  high: number,
): Errors {
  const ratios: number[] = [];
  for (let i = 0; i < truth.length; i += 3) {
    if (truth[i] > low && truth[i] < high) ratios.push(merged[i] / truth[i]);
  }
  // What could not be held although it lies in the range counts as wholly wrong.
  const factor = median(ratios.filter((r) => Number.isFinite(r)));
  const errors = ratios.map((r) => (Number.isFinite(r) ? Math.abs(r / factor - 1) : 1));
  return { median: median(errors), p95: quantile(errors, 0.95) };
}

async function renderedScene(scratch: string, seed: number): Promise<Errors> {
  const [width, height] = [900, 675];
  const { frames, truth } = renderBracket(seed, { width, height, seconds });
  const place = join(scratch, `scene-${seed}`);
  mkdirSync(place);
  const paths = frames.map((_, k) => join(place, `frame-${k}.tif`));
  for (const [k, data] of frames.entries()) {
    await writePicture(paths[k], {
      ...{ width, height, channels: 3, depth: 16, data, profile: 'srgb', format: 'tiff' },
    });
  }
  await makeBracket(place, { paths, marked, standing: 2, unknownCurve: false, scratch });
  const merge = JSON.parse(readFileSync(join(place, 'merge.json'), 'utf8')) as {
    frames: { seconds: number }[];
    floor: number;
    ceiling: number;
  };
  const rows = await openFloatRows(join(place, 'radiance.tif'));
  const merged = new Float32Array(width * height * 3);
  for await (const { data, y } of rows.batches(32)) merged.set(data, y * width * 3);
  await rows.close();
  const unit = merge.frames[2].seconds;
  return errorsOf(merged, truth, merge.floor / unit, merge.ceiling / unit);
}

interface Recovery {
  readonly ours: Errors;
  readonly ourCpu: number;
  readonly theirs: Errors;
  readonly theirCpu: number;
}

/** Null where Debian's Python is not there. */
async function recovery(scratch: string): Promise<Recovery | null> {
  if (!existsSync(python)) return null;
  const small = { width: tileWidth, height: tileHeight, seconds, depth: 8 as const };
  // A curve that nobody knows: neither a plain power nor sRGB.
  const curve = (v: number) => (1.09 * v ** 0.42) / (1 + 0.09 * v ** 0.42);
  const { frames, truth } = renderBracket(21, { ...small, curve });
  for (const [k, data] of frames.entries()) {
    writeFileSync(join(scratch, `frame-${k}.raw`), repeated(data as Uint8Array));
  }
  const [width, height] = [tileWidth * repeats, tileHeight * repeats];
  const shape = { width, height, seconds, samples: 300 };
  writeFileSync(join(scratch, 'shape.json'), JSON.stringify(shape));
  const ours = await answer<{ calibrate: number; merge: number; floor: number }>(process.execPath, [
    join(folder, 'ours.ts'),
    scratch,
  ]);
  const theirs = await answer<{ calibrate: number; merge: number }>(python, [
    ...[join(folder, 'beside.py'), scratch],
  ]);
  const [low, high] = [0.004 / seconds[4], 0.9 / seconds[0]];
  return {
    ours: errorsOf(firstTile(join(scratch, 'ours.raw')), truth, low, high),
    ourCpu: ours.calibrate + ours.merge,
    theirs: errorsOf(firstTile(join(scratch, 'merged.raw')), truth, low, high),
    theirCpu: theirs.calibrate + theirs.merge,
  };
}

async function answer<T>(program: string, parameters: readonly string[]): Promise<T> {
  const { stdout } = await run(program, parameters);
  return JSON.parse(stdout) as T;
}

function repeated(data: Uint8Array): Uint8Array {
  const line = tileWidth * 3;
  const all = new Uint8Array(data.length * repeats * repeats);
  for (let y = 0; y < tileHeight * repeats; y += 1) {
    const row = data.subarray((y % tileHeight) * line, ((y % tileHeight) + 1) * line);
    for (let k = 0; k < repeats; k += 1) all.set(row, (y * repeats + k) * line);
  }
  return all;
}

/** The top-left repeat of a large float picture. */
function firstTile(path: string): Float32Array {
  const bytes = readFileSync(path);
  const all = new Float32Array(bytes.buffer, bytes.byteOffset, bytes.length / 4);
  const line = tileWidth * 3;
  const out = new Float32Array(line * tileHeight);
  for (let y = 0; y < tileHeight; y += 1) {
    out.set(all.subarray(y * line * repeats, y * line * repeats + line), y * line);
  }
  return out;
}

export default async function (): Promise<BenchRow[]> {
  const scratch = mkdtempSync(join(tmpdir(), 'mirrorleaf-merge-'));
  try {
    const errors: Errors[] = [];
    for (const seed of scenes) errors.push(await renderedScene(scratch, seed));
    const beside = await recovery(scratch);
    return rows(errors, beside);
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

function rows(errors: readonly Errors[], beside: Recovery | null): BenchRow[] {
  const name = 'OpenCV createCalibrateDebevec and createMergeDebevec, 300 samples, one thread';
  const row = (
    name: string,
    value: number,
    goal: number | null,
    reference: BenchRow['reference'] = null,
    unit = '',
  ): BenchRow => ({ group: 'merge', name, value, unit, reference, goal, better: 'lower' });
  // The worst of the scenes: a mean would hide one that fails.
  const worst = (of: (e: Errors) => number) => Math.max(...errors.map(of));
  const told = (value: number) => ({ name, value });
  return [
    row(
      'median_relative_error',
      worst((e) => e.median),
      0.03,
    ),
    row(
      'p95_relative_error',
      worst((e) => e.p95),
      0.1,
    ),
    ...(beside
      ? [
          row(
            'response_median_relative_error',
            ...([beside.ours.median, beside.theirs.median, told(beside.theirs.median)] as const),
          ),
          row(
            'response_p95_relative_error',
            ...([beside.ours.p95, beside.theirs.p95, told(beside.theirs.p95)] as const),
          ),
          row('cpu_5x12mp_s', beside.ourCpu, null, told(beside.theirCpu), 's'),
          row('cpu_ratio_opencv', beside.ourCpu / beside.theirCpu, 0.5, told(beside.theirCpu)),
        ]
      : []),
  ];
}
