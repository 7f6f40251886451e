/**
 * A bracket of exposures: one wide-range picture, shown as two renderings, with a layer that lets
 * the reader choose the range; the frames stay reachable after them.
 */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { GainLayer } from '../../records/layer.ts';
import type { ArchivedFile, FileResult } from '../../records/result.ts';
import { setupOf, type CaptureRecord } from '../../records/sitting.ts';
import { writeGainLayer } from '../../raster/gain-layer.ts';
import type { AlignedPlate } from '../align.ts';
import type { ContentSitting } from '../content.ts';
import { keyOf } from '../key.ts';
import { pictureFiles } from '../read.ts';
import type { StageContext } from '../stage-context.ts';
import { keepFolder } from '../store.ts';
import { bracketFindings, notMerged } from './bracket-findings.ts';
import { makeBracket, mergeName, radianceName, renderingNames } from './bracket-folder.ts';
import { mergeSchema, type MergeRecord } from './bracket-record.ts';
import { mergedView, renderedLocally } from './bracket-views.ts';
import { captureViews } from './captures.ts';
import { placeView } from './place-view.ts';
import type { Part, PlannedView } from './part.ts';

/** Raised when the same frames would give another merge, rendering or layer. */
export const bracketVersion = 3;

export async function bracketViews(
  plate: AlignedPlate,
  sitting: ContentSitting,
  capture: CaptureRecord,
  context: StageContext,
): Promise<Part> {
  const frames = await captureViews(plate, sitting, capture);
  const files = pictureFiles(capture).map((name) => fileOf(plate, name));
  const marked = files.map(
    (file) =>
      capture.frames?.find((f) => f.file === file.name)?.seconds ?? file.exif.seconds ?? null,
  );
  const refusal = whyNot(files, marked);
  if (refusal !== null) {
    const told = notMerged(plate.plate.slug, capture.id, refusal);
    return { views: frames.views, findings: [...frames.findings, told] };
  }
  const seconds = marked.map((t) => t ?? NaN);
  const standing = Math.floor((files.length - 1) / 2);
  const key = keyOf({
    ...{ version: bracketVersion, step: 'bracket', standing, seconds },
    files: files.map((f) => f.sha256),
  });
  const paths = files.map((f) => join(plate.plate.folder, 'captures', f.name));
  context.progress(`${plate.plate.slug}: merging ${capture.id}`);
  const folder = await keepFolder(
    context.store,
    'combine',
    key,
    (draft) =>
      makeBracket(draft, {
        ...{ paths, marked: seconds, standing, scratch: context.store.scratch },
        unknownCurve: files[0].profile === null,
      }),
    context.tally,
  );
  const merge = mergeSchema.parse(JSON.parse(await readFile(join(folder, mergeName), 'utf8')));
  const registration = plate.registrations.get(`${sitting.id}/${capture.id}`);
  const placed = placeView(registration, plate.frame, files[standing]);
  const frameIds = frames.views.map((v) => v.id);
  const layer = await keepLayer(folder, key, merge, placed, frameIds, context);
  const shared = {
    ...{ sitting: sitting.id, captures: [capture.id], sources: files.map((f) => f.sha256) },
    setupKind: setupOf(sitting.record, capture)?.kind ?? 'other',
    reading: capture.reading,
    ...placed,
  } as const;
  const named = { id: capture.id, files, marked: seconds, standing, placed: placed.registered };
  const views: PlannedView[] = [
    {
      ...shared,
      ...mergedView(named, merge),
      path: join(folder, renderingNames.global),
      sha256: keyOf({ key, picture: 'global' }),
      layers: [{ name: 'gain', folder: layer }],
      archive: archiveOf(merge, key),
    },
    {
      ...shared,
      ...renderedLocally(named, merge),
      path: join(folder, renderingNames.local),
      sha256: keyOf({ key, picture: 'local' }),
      layers: [],
      archive: [],
    },
  ];
  return {
    views: [...views, ...frames.views],
    findings: [...frames.findings, ...bracketFindings(plate.plate.slug, named, merge)],
  };
}

function fileOf(plate: AlignedPlate, name: string): FileResult {
  const file = plate.files.get(name);
  if (!file) throw new Error(`${name} was not read`);
  return file;
}

/** Why a bracket cannot be merged, as the rest of a sentence; null where it can. */
function whyNot(files: readonly FileResult[], marked: readonly (number | null)[]): string | null {
  const silent = marked.findIndex((t) => t === null);
  if (silent >= 0) {
    return `neither the sitting nor ${files[silent].name} says how long that frame was exposed`;
  }
  const [first] = files;
  const other = files.find(
    (f) => f.width !== first.width || f.height !== first.height || f.channels !== first.channels,
  );
  if (other) {
    return `${other.name} has ${other.width} × ${other.height} pixels in ${other.channels} channels, ${first.name} ${first.width} × ${first.height} in ${first.channels}`;
  }
  const profile = files.find((f) => f.profile !== first.profile || f.depth !== first.depth);
  if (profile) return `${profile.name} and ${first.name} differ in colour profile or depth`;
  return new Set(marked).size < marked.length ? 'two frames have the same exposure time' : null;
}

async function keepLayer(
  folder: string,
  key: string,
  merge: MergeRecord,
  placed: ReturnType<typeof placeView>,
  frameIds: readonly string[],
  context: StageContext,
): Promise<string> {
  const { width, height, warp, radial = null } = placed;
  const frame = { homography: warp, radial, width, height };
  const frames = merge.frames
    .map((f, k): GainLayer['frames'][number] => ({
      ...{ view: frameIds[k], seconds: f.marked, stops: f.stops, clip: f.clip, floor: f.floor },
    }))
    .sort((a, b) => a.seconds - b.seconds);
  const place = { ...frame, radial: radial && { ...radial } };
  const layerKey = keyOf({ version: bracketVersion, step: 'gain', key, frame: place, frames });
  await keepFolder(
    context.store,
    'layers',
    layerKey,
    (draft) =>
      writeGainLayer({
        folder: draft,
        radiance: join(folder, radianceName),
        rendering: join(folder, renderingNames.global),
        tone: merge.tone,
        ...{ floor: merge.floor, ceiling: merge.ceiling, brightest: merge.brightest },
        ...{ frame, frames },
      }),
    context.tally,
  );
  return layerKey;
}

function archiveOf(merge: MergeRecord, folder: string): ArchivedFile[] {
  return merge.archive.map((file) => ({ ...file, folder, mediaType: 'image/tiff' }));
}
