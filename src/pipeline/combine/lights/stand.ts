/** Where the lamps stood and how strong they were: from the sitting, or from the ball. */
import type { Estimate } from '../../../imaging/plane.ts';
import { ballHighlight, fromPlateCentre } from '../../../imaging/relight/ball-highlight.ts';
import {
  type BallLamp,
  lampStrengths,
  type Strengths,
} from '../../../imaging/relight/lamp-strengths.ts';
import { degreesBetween, type Direction } from '../../../imaging/relight/light-place.ts';
import type { LampSet } from './lamp-set.ts';
import type { Learned } from './learn.ts';

export interface Stand {
  readonly directions: readonly Direction[];
  /** `the sitting` or `the ball`. */
  readonly from: string;
  /** Median angle between what sitting and ball say, degrees; null where only one speaks. */
  readonly disagreement: number | null;
  /** Null without a ball. */
  readonly strengths: Estimate<Strengths> | null;
}

export function standOf(set: LampSet, learned: Learned): Estimate<Stand> {
  const seen = lampsOnBall(set, learned);
  const angles = set.directions.flatMap((direction, i) => {
    const other = seen?.[i].direction;
    return direction && other ? [degreesBetween(direction, other)] : [];
  });
  angles.sort((a, b) => a - b);
  const disagreement = angles.length > 0 ? angles[angles.length >> 1] : null;
  const directions = set.directions.map((direction, i) => direction ?? seen?.[i].direction ?? null);
  const missing = directions.indexOf(null);
  if (missing >= 0) {
    return {
      ok: false,
      reason: `frame ${missing + 1} has no bearing and height, and no highlight was found on the ball`,
    };
  }
  const from = set.directions.includes(null) ? 'the ball' : 'the sitting';
  const strengths = seen && lampStrengths(seen);
  return {
    ok: true,
    value: { directions: directions as Direction[], from, disagreement, strengths },
  };
}

interface SeenLamp extends BallLamp {
  /** From the plate's centre; null where no highlight was found. */
  readonly direction: Direction | null;
}

function lampsOnBall(set: LampSet, { ball }: Learned): SeenLamp[] | null {
  if (!ball || !set.ball) return null;
  const { distance, pixelsPerMillimetre: scale } = set;
  const place: [number, number] | null =
    scale === null
      ? null
      : [(set.ball.x - (set.width - 1) / 2) / scale, -(set.ball.y - (set.height - 1) / 2) / scale];
  return ball.frames.map((frame) => {
    const found = ballHighlight(frame, ball.width, ball.circle, 1);
    if (!found.ok) return { highlight: null, direction: null, farther: 1 };
    const highlight = found.value;
    if (!place) return { highlight, direction: highlight.direction, farther: 1 };
    const direction = fromPlateCentre(highlight.direction, place, distance);
    const [x, y, z] = direction;
    const farther =
      distance === null ? 1 : Math.hypot(x - place[0] / distance, y - place[1] / distance, z);
    return { highlight, direction, farther };
  });
}
