/**
 * Every file of a demonstration sitting as the renderer sees it: where the camera stood, which
 * light, how long. Read from the same `sitting.yaml` that the exhibit shows.
 */
import type { Ball } from '../../imaging/render/ball.ts';
import { numbersFrom, seedOf } from '../../imaging/render/seeded.ts';
import type { View } from '../../imaging/render/view.ts';
import {
  setupOf,
  type CaptureRecord,
  type SetupRecord,
  type SittingRecord,
} from '../../records/sitting.ts';
import type { LampPlace } from './lighting-of.ts';
import type { DemonstrationObject } from './objects.ts';

export interface Exposure {
  readonly file: string;
  readonly view: View;
  readonly setup: SetupRecord;
  readonly place: LampPlace | null;
  readonly seconds: number;
  /** Shutter time relative to the one that exposes this set-up well. */
  readonly relative: number;
  /** Files with the same word were taken without moving plate or camera. */
  readonly stand: string;
  readonly ball: Ball | null;
}

/** Frames of a many-light set are this much smaller than the base, to keep a first build short. */
export const lightsScale = 0.25;
/** Close-ups of a mosaic are this much larger than the base. */
export const mosaicScale = 1.25;

/** The view of the base capture: the plate in the middle, nothing turned. */
export function baseView(object: DemonstrationObject, sitting: SittingRecord): View {
  const pixelsPerMillimetre = sitting.scale?.pixelsPerMillimetre ?? 28;
  const [width, height] = object.size;
  return {
    width: Math.round((width + 2 * object.margin) * pixelsPerMillimetre),
    height: Math.round((height + 2 * object.margin) * pixelsPerMillimetre),
    pixelsPerMillimetre,
    distance: sitting.camera.distance ?? 1000,
    shift: [0, 0],
    turn: 0,
    tilt: [0, 0],
  };
}

export function exposuresOf(object: DemonstrationObject, sitting: SittingRecord): Exposure[] {
  const base = baseView(object, sitting);
  return sitting.captures.flatMap((capture) => {
    const setup = setupOf(sitting, capture);
    if (!setup) throw new Error(`${object.slug}: the set-up of ${capture.id} is not recorded.`);
    const view = capture.id === sitting.base ? base : settled(base, `${object.slug}/${capture.id}`);
    return exposuresOfCapture(object, capture, setup, view);
  });
}

function exposuresOfCapture(
  object: DemonstrationObject,
  capture: CaptureRecord,
  setup: SetupRecord,
  view: View,
): Exposure[] {
  const seconds = capture.exposure?.seconds ?? 0.25;
  const usual = { view, setup, place: null, seconds, relative: 1, stand: capture.id, ball: null };
  const frames = capture.frames ?? [];
  switch (capture.kind) {
    case 'single':
      return [{ ...usual, file: capture.file ?? '' }];
    case 'bracket': {
      const middle = frames[Math.floor(frames.length / 2)].seconds ?? seconds;
      return frames.map((frame) => {
        const shutter = frame.seconds ?? seconds;
        return { ...usual, file: frame.file, seconds: shutter, relative: shutter / middle };
      });
    }
    case 'lights':
      return frames.map(({ file, bearing = 0, height = 45 }) => ({
        ...usual,
        file,
        view: enlarged(view, lightsScale),
        place: { bearing, height },
        ball: capture.ball ?? null,
      }));
    case 'mosaic':
      return frames.map((frame) => ({
        ...usual,
        file: frame.file,
        stand: frame.file,
        view: closeUp(object, view, capture, frame.row ?? 0, frame.column ?? 0),
      }));
  }
}

function enlarged(view: View, factor: number): View {
  return {
    ...view,
    width: Math.round(view.width * factor),
    height: Math.round(view.height * factor),
    pixelsPerMillimetre: view.pixelsPerMillimetre * factor,
  };
}

/** One close-up of a grid that covers the base frame; the plate is moved under lens and lamp. */
function closeUp(
  object: DemonstrationObject,
  whole: View,
  capture: CaptureRecord,
  row: number,
  column: number,
): View {
  const overlap = capture.overlap ?? 0.3;
  const last = Math.max(...(capture.frames ?? []).map((frame) => frame.column ?? 0));
  const share = 1 / (last + 1 - last * overlap);
  const step = share * (1 - overlap);
  const next = numbersFrom(seedOf(`${object.slug}/close-up`, row * 16 + column));
  const wander = () => (next() - 0.5) * 0.02;
  const middle = (index: number, size: number) =>
    ((index - last / 2) * step + wander()) * (size / whole.pixelsPerMillimetre);
  const view = enlarged(whole, mosaicScale);
  return {
    ...view,
    width: Math.round(view.width * share),
    height: Math.round(view.height * share),
    shift: [middle(column, whole.width), middle(row, whole.height)],
    turn: (next() - 0.5) * 0.4,
  };
}

/** A stand holds, and yet nothing stays quite still between two set-ups. */
function settled(base: View, name: string): View {
  const next = numbersFrom(seedOf(name, 7));
  const about = (size: number) => (next() * 2 - 1) * size;
  return {
    ...base,
    shift: [about(0.3), about(0.3)],
    turn: about(0.18),
    tilt: [about(0.08), about(0.08)],
    pixelsPerMillimetre: base.pixelsPerMillimetre * (1 + about(0.0012)),
  };
}
