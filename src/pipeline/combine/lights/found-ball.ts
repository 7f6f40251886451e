/** The circle of the glossy ball of a set whose sitting does not give it. */
import type { Estimate } from '../../../imaging/plane.ts';
import { exactBall, type FoundBall, type OffsetAt } from '../../../imaging/relight/exact-ball.ts';
import { fromBall, highlightOffset } from '../../../imaging/relight/half-vector.ts';
import { roughBall } from '../../../imaging/relight/rough-ball.ts';
import { frameCrops, type Part } from '../../../raster/frame-crops.ts';
import type { FrameStrips } from '../../../raster/frame-strips.ts';
import type { LampSet } from './lamp-set.ts';

/** Samples of all frames together that are held at a time: 64 MB. */
const held = 16e6;
/** Longer side of the part in which the circle is fitted, samples: 1/100 of the radius is one. */
const fine = 400;
/** Narrower than this holds no ball, pixels. */
const narrowest = 16;

type BallSet = Pick<
  LampSet,
  'directions' | 'distance' | 'pixelsPerMillimetre' | 'width' | 'height'
>;

/** @param within Where to look, in the pixels of the set's own picture. */
export async function foundBall(
  strips: FrameStrips,
  set: BallSet,
  within: Part,
): Promise<Estimate<FoundBall>> {
  if (Math.min(within.width, within.height) < narrowest) {
    return { ok: false, reason: 'the rectangle given for it hardly touches the frame' };
  }
  const count = set.directions.length;
  const coarse = Math.max(1, Math.ceil(Math.sqrt((within.width * within.height * count) / held)));
  const rough = await findIn(strips, set, within, coarse, (frames, width, offsets) =>
    roughBall(frames, width, offsets),
  );
  if (!rough.ok) return rough;
  const part = around(rough.value, set);
  const step = Math.max(1, Math.ceil(Math.max(part.width, part.height) / fine));
  const { x, y, radius, from } = rough.value;
  return findIn(strips, set, part, step, (frames, width, offsets) => {
    const start = {
      x: into(x, part.left, step),
      y: into(y, part.top, step),
      radius: radius / step,
    };
    return exactBall(frames, width, start, from === 'highlights' ? offsets : null);
  });
}

/** A place of the whole picture in the blocks of a part, and back: both count from a middle. */
const into = (place: number, first: number, step: number): number =>
  (place - first + 0.5) / step - 0.5;
const back = (place: number, first: number, step: number): number =>
  (place + 0.5) * step - 0.5 + first;

async function findIn(
  strips: FrameStrips,
  set: BallSet,
  part: Part,
  step: number,
  find: (
    frames: readonly Float32Array[],
    width: number,
    offsets: readonly OffsetAt[],
  ) => Estimate<FoundBall>,
): Promise<Estimate<FoundBall>> {
  const { frames, width } = await frameCrops(strips, set.directions.length, part, step);
  const scale = set.pixelsPerMillimetre;
  const offsets = set.directions.map((direction): OffsetAt => {
    if (!direction) return null;
    if (scale === null) return () => highlightOffset(direction);
    return (x, y) => {
      const right = (back(x, part.left, step) - (set.width - 1) / 2) / scale;
      const up = -(back(y, part.top, step) - (set.height - 1) / 2) / scale;
      return highlightOffset(fromBall(direction, [right, up], set.distance));
    };
  });
  const found = find(frames, width, offsets);
  if (!found.ok) return found;
  const { x, y, radius, residual, from } = found.value;
  return {
    ok: true,
    value: {
      ...{ x: back(x, part.left, step), y: back(y, part.top, step), from },
      ...{ radius: radius * step, residual: residual * step },
    },
  };
}

function around({ x, y, radius }: FoundBall, { width, height }: BallSet): Part {
  const reach = 1.4 * radius + 3;
  const left = Math.max(0, Math.floor(x - reach));
  const top = Math.max(0, Math.floor(y - reach));
  return {
    ...{ left, top },
    width: Math.min(width, Math.ceil(x + reach)) - left,
    height: Math.min(height, Math.ceil(y + reach)) - top,
  };
}
