/**
 * What the renderer has to photograph: for each capture of a sitting where the camera stands,
 * under which light, with which exposure, into which files.
 */
import { type Ball } from '../../imaging/render/ball.ts';
import { type Standing, type Take } from '../../imaging/render/photograph.ts';
import { seedOf } from '../../imaging/render/seeded.ts';
import { technicalCamera } from '../../imaging/render/sensor.ts';
import { type View } from '../../imaging/render/view.ts';
import { type CameraExif } from '../../records/result.ts';
import { type CaptureRecord, setupOf, type SittingRecord } from '../../records/sitting.ts';
import { exifOf } from './capture-exif.ts';
import { type DemonstrationObject } from './object.ts';
import { closeUp, forLights, nudge, standView } from './stands.ts';
import { lightOf } from './take-light.ts';

/** Frames that share plate, camera and place: rendered together, written one by one. */
export interface Shoot {
  readonly slug: string;
  /** Day of the sitting. */
  readonly day: string | undefined;
  readonly capture: string;
  readonly standing: Standing;
  readonly frames: readonly Frame[];
  /** The view that all captures of the plate are related to. */
  readonly base: View;
}

export interface Frame {
  readonly file: string;
  readonly take: Take;
  readonly exif: CameraExif;
}

/** Lamps whose frames are rendered in one go: more share more, but need more memory. */
const framesTogether = 12;

/** All shoots of one sitting; captures whose set-up is not in the record are left out. */
export function shootsOf(
  object: DemonstrationObject,
  sitting: SittingRecord,
  first: SittingRecord,
): Shoot[] {
  const base = standView(object, first, 0);
  const own = standView(object, sitting, sitting === first ? 0 : seedOf('sitting', object.seed));
  return sitting.captures.flatMap((capture, index) => {
    const still = index === 0 || capture.id === sitting.base;
    const view = still ? own : nudge(own, seedOf(capture.id, object.seed));
    return shootsOfCapture(object, sitting, capture, view, index).map((shoot) => ({
      ...shoot,
      base,
    }));
  });
}

type LooseShoot = Omit<Shoot, 'base'>;

function shootsOfCapture(
  object: DemonstrationObject,
  sitting: SittingRecord,
  capture: CaptureRecord,
  view: View,
  index: number,
): LooseShoot[] {
  const shoot = (standing: Standing, frames: readonly Frame[]): LooseShoot => ({
    slug: object.slug,
    day: sitting.date,
    capture: capture.id,
    standing,
    frames,
  });
  const frame = (
    place: Partial<NonNullable<CaptureRecord['frames']>[number]>,
    number: number,
    at: View,
  ) => frameOf(object, sitting, capture, at, place, index, number);
  const frames = capture.frames ?? [];
  switch (capture.kind) {
    case 'single':
      return [shoot(standingAt(view), [frame({ file: capture.file }, 0, view)])];
    case 'bracket':
      return [shoot(standingAt(view), sharedLight(frames.map((f, i) => frame(f, i, view))))];
    case 'lights': {
      const small = forLights(view);
      const standing = standingAt(small, capture.ball);
      return chunks(
        frames.map((f, i) => frame(f, i, small)),
        framesTogether,
      ).map((some) => shoot(standing, some));
    }
    case 'mosaic':
      return frames.map((f, i) => {
        const close = closeUp(
          view,
          capture,
          f.row ?? 0,
          f.column ?? 0,
          seedOf(f.file, object.seed),
        );
        return shoot(standingAt(close), [frame(f, i, close)]);
      });
  }
}

function standingAt(view: View, ball?: Ball): Standing {
  return { view, blur: 0.6, fallOff: true, ball };
}

function frameOf(
  object: DemonstrationObject,
  sitting: SittingRecord,
  capture: CaptureRecord,
  view: View,
  place: Partial<NonNullable<CaptureRecord['frames']>[number]>,
  index: number,
  number: number,
): Frame {
  const setup = setupOf(sitting, capture) ?? { kind: 'normal' as const, lamps: [] };
  const file = place.file ?? 'capture.jpg';
  const seed = seedOf(file, object.seed);
  const light = lightOf(setup, {
    distance: view.distance,
    pixelsPerMillimetre: view.pixelsPerMillimetre,
    density: object.density,
    seed: seedOf(capture.setup, object.seed),
    target: object.exposures?.[capture.id],
    ...(capture.kind === 'lights' ? { lamp: place } : {}),
  });
  const seconds = place.seconds ?? capture.exposure?.seconds ?? null;
  return {
    file,
    take: {
      lighting: light.lighting,
      sensor: {
        ...technicalCamera,
        gain: light.gain * relativeExposure(capture, place.seconds),
        depth: /\.tiff?$/i.test(file) ? 16 : 8,
        seed,
      },
    },
    exif: exifOf(sitting, capture, seconds, index, number),
  };
}

/** The frames of a bracket stand under one lamp: one object, so that it is computed once. */
function sharedLight(frames: readonly Frame[]): Frame[] {
  const { lighting } = frames[0].take;
  return frames.map((frame) => ({ ...frame, take: { ...frame.take, lighting } }));
}

/** A frame's time relative to the middle one of its bracket. */
function relativeExposure(capture: CaptureRecord, seconds: number | undefined): number {
  if (capture.kind !== 'bracket' || seconds === undefined) return 1;
  const times = (capture.frames ?? []).map((f) => f.seconds ?? seconds).sort((a, b) => a - b);
  return seconds / times[Math.floor(times.length / 2)];
}

function chunks<T>(items: readonly T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(items.length / size) }, (_, i) =>
    items.slice(i * size, (i + 1) * size),
  );
}
