/**
 * How well captures are brought onto each other: 200 rendered pairs with a seed that was never
 * used to choose anything, 20 pairs of different plates, one pair of 24 and one of 100 megapixels; beside them
 * OpenCV's ECC from a near-true start and scikit-image's phase correlation on some of the pairs.
 */
import { execFile, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { promisify } from 'node:util';
import type { LargeResult } from './align/large.ts';
import { alignFigures, quantile } from './align/statistics.ts';
import type { PairResult } from './align/worker.ts';
import type { BenchRow } from './row.ts';

const run = promisify(execFile);
const folder = join(import.meta.dirname, 'align');

/** The held-out seed; 1 to 99 were used for tuning. `MIRRORLEAF_ALIGN_*` gives others. */
const seed = Number(process.env['MIRRORLEAF_ALIGN_SEED'] ?? 20_263);
const pairs = Number(process.env['MIRRORLEAF_ALIGN_PAIRS'] ?? 200);
const foreign = Math.ceil(pairs / 10);
const processes = 2;
/** Ordinary pairs that the reference programs get. */
const besideCount = 12;
const python = '/usr/bin/python3';

async function runPart(part: number): Promise<PairResult[]> {
  const parameters = [seed, pairs, foreign, part, processes].map(String);
  const child = spawn(process.execPath, [join(folder, 'worker.ts'), ...parameters], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  const results: PairResult[] = [];
  for await (const line of createInterface({ input: child.stdout })) {
    results.push(JSON.parse(line) as PairResult);
    if (process.env['MIRRORLEAF_ALIGN_LINES']) console.error(line);
  }
  const code = await ended;
  if (code !== 0) throw new Error(`The share ${part} of the pairs ended with code ${code}.`);
  return results;
}

interface Beside {
  readonly index: number;
  readonly ecc: number | null;
  readonly eccCpu: number;
  readonly phase: number;
  readonly phaseCpu: number;
}

/** Null where Debian's Python is not there. */
async function runBeside(scratch: string): Promise<readonly Beside[] | null> {
  if (!existsSync(python)) return null;
  const indices = Array.from({ length: pairs }, (_, i) => i).filter((i) => i % 3 !== 2);
  const chosen = indices.slice(0, besideCount).map(String);
  await run(process.execPath, [join(folder, 'export.ts'), scratch, String(seed), ...chosen]);
  const { stdout } = await run(python, [join(folder, 'beside.py'), scratch]);
  return JSON.parse(stdout) as Beside[];
}

async function runLarge(scratch: string, width: number, height: number): Promise<LargeResult> {
  const script = join(folder, 'large.ts');
  await run(process.execPath, [script, 'render', scratch, String(width), String(height)]);
  const { stdout } = await run(process.execPath, [script, 'measure', scratch]);
  return JSON.parse(stdout) as LargeResult;
}

function row(
  name: string,
  value: number,
  unit: string,
  goal: number | null,
  better: BenchRow['better'],
  reference: BenchRow['reference'] = null,
): BenchRow {
  return { group: 'align', name, value, unit, reference, goal, better };
}

export default async function (): Promise<BenchRow[]> {
  const scratch = mkdtempSync(join(tmpdir(), 'mirrorleaf-align-'));
  try {
    const parts = Array.from({ length: processes }, (_, part) => runPart(part));
    const results = (await Promise.all(parts)).flat();
    const beside = await runBeside(scratch);
    const large = await runLarge(scratch, 6000, 4000);
    const huge = await runLarge(scratch, 11_600, 8_700);
    return rows(results, beside, large, huge);
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

function rows(
  results: readonly PairResult[],
  beside: readonly Beside[] | null,
  large: LargeResult,
  huge: LargeResult,
): BenchRow[] {
  const f = alignFigures(results);
  const ecc = beside?.map((b) => b.ecc ?? Infinity) ?? [];
  const phase = beside?.map((b) => b.phase) ?? [];
  const told = (name: string, value: number) => (beside ? { name, value } : null);
  const eccCpu = quantile(beside?.map((b) => b.eccCpu) ?? [], 0.5);
  const same = results.filter((r) => beside?.some((b) => b.index === r.index));
  const ourCpu = quantile(
    same.map((r) => r.cpuSeconds),
    0.5,
  );
  const eccName = 'OpenCV findTransformECC, gradients, start 2 px off';
  const phaseName = 'scikit-image phase correlation, median, shift alone left';
  return [
    row(
      'ordinary_median_px',
      f.ordinaryMedian,
      'px',
      0.1,
      'lower',
      told(eccName, quantile(ecc, 0.5)),
    ),
    row('ordinary_p95_px', f.ordinaryP95, 'px', 0.3, 'lower', told(eccName, quantile(ecc, 0.95))),
    row(
      'ordinary_accepted_share',
      f.ordinaryAcceptedShare,
      '',
      null,
      'higher',
      told(phaseName, quantile(phase, 0.5)),
    ),
    row('weak_median_px', f.weakMedian, 'px', 0.2, 'lower'),
    row('weak_accepted_share', f.weakAcceptedShare, '', 0.88, 'higher'),
    row('worst_accepted_px', f.worstAccepted, 'px', 1, 'lower'),
    row('flips_caught_share', f.flipsCaughtShare, '', 1, 'higher'),
    row('bound_held_share', f.boundHeldShare, '', 0.95, 'higher'),
    row('polarity_right_share', f.polarityRightShare, '', null, 'higher'),
    row('cpu_24mp_s', large.cpuSeconds, 's', 8, 'lower'),
    row('rss_24mp_mb', large.peakMegabytes, 'MB', 400, 'lower'),
    row('error_24mp_px', large.error ?? NaN, 'px', null, 'lower'),
    row('cpu_100mp_s', huge.cpuSeconds, 's', null, 'lower'),
    row('rss_100mp_mb', huge.peakMegabytes, 'MB', 1000, 'lower'),
    row('error_100mp_px', huge.error ?? NaN, 'px', null, 'lower'),
    row('cpu_ratio_opencv', ourCpu / eccCpu, '', null, 'lower', told(eccName, eccCpu)),
  ];
}
