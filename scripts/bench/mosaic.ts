/**
 * Joining close-ups: where the renderer had them, what their seams show, and the memory that a
 * mosaic of 900 megapixels takes (5 GB of close-ups are written to the temporary folder for it).
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { project } from '../../src/imaging/conventions.ts';
import { median } from '../../src/imaging/inspect/quantile.ts';
import { assembleMosaic } from '../../src/imaging/mosaic/assemble.ts';
import { startSurvey } from '../../src/imaging/mosaic/survey.ts';
import { compose, enlargement } from '../../src/imaging/registration/homography.ts';
import {
  luminanceOf,
  photographed,
  renderCloseUps,
} from '../../tests/imaging/mosaic/rendered-close-ups.ts';
import type { GigaRun } from './mosaic/giga.ts';
import { lower, type BenchRow } from './row.ts';

export default function mosaic(): BenchRow[] {
  const { geometric, step } = rendered();
  const giga = gigaRun();
  return [
    lower('mosaic', 'geometric_median_px', 'px', geometric, 0.3),
    lower('mosaic', 'seam_step_percent', '%', step, 1),
    lower('mosaic', 'giga_anon_mb', 'MB', giga.anonymousMegabytes, 1000),
  ];
}

/** Three by three close-ups of 1400 x 1050 pixels of an ordinary plate, scratches and all. */
function rendered(): { readonly geometric: number; readonly step: number } {
  const shot = renderCloseUps(21, { width: 1400, height: 1050 });
  const tiles = shot.tiles.map((tile, i) => ({ ...tile, file: String(i) }));
  const surveyor = startSurvey(tiles, shot.overlap);
  for (const [i, { data, width, height }] of tiles.entries()) {
    surveyor.add(i, luminanceOf(data, width, height));
  }
  const { base } = shot;
  const photo = photographed(shot.plate, base, shot.lighting, { noise: 1, seed: 7 });
  const plane = luminanceOf(photo, base.width, base.height);
  const made = assembleMosaic(tiles, surveyor.finish(), { plane, pixelsPerMillimetre: null });
  if (!made?.hung.ok) throw new Error('The rendered mosaic was not joined.');
  const { scale } = made.hung;
  const errors = made.members.flatMap((t, k) => {
    const exact = compose(enlargement(scale), tiles[t].toBase);
    return Array.from({ length: 400 }, (_, n) => {
      const [x, y] = [((n % 20) + 0.5) * 70, (Math.floor(n / 20) + 0.5) * 52];
      const [ax, ay] = project(exact, x, y);
      const [bx, by] = project(made.placement.maps[k], x, y);
      return Math.hypot(ax - bx, ay - by);
    });
  });
  return { geometric: median(errors), step: 100 * made.steps.largest };
}

function gigaRun(): GigaRun {
  const folder = mkdtempSync(join(tmpdir(), 'mirrorleaf-bench-'));
  const program = join(import.meta.dirname, 'mosaic/giga.ts');
  try {
    const run = (mode: string): string => {
      const done = spawnSync(process.execPath, [program, mode, folder], { encoding: 'utf8' });
      if (done.status !== 0) throw new Error(`The large mosaic failed: ${done.stderr}`);
      return done.stdout;
    };
    run('write');
    return JSON.parse(run('join')) as GigaRun;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
