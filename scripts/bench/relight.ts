/**
 * Relighting of rendered plates under lamps that no fit has seen, after coding to WebP tiles, and
 * what a fit costs. Beside each figure the nearest captured frame, or NumPy.
 */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { chooseFit } from '../../src/imaging/relight/choose-fit.ts';
import type { LightSample } from '../../src/imaging/relight/light-sample.ts';
import { planeCoding } from '../../src/imaging/relight/plane-coding.ts';
import { frameProjector } from '../../src/imaging/relight/project-frames.ts';
import { litSet, type Surface, trainingPlaces } from '../../tests/fixtures/relight/lit-plates.ts';
import { sampleOf } from '../../tests/fixtures/relight/held-out.ts';
import { medianNormalError } from '../../tests/fixtures/relight/normal-error.ts';
import { relit } from './relight/relit.ts';
import type { BenchRow } from './row.ts';

const megapixels = 6;

/** Processor seconds of sample, fit and projection for 48 frames of 6 megapixels; decoding is not in it. */
function fitSeconds(): number {
  const set = litSet('narrow mirror', trainingPlaces(48));
  const pixels = set.width * set.height;
  const sample: LightSample = sampleOf(set, Math.floor(pixels / 30_000));
  const started = process.cpuUsage();
  const fit = chooseFit(sample, set.directions);
  if (!fit.ok) throw new Error(fit.reason);
  const coding = planeCoding(sample, fit.value.components, fit.value.planes);
  const project = frameProjector(fit.value.components, coding);
  const out = new Uint8Array(fit.value.planes * pixels);
  // The same pixels again and again: six million in all, in strips as long as this set.
  for (let done = 0; done < megapixels * 1e6; done += pixels) project(set.frames, pixels, out);
  const { user, system } = process.cpuUsage(started);
  return (user + system) / 1e6;
}

/** NumPy's least squares for three channels of as many pixels, processor seconds; null without NumPy. */
function lstsqSeconds(): number | null {
  const script = join(import.meta.dirname, 'relight', 'lstsq.py');
  const run = spawnSync('/usr/bin/python3', [script], { encoding: 'utf8' });
  return run.status === 0 ? Number(run.stdout) * 3 * megapixels : null;
}

function row(
  name: string,
  value: number,
  unit: string,
  goal: number,
  better: BenchRow['better'],
  reference: BenchRow['reference'] = null,
): BenchRow {
  return { group: 'relight', name, value, unit, reference, goal, better };
}

export default async function measure(): Promise<BenchRow[]> {
  const matte = await relit('matte', 48);
  const satin = await relit('satin', 48);
  const smooth = await relit('smooth mirror', 48);
  const narrow = await relit('narrow mirror', 48);
  const dense = await relit('narrow mirror', 96);
  const nearest = (value: number) => ({ name: 'nearest captured frame', value });
  const bytes = Math.max(...[matte, satin, smooth, narrow, dense].map((r) => r.bytesPerPixel));
  const lstsq = lstsqSeconds();
  const numpy = lstsq === null ? null : { name: 'NumPy lstsq, 16 terms', value: lstsq };
  const normals = (surface: Surface) => medianNormalError(litSet(surface, trainingPlaces(48)));
  const gain = ({ decibels, nearest: other }: typeof matte) => decibels - other;
  return [
    row('matte_db', matte.decibels, 'dB', 43, 'higher', nearest(matte.nearest)),
    row('satin_db', satin.decibels, 'dB', 38, 'higher', nearest(satin.nearest)),
    row('mirror_smooth_db', smooth.decibels, 'dB', 30, 'higher', nearest(smooth.nearest)),
    row('mirror_smooth_gain_db', gain(smooth), 'dB', 10, 'higher'),
    row('mirror_narrow_gain_48_db', gain(narrow), 'dB', 2, 'higher', nearest(narrow.nearest)),
    row('mirror_narrow_gain_96_db', gain(dense), 'dB', 5, 'higher', nearest(dense.nearest)),
    row('bytes_per_px', bytes, 'bytes', 2.8, 'lower'),
    row('fit_cpu_s', fitSeconds(), 's', 6, 'lower', numpy),
    row('normals_matte_deg', normals('matte'), '°', 1, 'lower'),
    row('normals_satin_deg', normals('satin'), '°', 2, 'lower'),
    row('normals_mirror_deg', normals('narrow mirror'), '°', 1.5, 'lower'),
  ];
}
