/**
 * Many photographs with the lamp in as many places: a surface whose light the reader can move,
 * its slope, relief and gloss, and some of the frames as they were taken.
 */
import { rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { chooseFit, leastGain } from '../../imaging/relight/choose-fit.ts';
import { openFrames } from '../../raster/frame-strips.ts';
import { writePicture } from '../../raster/write-picture.ts';
import { finding, type Finding } from '../../records/finding.ts';
import type { CaptureRecord } from '../../records/sitting.ts';
import type { AlignedPlate } from '../align.ts';
import { keyOf } from '../key.ts';
import type { StageContext } from '../stage-context.ts';
import { keepFolder, readJson } from '../store.ts';
import { captureViews } from './captures.ts';
import { foundBall } from './lights/found-ball.ts';
import { writeLampPlanes } from './lights/lamp-planes.ts';
import { lampSet, type LampSet } from './lights/lamp-set.ts';
import { learn } from './lights/learn.ts';
import {
  fitSummary,
  lightsResult,
  type LightsResult,
  relightViews,
} from './lights/relight-views.ts';
import { writeSlopePlanes } from './lights/slope-planes.ts';
import { type Stand, standOf } from './lights/stand.ts';
import type { CaptureMaker, PlannedView } from './part.ts';

/** Raised when the same frames would give another surface. */
const lightsVersion = 4;

export const lightsViews: CaptureMaker = async (aligned, sitting, capture, context) => {
  const captured = await captureViews(aligned, sitting, capture);
  const placed = captured.views[0];
  const set = lampSet(aligned, sitting, capture, placed);
  if (!set.ok) return { ...captured, findings: [notFitted(aligned, capture, set.reason)] };
  const made = await surfaceOf(aligned, capture, set.value, captured.views, context);
  if (!made.ok) return { ...captured, findings: [notFitted(aligned, capture, made.reason)] };
  const { result } = made;
  const derived = relightViews(placed, set.value.sources, made);
  return { views: [...derived, ...captured.views], findings: doubts(aligned, capture, result) };
};

/** Degrees between sitting and ball from which somebody should look. */
const mostDisagreement = 3;

type Made =
  | {
      readonly ok: true;
      readonly folder: string;
      readonly key: string;
      readonly result: LightsResult;
    }
  | { readonly ok: false; readonly reason: string };

const keptSchema = z.union([lightsResult, z.strictObject({ reason: z.string() })]);

async function surfaceOf(
  aligned: AlignedPlate,
  capture: CaptureRecord,
  set: LampSet,
  captured: readonly PlannedView[],
  context: StageContext,
): Promise<Made> {
  // Where the files lie does not matter to what they hold.
  const numbers = { ...set, paths: [] };
  const views = set.sources.map(
    (sha256) => captured.find((view) => view.sources[0] === sha256)?.id ?? null,
  );
  const key = keyOf(JSON.parse(JSON.stringify({ lightsVersion, numbers, views })) as never);
  const layers = { lamp: keyOf({ key, layer: 'lamp' }), slope: keyOf({ key, layer: 'slope' }) };
  const make = async (draft: string): Promise<void> => {
    context.progress(`${aligned.plate.slug}: light of ${capture.id}`);
    const result = await fitSurface(draft, set, views, context);
    if ('reason' in result) {
      await writeFile(join(draft, 'result.json'), JSON.stringify(result));
      return;
    }
    for (const name of ['lamp', 'slope'] as const) {
      await keepFolder(context.store, 'layers', layers[name], async (place) => {
        await rm(place, { recursive: true });
        await rename(join(draft, name), place);
      });
      await rm(join(draft, name), { recursive: true, force: true });
    }
    await writeFile(join(draft, 'result.json'), JSON.stringify({ ...result, layers }));
  };
  const folder = await keepFolder(context.store, 'combine', key, make, context.tally);
  const kept = await readJson(join(folder, 'result.json'), (value) => keptSchema.parse(value));
  if (!kept.ok) throw new Error(`${folder} holds no result that can be read.`);
  if ('reason' in kept.value) return { ok: false, reason: kept.value.reason };
  return { ok: true, folder, key, result: kept.value };
}

async function fitSurface(
  draft: string,
  set: LampSet,
  views: readonly (string | null)[],
  context: StageContext,
): Promise<Omit<LightsResult, 'layers'> | { reason: string }> {
  const { width, height, warp } = set;
  const files = set.paths.map((path, i) => ({ path, gain: set.gains[i], homography: warp }));
  const strips = await openFrames(files, {
    frame: { width, height },
    scratch: context.store.scratch,
  });
  try {
    const sought = set.ballWithin ? await foundBall(strips, set, set.ballWithin) : null;
    const circle = sought?.ok ? sought.value : set.ball;
    const learned = await learn(strips, files.length, circle);
    const fault = sought && !sought.ok ? sought.reason : undefined;
    if (fault !== undefined && set.directions.includes(null)) {
      return { reason: `the circle of its glossy ball was not found (${fault})` };
    }
    const stand = standOf({ ...set, ball: circle }, learned);
    if (!stand.ok) return { reason: stand.reason };
    const { directions } = stand.value;
    const fit = chooseFit(learned.sample, directions);
    if (!fit.ok) return { reason: fit.reason };
    const write = (name: string, channels: 1 | 3, data: Uint16Array) =>
      writePicture(join(draft, `${name}.tif`), {
        ...{ format: 'tiff', width, height, channels, depth: 16, data, profile: 'srgb' },
      });
    const place = join(draft, 'lamp');
    const lamp = await writeLampPlanes(place, strips, learned, fit.value, directions, views);
    await write('relight', 3, lamp.still);
    const near = { directions, ...distances(set) };
    const shape = await writeSlopePlanes(join(draft, 'slope'), strips, learned, near);
    await write('slope', 3, shape.slope);
    await write('relief', 1, shape.relief);
    await write('gloss', 1, shape.gloss);
    const { steepest, exaggeration, residualPercent } = shape;
    return {
      ...fitSummary(fit.value),
      ...{ clippedShare: learned.clippedShare, directionsFrom: stand.value.from },
      ...(sought?.ok ? { foundBall: sought.value } : {}),
      ...(fault === undefined ? {} : { ballFault: fault }),
      ...strengthOf(stand.value.strengths),
      ...{ disagreement: stand.value.disagreement, steepest, exaggeration, residualPercent },
    };
  } finally {
    await strips.close();
  }
}

/** How steady the lamp was, as the result keeps it. */
function strengthOf(strengths: Stand['strengths']): Pick<LightsResult, 'strength'> {
  if (!strengths) return {};
  if (!strengths.ok) return { strength: { reason: strengths.reason } };
  const { spreadPercent, clipped } = strengths.value;
  return { strength: { spreadPercent, clipped } };
}

function distances({ distance, camera, pixelsPerMillimetre }: LampSet) {
  return { distance, camera, pixelsPerMillimetre };
}

function notFitted(aligned: AlignedPlate, capture: CaptureRecord, reason: string): Finding {
  return finding({
    level: 'warning',
    plate: aligned.plate.slug,
    capture: capture.id,
    code: 'lights-not-fitted',
    message: `The light of ${capture.id} cannot be moved: ${reason}. Its frames are shown as they were taken.`,
    remedy:
      'Record bearing and height of every frame, or the circle of a glossy ball as "ball: { x, y, radius }" in pixels, with lamps all round the plate.',
  });
}

/** What somebody should look at although there is a fit. */
function doubts(aligned: AlignedPlate, capture: CaptureRecord, result: LightsResult): Finding[] {
  const about = { plate: aligned.plate.slug, capture: capture.id };
  const found: Finding[] = [];
  const { disagreement, leftOutDecibels, nearestDecibels } = result;
  if (disagreement !== null && disagreement > mostDisagreement) {
    found.push(
      finding({
        ...{ ...about, level: 'warning', code: 'lamps-and-ball-disagree' },
        message: `The lamp directions in the sitting and the highlights on the ball of ${capture.id} differ by ${disagreement.toFixed(1)}° in the middle of the set; at most ${mostDisagreement}° was expected.`,
        remedy:
          'Check the circle of the ball, the order of the frames, and that bearings run clockwise from the top edge.',
        measured: { value: disagreement, unit: '°', expected: `at most ${mostDisagreement}` },
      }),
    );
  }
  if (result.ballFault !== undefined) {
    found.push(
      finding({
        ...{ ...about, level: 'warning', code: 'ball-not-found' },
        message: `The circle of the glossy ball of ${capture.id} was not found (${result.ballFault}); its lamp directions are those of the sitting, not confirmed.`,
        remedy:
          'Give the circle as "ball: { x, y, radius }" in pixels, or a rectangle about it in "ballWithin".',
      }),
    );
  }
  if (!result.free) {
    const gain = leftOutDecibels - nearestDecibels;
    found.push(
      finding({
        ...{ ...about, level: 'note', code: 'lamps-too-far-apart' },
        message: `Between the lamps of ${capture.id} light can be foretold ${gain.toFixed(1)} dB better than by the nearest frame; ${leastGain} dB were expected. Only the captured lamps are offered.`,
        remedy:
          'Use more lamps, or a diffuser about as wide as the distance from one lamp to the next.',
        measured: { value: gain, unit: 'dB', expected: `at least ${leastGain}` },
      }),
    );
  }
  return found;
}
