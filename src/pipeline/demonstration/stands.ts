/**
 * Where the camera stands for each capture of a sitting: over the whole plate, a little aside
 * after each change of the light, nearer for the close-ups of a mosaic.
 */
import { numbersFrom } from '../../imaging/render/seeded.ts';
import { type View } from '../../imaging/render/view.ts';
import { type CaptureRecord, type SittingRecord } from '../../records/sitting.ts';
import { type DemonstrationObject } from './object.ts';

/** Frames of a many-light set are smaller than the base by this factor, in pixels per side. */
const lightsScale = 0.42;

/** Close-ups of a mosaic are larger than the base by this factor. */
const mosaicScale = 1.6;

/** The stand of a sitting: the whole plate with cloth around it. A seed of 0 is exactly square. */
export function standView(object: DemonstrationObject, sitting: SittingRecord, seed: number): View {
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
export function nudge(view: View, seed: number): View {
  const next = numbersFrom(seed);
  return {
    ...view,
    shift: [view.shift[0] + about(next, 0.22), view.shift[1] + about(next, 0.22)],
    turn: view.turn + about(next, 0.12),
    tilt: [about(next, 0.06), about(next, 0.06)],
    pixelsPerMillimetre: view.pixelsPerMillimetre * (1 + about(next, 0.0012)),
  };
}

/** The whole plate with fewer pixels, for the many frames of a many-light set. */
export function forLights(view: View): View {
  return {
    ...view,
    width: Math.round(view.width * lightsScale),
    height: Math.round(view.height * lightsScale),
    pixelsPerMillimetre: view.pixelsPerMillimetre * lightsScale,
  };
}

/** One field of a mosaic of three by three, whatever its overlap; each with its own small errors. */
export function closeUp(
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
