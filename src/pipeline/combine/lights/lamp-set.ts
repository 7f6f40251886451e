/** A many-light capture as the fit needs it: files, stands of the lamps, place in the frame. */
import { join } from 'node:path';
import { type Homography, lightDirection, project } from '../../../imaging/conventions.ts';
import type { Estimate } from '../../../imaging/plane.ts';
import type { Circle } from '../../../imaging/relight/ball-highlight.ts';
import type { Direction } from '../../../imaging/relight/light-place.ts';
import type { Part } from '../../../raster/frame-crops.ts';
import type { FileResult } from '../../../records/result.ts';
import { type CaptureRecord, setupOf } from '../../../records/sitting.ts';
import type { AlignedPlate } from '../../align.ts';
import type { ContentSitting } from '../../content.ts';
import { plateScale } from '../../plate-scale.ts';
import type { PlannedView } from '../part.ts';

export interface LampSet {
  readonly paths: readonly string[];
  readonly sources: readonly string[];
  /** As the sitting gives them; null where only the ball knows. */
  readonly directions: readonly (Direction | null)[];
  /** What each frame's light is multiplied by for its exposure time. */
  readonly gains: readonly number[];
  /** In the pixels of the set's own picture. */
  readonly ball: Circle | null;
  /** Where a ball is to be found whose circle is not given; in the same pixels. */
  readonly ballWithin?: Part | undefined;
  readonly distance: number | null;
  readonly camera: number | null;
  readonly pixelsPerMillimetre: number | null;
  readonly width: number;
  readonly height: number;
  readonly warp: Homography | null;
}

/** Fewer lamps than this leave nothing to learn from. */
const fewestLamps = 8;

export function lampSet(
  aligned: AlignedPlate,
  sitting: ContentSitting,
  capture: CaptureRecord,
  placed: Pick<PlannedView, 'width' | 'height' | 'warp'>,
): Estimate<LampSet> {
  const frames = capture.frames ?? [];
  if (frames.length < fewestLamps) {
    return {
      ok: false,
      reason: `it has ${frames.length} frames; at least ${fewestLamps} are needed`,
    };
  }
  const files = frames.map(({ file }) => aligned.files.get(file));
  if (!files.every((file): file is FileResult => file !== undefined)) {
    return { ok: false, reason: 'a frame could not be read' };
  }
  if (files.some(({ width, height }) => width !== files[0].width || height !== files[0].height)) {
    return { ok: false, reason: 'its frames differ in size' };
  }
  const directions = frames.map(({ bearing, height }) =>
    bearing === undefined || height === undefined ? null : lightDirection(bearing, height),
  );
  if (directions.includes(null) && !capture.ball && !capture.ballWithin) {
    return { ok: false, reason: 'some frames have neither bearing and height nor a ball' };
  }
  const { warp, width, height } = placed;
  const seconds = frames.map((frame, i) => frame.seconds ?? files[i].exif.seconds);
  return {
    ok: true,
    value: {
      paths: frames.map(({ file }) => join(aligned.plate.folder, 'captures', file)),
      sources: files.map(({ sha256 }) => sha256),
      directions,
      gains: exposureGains(seconds),
      ball: capture.ball ? placedBall(capture.ball, warp) : null,
      ballWithin: placedPart(capture.ballWithin, placed),
      distance: setupOf(sitting.record, capture)?.lamps[0]?.distance ?? null,
      camera: sitting.record.camera.distance ?? null,
      pixelsPerMillimetre: scaleOf(aligned, sitting, capture, placed),
      ...{ width, height, warp },
    },
  };
}

/** Against the median time; 1 where any time is not known. */
function exposureGains(seconds: readonly (number | null)[]): number[] {
  const known = seconds.filter((s) => s !== null).sort((a, b) => a - b);
  if (known.length < seconds.length) return seconds.map(() => 1);
  const middle = known[known.length >> 1];
  return seconds.map((s) => middle / (s ?? middle));
}

function placedBall(ball: Circle, warp: Homography | null): Circle {
  if (!warp) return ball;
  const [x, y] = project(warp, ball.x, ball.y);
  const [rx, ry] = project(warp, ball.x + ball.radius, ball.y);
  return { x, y, radius: Math.hypot(rx - x, ry - y) };
}

function placedPart(
  within: CaptureRecord['ballWithin'],
  { width, height, warp }: Pick<PlannedView, 'width' | 'height' | 'warp'>,
): Part | undefined {
  if (within === undefined) return undefined;
  if (within === 'frame') return { left: 0, top: 0, width, height };
  const [left, top, across, down] = within;
  const corners = [left, left + across].flatMap((x) =>
    [top, top + down].map((y) => (warp ? project(warp, x, y) : ([x, y] as const))),
  );
  const from = (axis: 0 | 1) => Math.floor(Math.min(...corners.map((corner) => corner[axis])));
  const to = (axis: 0 | 1) => Math.ceil(Math.max(...corners.map((corner) => corner[axis])));
  const start = { left: Math.max(0, from(0)), top: Math.max(0, from(1)) };
  return {
    ...start,
    width: Math.max(0, Math.min(width, to(0)) - start.left),
    height: Math.max(0, Math.min(height, to(1)) - start.top),
  };
}

/** Pixels of the set's own picture per millimetre, where the alignment or equal sizes tell. */
function scaleOf(
  aligned: AlignedPlate,
  sitting: ContentSitting,
  capture: CaptureRecord,
  { width, height, warp }: Pick<PlannedView, 'width' | 'height' | 'warp'>,
): number | null {
  const first = aligned.plate.sittings[0];
  const { pixelsPerMillimetre } = plateScale(aligned.plate.record, first.record, aligned.scale);
  if (pixelsPerMillimetre === null) return null;
  // In the plate's frame, which may be drawn at fewer pixels.
  if (warp) return (pixelsPerMillimetre * width) / aligned.frame.width;
  if (width === aligned.frame.width && height === aligned.frame.height) return pixelsPerMillimetre;
  const registration = aligned.registrations.get(`${sitting.id}/${capture.id}`);
  if (registration?.state !== 'registered') return null;
  const homography = registration.homography as unknown as Homography;
  const [x0, y0] = project(homography, width / 2 - 50, height / 2);
  const [x1, y1] = project(homography, width / 2 + 50, height / 2);
  return (pixelsPerMillimetre * 100) / Math.hypot(x1 - x0, y1 - y0);
}
