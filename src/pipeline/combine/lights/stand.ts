/** Where the lamps stood and how strong they were: from the sitting, or from the ball. */
import type { Estimate } from '../../../imaging/plane.ts';
import { ballHighlight, fromPlateCentre } from '../../../imaging/relight/ball-highlight.ts';
import { degreesBetween, type Direction } from '../../../imaging/relight/light-place.ts';
import type { LampSet } from './lamp-set.ts';
import type { Learned } from './learn.ts';

export interface Stand {
  readonly directions: readonly Direction[];
  /** `the sitting` or `the ball`. */
  readonly from: string;
  /** Median angle between what sitting and ball say, degrees; null where only one speaks. */
  readonly disagreement: number | null;
}

export function standOf(set: LampSet, learned: Learned): Estimate<Stand> {
  const seen = directionsFromBall(set, learned);
  const angles = set.directions.flatMap((direction, i) => {
    const other = seen?.[i];
    return direction && other ? [degreesBetween(direction, other)] : [];
  });
  angles.sort((a, b) => a - b);
  const disagreement = angles.length > 0 ? angles[angles.length >> 1] : null;
  const directions = set.directions.map((direction, i) => direction ?? seen?.[i] ?? null);
  const missing = directions.indexOf(null);
  if (missing >= 0) {
    return {
      ok: false,
      reason: `frame ${missing + 1} has no bearing and height, and no highlight was found on the ball`,
    };
  }
  const from = set.directions.includes(null) ? 'the ball' : 'the sitting';
  return { ok: true, value: { directions: directions as Direction[], from, disagreement } };
}

function directionsFromBall(set: LampSet, { ball }: Learned): (Direction | null)[] | null {
  if (!ball || !set.ball) return null;
  const scale = set.pixelsPerMillimetre;
  const place: [number, number] | null =
    scale === null
      ? null
      : [(set.ball.x - (set.width - 1) / 2) / scale, -(set.ball.y - (set.height - 1) / 2) / scale];
  return ball.frames.map((frame) => {
    const found = ballHighlight(frame, ball.width, ball.circle, 1);
    if (!found.ok) return null;
    const { direction } = found.value;
    return place ? fromPlateCentre(direction, place, set.distance) : direction;
  });
}
