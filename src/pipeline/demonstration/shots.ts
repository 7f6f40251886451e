/**
 * What the renderer has to photograph: for each capture of a sitting where the camera stands,
 * under which light, with which exposure, into which files.
 */
import { type Ball } from '../../imaging/render/ball.ts';
import { type Standing, type Take } from '../../imaging/render/photograph.ts';
import { numbersFrom, seedOf } from '../../imaging/render/seeded.ts';
import { technicalCamera } from '../../imaging/render/sensor.ts';
import { type View } from '../../imaging/render/view.ts';
import { type CameraExif } from '../../records/result.ts';
import { type CaptureRecord, setupOf, type SittingRecord } from '../../records/sitting.ts';
import { lightOf } from './take-light.ts';
import { type DemonstrationObject } from './object.ts';

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

/** Frames of a many-light set are smaller than the base by this factor, in pixels per side. */
export const lightsScale = 0.4;

/** Close-ups of a mosaic are larger than the base by this factor. */
const mosaicScale = 1.75;

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
      const small = smaller(view, lightsScale);
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

function exifOf(
  { date, camera }: SittingRecord,
  capture: CaptureRecord,
  seconds: number | null,
  index: number,
  number: number,
): CameraExif {
  const minutes = 12 * index + Math.floor((number * 40) / 60);
  const pad = (value: number) => String(value).padStart(2, '0');
  const clock = `${pad(10 + Math.floor(minutes / 60))}:${pad(minutes % 60)}:${pad((number * 40) % 60)}`;
  return {
    make: camera.make ?? null,
    model: camera.model ?? null,
    lens: camera.lens ?? null,
    focalLength: camera.focalLength ?? null,
    aperture: capture.exposure?.aperture ?? camera.aperture ?? null,
    iso: capture.exposure?.iso ?? camera.iso ?? null,
    seconds,
    taken: date ? `${date}T${clock}` : null,
  };
}

/** The stand of a sitting: the whole plate with cloth around it. A seed of 0 is exactly square. */
function standView(object: DemonstrationObject, sitting: SittingRecord, seed: number): View {
  const scale = sitting.scale?.pixelsPerMillimetre ?? 30;
  const view: View = {
    width: Math.round((object.width + 2 * object.margin) * scale),
    height: Math.round((object.height + 2 * object.margin) * scale),
    pixelsPerMillimetre: scale,
    distance: sitting.camera.distance ?? 800,
    shift: [0, 0],
    turn: 0,
    tilt: [0, 0],
  };
  if (seed === 0) return view;
  const next = numbersFrom(seed);
  return { ...view, shift: [about(next, 0.8), about(next, 0.8)], turn: about(next, 0.6) };
}

/** What a hand on the stand, a lamp's warmth and a refocused lens move between two captures. */
function nudge(view: View, seed: number): View {
  const next = numbersFrom(seed);
  return {
    ...view,
    shift: [view.shift[0] + about(next, 0.22), view.shift[1] + about(next, 0.22)],
    turn: view.turn + about(next, 0.12),
    tilt: [about(next, 0.06), about(next, 0.06)],
    pixelsPerMillimetre: view.pixelsPerMillimetre * (1 + about(next, 0.0012)),
  };
}

function smaller(view: View, factor: number): View {
  return {
    ...view,
    width: Math.round(view.width * factor),
    height: Math.round(view.height * factor),
    pixelsPerMillimetre: view.pixelsPerMillimetre * factor,
  };
}

/** One field of a mosaic of three by three, whatever its overlap; each with its own small errors. */
function closeUp(
  view: View,
  capture: CaptureRecord,
  row: number,
  column: number,
  seed: number,
): View {
  const frames = capture.frames ?? [];
  const rows = 1 + Math.max(...frames.map((f) => f.row ?? 0));
  const columns = 1 + Math.max(...frames.map((f) => f.column ?? 0));
  const step = 1 - (capture.overlap ?? 0.3);
  const across = view.width / view.pixelsPerMillimetre / (1 + (columns - 1) * step);
  const down = view.height / view.pixelsPerMillimetre / (1 + (rows - 1) * step);
  const next = numbersFrom(seed);
  const scale = view.pixelsPerMillimetre * mosaicScale;
  return {
    ...view,
    width: Math.round(across * scale),
    height: Math.round(down * scale),
    pixelsPerMillimetre: scale * (1 + about(next, 0.0006)),
    shift: [
      view.shift[0] + (column - (columns - 1) / 2) * step * across + about(next, 0.3),
      view.shift[1] + (row - (rows - 1) / 2) * step * down + about(next, 0.3),
    ],
    turn: view.turn + about(next, 0.08),
  };
}

function about(next: () => number, most: number): number {
  return (2 * next() - 1) * most;
}

function chunks<T>(items: readonly T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(items.length / size) }, (_, i) =>
    items.slice(i * size, (i + 1) * size),
  );
}
