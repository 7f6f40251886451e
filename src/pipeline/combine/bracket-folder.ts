/** Fills the folder of one bracket: linear light, two renderings, and what was found out. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createReadStream } from 'node:fs';
import { createHash } from 'node:crypto';
import { baseDetail } from '../../imaging/merge/base-detail-tone.ts';
import { photographicTone } from '../../imaging/merge/photographic-tone.ts';
import { openRows } from '../../raster/capture-rows.ts';
import { mergeBracket, type MergedBracket } from '../../raster/merge-bracket.ts';
import { planBracket, type BracketPlan } from '../../raster/plan-bracket.ts';
import { renderBracket } from '../../raster/render-bracket.ts';
import type { MergeRecord } from './bracket-record.ts';

export interface BracketJob {
  readonly paths: readonly string[];
  readonly marked: readonly number[];
  readonly standing: number;
  readonly unknownCurve: boolean;
  readonly scratch: string;
}

export const mergeName = 'merge.json';
export const radianceName = 'radiance.tif';
export const renderingNames = { global: 'rendering.tif', local: 'rendering-local.tif' } as const;

/** Middle grey of the global rendering. A plate is mostly dark ground: the usual 0.18 lifts it too far. */
export const renderingKey = 0.12;

export async function makeBracket(folder: string, job: BracketJob): Promise<void> {
  const { paths, marked, standing, unknownCurve, scratch } = job;
  const sources = await Promise.all(paths.map((path) => openRows(path, { scratch })));
  try {
    const plan = await planBracket({ sources, marked, standing, unknownCurve });
    const radiance = join(folder, radianceName);
    const merged = await mergeBracket(plan, standing, radiance);
    const tone = photographicTone(merged.logAverage, merged.brightest, renderingKey);
    const local = baseDetail(merged.small);
    await renderBracket({
      radiance,
      global: { path: join(folder, renderingNames.global), tone },
      local: { path: join(folder, renderingNames.local), tone: local },
      floor: merged.floor,
    });
    const record: MergeRecord = {
      ...recordOf(plan, merged, job),
      tone,
      compression: local.compression,
      archive: [
        await archived(folder, radianceName, '32-bit float TIFF, linear light, sRGB primaries'),
        await archived(
          folder,
          renderingNames.global,
          '16-bit TIFF, rendering with one curve, sRGB',
        ),
      ],
    };
    await writeFile(join(folder, mergeName), `${JSON.stringify(record)}\n`);
  } finally {
    await Promise.all(sources.map((source) => source.close()));
  }
}

function recordOf(
  plan: BracketPlan,
  merged: MergedBracket,
  { marked, standing }: BracketJob,
): Omit<MergeRecord, 'tone' | 'compression' | 'archive'> {
  const { seconds, clip, variance } = plan.model;
  const { width, height, floor, ceiling, darkest, brightest, logAverage } = merged;
  return {
    ...{ width, height, floor, ceiling, darkest, brightest, logAverage },
    ...{ clippedEverywhere: merged.clippedEverywhere, belowNoise: merged.belowNoise },
    ...{ curveFrom: plan.curveFrom, noiseFrom: plan.noiseFrom },
    noise: { gain: plan.noise.gain, darkVariance: plan.noise.darkVariance },
    frames: seconds.map((t, k) => {
      const shift = plan.shifts[k];
      return {
        ...{ marked: marked[k], seconds: t, stops: Math.log2(t / seconds[standing]), clip },
        floor: Math.sqrt(variance(0)),
        shift: shift.ok
          ? { dx: shift.value.dx, dy: shift.value.dy, spread: shift.value.spread }
          : null,
        resampled: plan.resampled[k],
        contribution: plan.contributions[k],
      };
    }),
    steps: plan.steps.map(({ shorter, longer, marked: ratio, measured, uncertainty }) => ({
      ...{ shorter, longer, marked: ratio, measured, uncertainty },
    })),
  };
}

async function archived(folder: string, name: string, label: string) {
  const hash = createHash('sha256');
  let bytes = 0;
  for await (const chunk of createReadStream(join(folder, name), { highWaterMark: 1 << 22 })) {
    hash.update(chunk as Buffer);
    bytes += (chunk as Buffer).length;
  }
  return { name, sha256: hash.digest('hex'), bytes, label };
}
