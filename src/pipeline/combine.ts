/**
 * Stage *combine*: which pictures the site can show of a plate, and what each is made from.
 * A view in register lies in the base frame; one that is not keeps its own.
 */
import { join } from 'node:path';
import { type Homography } from '../imaging/conventions.ts';
import type { Registration, ViewResult } from '../records/result.ts';
import { setupOf, type CaptureRecord } from '../records/sitting.ts';
import type { AlignedPlate } from './align.ts';
import type { ContentSitting } from './content.ts';
import { pictureFiles } from './read.ts';

/** Raised when the same captures would give other views. */
export const combineVersion = 2;

/** A view before its tiles are made. */
export interface PlannedView extends Omit<ViewResult, 'tiles' | 'sizes'> {
  /** The picture, as a path. */
  readonly path: string;
  /** SHA-256 of the picture's file. */
  readonly sha256: string;
  /** Takes a pixel of the picture to the base frame; null where the picture stays as it is. */
  readonly warp: Homography | null;
}

export interface CombinedPlate extends AlignedPlate {
  readonly views: readonly PlannedView[];
  readonly pair: { readonly positive: string; readonly negative: string } | null;
}

export function combinePlate(aligned: AlignedPlate): CombinedPlate {
  const withheld = new Set(aligned.plate.record.withheld);
  const taken = new Set<string>();
  const views: PlannedView[] = [];
  for (const sitting of aligned.plate.sittings) {
    for (const capture of sitting.record.captures) {
      if (withheld.has(capture.id)) continue;
      for (const view of viewsOf(aligned, sitting, capture)) {
        // A second sitting repeats the names of the first; its date keeps the addresses apart.
        const id = taken.has(view.id) ? `${view.id}-${sitting.id}` : view.id;
        taken.add(id);
        views.push({ ...view, id });
      }
    }
  }
  return { ...aligned, views, pair: findPair(views) };
}

function viewsOf(
  aligned: AlignedPlate,
  sitting: ContentSitting,
  capture: CaptureRecord,
): PlannedView[] {
  const registration = aligned.registrations.get(`${sitting.id}/${capture.id}`);
  const names = pictureFiles(capture);
  const shown = capture.kind === 'lights' ? spread(names.length, shownLights) : null;
  return names.flatMap((name, k) => {
    if (shown && !shown.has(k)) return [];
    const file = aligned.files.get(name);
    if (!file) throw new Error(`${name} was not read`);
    const placed = placeView(registration, aligned.frame, file);
    const number = String(k + 1).padStart(String(names.length).length, '0');
    return {
      id: names.length === 1 ? capture.id : `${capture.id}-${number}`,
      sitting: sitting.id,
      captures: [capture.id],
      sources: [file.sha256],
      kind: 'capture' as const,
      setupKind: setupOf(sitting.record, capture)?.kind ?? 'other',
      reading: capture.reading,
      path: join(aligned.plate.folder, 'captures', name),
      sha256: file.sha256,
      made: madeSentence(names.length, k, registration, placed.registered),
      caution: null,
      ...placed,
    };
  });
}

/** Frames of a many-light set that are shown one by one; dozens would bury the other views. */
const shownLights = 8;

/** So many of the indices below `count`, evenly spread. */
function spread(count: number, wanted: number): ReadonlySet<number> {
  const step = Math.max(1, count / wanted);
  const indices = Array.from({ length: Math.min(count, wanted) }, (_, i) =>
    Math.floor((i + 0.5) * step),
  );
  return new Set(indices);
}

/** A capture with fewer pixels than this share of the base's would fill its frame with nothing. */
const mostEnlargement = 2;

function placeView(
  registration: Registration | undefined,
  frame: { readonly width: number; readonly height: number },
  file: { readonly width: number; readonly height: number },
): Pick<PlannedView, 'width' | 'height' | 'registered' | 'warp'> {
  if (registration?.state === 'base') return { ...size(frame), registered: true, warp: null };
  if (registration?.state === 'registered' && frame.width < mostEnlargement * file.width) {
    const warp = registration.homography as unknown as Homography;
    return { ...size(frame), registered: true, warp };
  }
  return { ...size(file), registered: false, warp: null };
}

function size({ width, height }: { readonly width: number; readonly height: number }) {
  return { width, height };
}

function madeSentence(
  count: number,
  k: number,
  registration: Registration | undefined,
  placed: boolean,
): string {
  const what = count === 1 ? 'One photograph' : `Frame ${k + 1} of a set of ${count}`;
  switch (registration?.state) {
    case 'base':
      return `${what}. It defines the frame that the others are aligned to.`;
    case 'registered':
      if (!placed) return `${what}, as it was taken; it has far fewer pixels than the base.`;
      return (
        `${what}, resampled into the frame of the base; ` +
        `off by at most ${registration.boundPixels.toFixed(2)} px.`
      );
    case 'failed':
      return `${what}, as it was taken; it could not be aligned to the base.`;
    case 'not-measured':
    case undefined:
      return `${what}, as it was taken; its place in the base frame was not measured.`;
  }
}

/** The first positive and the first negative that lie in register, preferring the set-ups made for it. */
export function findPair(views: readonly PlannedView[]): CombinedPlate['pair'] {
  const best = (reading: 'positive' | 'negative', setupKind: string): string | undefined => {
    const found = views.filter((v) => v.registered && v.reading === reading);
    return (found.find((v) => v.setupKind === setupKind) ?? found[0])?.id;
  };
  const positive = best('positive', 'normal');
  const negative = best('negative', 'axial');
  return positive !== undefined && negative !== undefined ? { positive, negative } : null;
}
