/** Where the lamps of a set stood, from a sitting, from a ball, or from neither. */
import { expect, test } from 'vitest';
import { lightDirection } from '../../../../src/imaging/conventions.ts';
import { degreesBetween } from '../../../../src/imaging/relight/light-place.ts';
import { addBall } from '../../../../src/imaging/render/ball.ts';
import { emptyChannels } from '../../../../src/imaging/render/blur.ts';
import type { LampSet } from '../../../../src/pipeline/combine/lights/lamp-set.ts';
import type { Learned } from '../../../../src/pipeline/combine/lights/learn.ts';
import { standOf } from '../../../../src/pipeline/combine/lights/stand.ts';

const places = [30, 75, 120, 165, 210, 255, 300, 345].map((bearing, i) => ({
  bearing,
  height: 25 + 5 * i,
}));
const truth = places.map(({ bearing, height }) => lightDirection(bearing, height));
const side = 90;
const circle = { x: 44.6, y: 45.2, radius: 40 };
// The ball lies up and left of the plate's centre by 60 and 50 mm, at ten pixels to one.
const view = {
  ...{ width: 1290, height: 1091, pixelsPerMillimetre: 10, distance: 900 },
  ...{ shift: [0, 0] as const, turn: 0, tilt: [0, 0] as const },
};

function ballFrames(): Float64Array[] {
  return places.map((place) => {
    const lamp = { ...place, distance: 350, size: 60, strength: 1 };
    const frame = new Float64Array(side * side);
    for (let y = 0; y < side; y += 1) {
      const row = emptyChannels(side);
      addBall(row, circle, y, 0, [lamp], view);
      frame.set(
        row[1].map((v) => Math.min(1, v)),
        y * side,
      );
    }
    return frame;
  });
}

const set = (directions: LampSet['directions'], ball: LampSet['ball']) =>
  ({
    ...{ directions, ball, distance: 350, camera: 900, pixelsPerMillimetre: 10 },
    ...{ width: view.width, height: view.height },
  }) as LampSet;
const withBall = { ball: { width: side, circle, frames: ballFrames() } } as unknown as Learned;
const without = { ball: null } as unknown as Learned;

test('what the sitting says is taken, and a ball beside it confirms it', () => {
  const stand = standOf(set(truth, circle), withBall);
  if (!stand.ok) throw new Error(stand.reason);
  expect(stand.value.directions).toEqual(truth);
  expect(stand.value.from).toBe('the sitting');
  expect(stand.value.disagreement).toBeLessThan(0.75);
});

test('bearings counted the wrong way round disagree with the ball by tens of degrees', () => {
  const wrong = places.map(({ bearing, height }) => lightDirection(360 - bearing, height));
  const stand = standOf(set(wrong, circle), withBall);
  expect(stand.ok && stand.value.disagreement).toBeGreaterThan(20);
});

test('where the sitting is silent the ball tells, as seen from the plate', () => {
  const stand = standOf(
    set(
      truth.map(() => null),
      circle,
    ),
    withBall,
  );
  if (!stand.ok) throw new Error(stand.reason);
  expect(stand.value.from).toBe('the ball');
  expect(stand.value.disagreement).toBeNull();
  const errors = stand.value.directions.map((found, i) => degreesBetween(found, truth[i]));
  expect(errors.sort((a, b) => a - b)[4]).toBeLessThan(0.75);
});

test('a frame that neither tells of is named', () => {
  const stand = standOf(set([truth[0], null, ...truth.slice(2)], null), without);
  expect(stand).toEqual({
    ok: false,
    reason: 'frame 2 has no bearing and height, and no highlight was found on the ball',
  });
});
