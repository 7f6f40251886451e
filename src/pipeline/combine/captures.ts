/** Captures as they were taken: one view for each picture, in the base frame where it could be laid there. */
import { join } from 'node:path';
import type { Registration } from '../../records/result.ts';
import { setupOf, type CaptureRecord } from '../../records/sitting.ts';
import type { AlignedPlate } from '../align.ts';
import type { ContentSitting } from '../content.ts';
import { pictureFiles } from '../read.ts';
import { notDerived, type Part, type PlannedView } from './part.ts';
import { placeView } from './place-view.ts';

export function captureViews(
  plate: AlignedPlate,
  sitting: ContentSitting,
  capture: CaptureRecord,
): Promise<Part> {
  return Promise.resolve({ views: viewsOf(plate, sitting, capture), findings: [] });
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
      made: madeSentence(names.length, k, registration, placed, aligned.frame.width),
      caution: null,
      ...notDerived,
      settings: placed.radial
        ? [{ name: 'radial coefficient', value: placed.radial.coefficient }]
        : [],
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

function madeSentence(
  count: number,
  k: number,
  registration: Registration | undefined,
  placed: Pick<PlannedView, 'registered' | 'width'>,
  frameWidth: number,
): string {
  const what = count === 1 ? 'One photograph' : `Frame ${k + 1} of a set of ${count}`;
  switch (registration?.state) {
    case 'base':
      return `${what}. It defines the frame that the others are aligned to.`;
    case 'registered':
      if (!placed.registered) return `${what}, as it was taken; it shows a small part of the base.`;
      return (
        `${what}, resampled into the frame of the base` +
        (placed.width < frameWidth
          ? `, at ${((100 * placed.width) / frameWidth).toFixed(0)} % of its pixels each way as the capture has no more`
          : '') +
        (registration.radial ? ', with a radial correction for a changed focus or lens; ' : '; ') +
        `off by at most ${registration.boundPixels.toFixed(2)} px` +
        (placed.width < frameWidth ? ' of the base.' : '.')
      );
    case 'failed':
      return `${what}, as it was taken; it could not be aligned to the base.`;
    case 'not-measured':
    case undefined:
      return `${what}, as it was taken; its place in the base frame was not measured.`;
  }
}
