/**
 * What raking adds: one picture of what several low lamps, each from its own bearing, bring out
 * of the surface, beside the captures themselves.
 */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { encodeSrgb } from '../../imaging/colour/srgb-curve.ts';
import { displayLuminance } from '../../imaging/relight/display-luminance.ts';
import {
  eveningGains,
  gridRow,
  type LightGrid,
  rakingExcess,
} from '../../imaging/relight/raking-excess.ts';
import { type FrameStrips, openFrames } from '../../raster/frame-strips.ts';
import { writePicture } from '../../raster/write-picture.ts';
import { keyOf } from '../key.ts';
import type { StageContext } from '../stage-context.ts';
import { keepFolder, readJson } from '../store.ts';
import { type PlannedView, type PlateMaker } from './part.ts';
import { rakingWords } from './raking-words.ts';

/** Raised when the same captures would give another picture. */
const rakingVersion = 1;

/** Cells of the grid on which the captures are made equally bright, across. */
const cells = 16;
/** Share of the pixels that the picture shows below white. */
const shown = 0.998;

const resultSchema = z.strictObject({
  /** What the picture's light was multiplied by. */
  brightened: z.number(),
  medianPercent: z.number(),
  highPercent: z.number(),
});
type Result = z.output<typeof resultSchema>;

export const rakingViews: PlateMaker = async (aligned, views, context) => {
  const sets = aligned.plate.sittings.map(({ id }) =>
    views.filter(
      (view) => view.sitting === id && isRaking(view) && view.width === aligned.frame.width,
    ),
  );
  const made: PlannedView[] = [];
  for (const set of sets) {
    if (set.length < 2) continue;
    context.progress(`${aligned.plate.slug}: what raking adds`);
    const view = await addedView(set, context);
    made.push(made.length === 0 ? view : { ...view, id: `${view.id}-${view.sitting}` });
  }
  return { views: made, findings: [] };
};

function isRaking({ kind, setupKind, registered }: PlannedView): boolean {
  return kind === 'capture' && setupKind === 'raking' && registered;
}

async function addedView(set: readonly PlannedView[], context: StageContext): Promise<PlannedView> {
  const { width, height } = set[0];
  const parts = set.map(({ sha256, warp }) => ({ sha256, warp }));
  const key = keyOf({ rakingVersion, parts, width, height, cells, shown });
  const folder = await keepFolder(
    context.store,
    'combine',
    key,
    async (draft) => {
      const files = set.map(({ path, warp }) => ({ path, gain: 1, homography: warp }));
      const frame = { width, height };
      const strips = await openFrames(files, { frame, scratch: context.store.scratch });
      try {
        const { data, result } = await combined(strips);
        await writePicture(join(draft, 'raking.tif'), {
          ...{ format: 'tiff', width, height, channels: 1, depth: 16, data, profile: 'srgb' },
        });
        await writeFile(join(draft, 'result.json'), JSON.stringify(result));
      } finally {
        await strips.close();
      }
    },
    context.tally,
  );
  const kept = await readJson(join(folder, 'result.json'), (value) => resultSchema.parse(value));
  if (!kept.ok) throw new Error(`${folder} holds no result that can be read.`);
  return {
    ...{ id: 'raking-adds', sitting: set[0].sitting, kind: 'derived', setupKind: 'raking' },
    ...{ captures: set.flatMap((view) => view.captures), sources: set.map((view) => view.sha256) },
    ...{ reading: 'none', width, height, registered: true, warp: null },
    ...{ path: join(folder, 'raking.tif'), sha256: keyOf({ key, picture: 'raking' }) },
    ...{ made: rakingWords.made(set.length), caution: rakingWords.caution },
    step: rakingWords.step,
    settings: [
      { name: 'bearings', value: set.length },
      { name: 'brightened', value: kept.value.brightened },
    ],
    figures: [
      figure('raking-median', rakingWords.median, kept.value.medianPercent),
      figure('raking-high', rakingWords.high, kept.value.highPercent),
    ],
    ...{ layers: [], archive: [] },
  };
}

function figure(quantity: string, label: string, value: number) {
  return { quantity, label, value, unit: '% of white' };
}

async function combined(strips: FrameStrips): Promise<{ data: Uint16Array; result: Result }> {
  const { width, height } = strips;
  const gains = eveningGains(await lightGrids(strips));
  const added = new Float32Array(width * height);
  const lines = gains.map(() => new Float32Array(width));
  const values = new Float64Array(gains.length);
  for await (const { top, rows, frames } of strips.strips()) {
    for (let n = 0; n < rows; n += 1) {
      lines.forEach((line, k) => {
        gridRow(gains[k], (top + n + 0.5) / height, line);
      });
      for (let x = 0; x < width; x += 1) {
        const at = (n * width + x) * 3;
        for (let k = 0; k < values.length; k += 1) {
          values[k] = lines[k][x] * displayLuminance(frames[k], at);
        }
        added[(top + n) * width + x] = rakingExcess(values);
      }
    }
  }
  // Every 7th pixel tells where the values lie.
  const some = Float32Array.from(
    { length: Math.ceil(added.length / 7) },
    (_, i) => added[7 * i],
  ).sort();
  const at = (share: number) => some[Math.floor((some.length - 1) * share)];
  const brightened = Number((1 / Math.max(at(shown), 0.01)).toPrecision(3));
  const data = Uint16Array.from(
    added,
    (v) => 65535 * encodeSrgb(Math.min(1, v * brightened)) + 0.5,
  );
  const percent = (v: number) => Number((100 * v).toPrecision(3));
  return {
    data,
    result: { brightened, medianPercent: percent(at(0.5)), highPercent: percent(at(0.99)) },
  };
}

/** Mean light of each capture by cells. */
async function lightGrids(strips: FrameStrips): Promise<LightGrid[]> {
  const { width, height } = strips;
  const rows = Math.max(2, Math.round((cells * height) / width));
  let grids: LightGrid[] = [];
  const counts = new Float64Array(cells * rows);
  for await (const strip of strips.strips()) {
    if (grids.length === 0) {
      grids = strip.frames.map(() => ({
        ...{ columns: cells, rows, means: new Float64Array(cells * rows) },
      }));
    }
    // Every fourth pixel each way is enough for a mean.
    for (let n = 0; n < strip.rows; n += 4) {
      const row = Math.floor(((strip.top + n) * rows) / height);
      for (let x = 0; x < width; x += 4) {
        const cell = row * cells + Math.floor((x * cells) / width);
        counts[cell] += 1;
        for (let k = 0; k < grids.length; k += 1) {
          grids[k].means[cell] += displayLuminance(strip.frames[k], (n * width + x) * 3);
        }
      }
    }
  }
  for (const { means } of grids) means.forEach((sum, cell) => (means[cell] = sum / counts[cell]));
  return grids;
}
