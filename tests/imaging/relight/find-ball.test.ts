/** The circle of a ball that nobody gave, on rendered balls in front of rendered plates. */
import { describe, expect, test } from 'vitest';
import { ballFit } from '../../../src/imaging/relight/ball-fit.ts';
import { ballHighlight, fromPlateCentre } from '../../../src/imaging/relight/ball-highlight.ts';
import { exactBall, type OffsetAt } from '../../../src/imaging/relight/exact-ball.ts';
import { fromBall, highlightOffset } from '../../../src/imaging/relight/half-vector.ts';
import { degreesBetween, type Direction } from '../../../src/imaging/relight/light-place.ts';
import { roughBall } from '../../../src/imaging/relight/rough-ball.ts';
import { displayLuminance } from '../../../src/imaging/relight/display-luminance.ts';
import { ballSet } from '../../fixtures/relight/ball-set.ts';
import { litSet, spiral, type Surface } from '../../fixtures/relight/lit-plates.ts';

type Rendered = ReturnType<typeof ballSet>;
const middle = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1];

/** As the sitting would let it be known: the direction of every lamp for which `known` holds. */
function offsets(set: Rendered, known: (lamp: number) => boolean): OffsetAt[] {
  return set.directions.map((direction, l) =>
    known(l)
      ? (x, y) => highlightOffset(fromBall(direction, placeOf(set, x, y), set.distance))
      : null,
  );
}

function placeOf(set: Rendered, x: number, y: number): [number, number] {
  const scale = set.pixelsPerMillimetre;
  return [(x - (set.width - 1) / 2) / scale, -(y - (set.height - 1) / 2) / scale];
}

function found(set: Rendered, known: (lamp: number) => boolean) {
  const rough = roughBall(set.luminance, set.width, offsets(set, known));
  if (!rough.ok) throw new Error(rough.reason);
  const own = rough.value.from === 'highlights' ? offsets(set, known) : null;
  const exact = exactBall(set.luminance, set.width, rough.value, own);
  if (!exact.ok) throw new Error(exact.reason);
  return exact.value;
}

/** Median error of the directions of the lamps that were not known, degrees. */
function directionError(
  set: Rendered,
  circle: ReturnType<typeof found>,
  known: (l: number) => boolean,
) {
  const errors = set.directions.flatMap((truth, l) => {
    if (known(l)) return [];
    const seen = ballHighlight(set.luminance[l], set.width, circle, 1);
    if (!seen.ok) return [180];
    const place = placeOf(set, circle.x, circle.y);
    return [degreesBetween(fromPlateCentre(seen.value.direction, place, set.distance), truth)];
  });
  return middle(errors);
}

const stands: [Surface, { x: number; y: number; radius: number }][] = [
  ['matte', { x: 61.3, y: 58.8, radius: 42.4 }],
  ['satin', { x: 318.7, y: 60.2, radius: 36.7 }],
  ['smooth mirror', { x: 330.2, y: 240.6, radius: 31.5 }],
  ['narrow mirror', { x: 52.6, y: 226.9, radius: 44.1 }],
];

const kept = new Map<Surface, Rendered>();
function rendered(surface: Surface, ball: { x: number; y: number; radius: number }): Rendered {
  const set = kept.get(surface) ?? ballSet(surface, ball);
  kept.set(surface, set);
  return set;
}

describe.each(stands)('the ball before a %s plate', (surface, ball) => {
  const set = rendered(surface, ball);

  test('is found by one lamp in three that is known, and tells the others to 0.75 degrees', () => {
    const known = (lamp: number) => lamp % 3 === 0;
    const circle = found(set, known);
    expect(circle.from).not.toBe('outline');
    expect(Math.hypot(circle.x - ball.x, circle.y - ball.y)).toBeLessThan(0.5);
    expect(Math.abs(circle.radius - ball.radius)).toBeLessThan(0.5);
    expect(directionError(set, circle, known)).toBeLessThan(0.75);
  });

  test('is found by its outline where no lamp is known, and tells all to 0.75 degrees', () => {
    const none = () => false;
    const circle = found(set, none);
    expect(circle.from).toBe('outline');
    expect(directionError(set, circle, none)).toBeLessThan(0.75);
  });
});

test('the circle is the one that NumPy fits, and a highlight that is none is left out', () => {
  // python3 -c "import numpy as np; o=[(.3,-.1),(-.2,.25),(.05,.4),(-.35,-.3),(.1,-.45)];
  // p=[(112.2,57.1),(92.1,71.3),(101.8,76.9),(86.2,49.1),(104.3,42.8)]; A=[r for (u,v) in o for
  // r in ((1,0,u),(0,1,v))]; print(np.linalg.lstsq(A,np.ravel(p),rcond=None)[0])", NumPy 1.24.2
  const offsets = [
    [0.3, -0.1],
    [-0.2, 0.25],
    [0.05, 0.4],
    [-0.35, -0.3],
    [0.1, -0.45],
  ] as const;
  const places = [
    [112.2, 57.1],
    [92.1, 71.3],
    [101.8, 76.9],
    [86.2, 49.1],
    [104.3, 42.8],
  ];
  const seen = offsets.map((offset, i) => ({ x: places[i][0], y: places[i][1], offset }));
  const fit = ballFit(seen);
  if (!fit.ok) throw new Error(fit.reason);
  expect(fit.value.x).toBeCloseTo(100.12243589743588, 5);
  expect(fit.value.y).toBeCloseTo(61.044871794871824, 5);
  expect(fit.value.radius).toBeCloseTo(40.121794871794876, 5);
  const dust = { x: 70, y: 90, offset: [0.2, 0.1] as const };
  expect(ballFit([...seen, dust])).toEqual(fit);
});

test('lamps beside one another give no circle, but a reason', () => {
  const seen = [0, 1, 2, 3].map((i) => ({
    x: 50 + i,
    y: 50,
    offset: [0.3 + i / 100, 0.1] as const,
  }));
  expect(ballFit(seen)).toEqual({ ok: false, reason: 'the lamps stand too close together' });
});

test('a polished plate without a ball has none found', () => {
  const set = litSet('narrow mirror', spiral(24, 15, 70));
  const luminance = set.frames.map((frame) =>
    Float32Array.from({ length: frame.length / 3 }, (_, at) => displayLuminance(frame, 3 * at)),
  );
  const none = roughBall(
    luminance,
    set.width,
    offsets({ ...set, luminance }, () => true),
  );
  expect(!none.ok && none.reason).toMatch(
    /^the highlights of \d+ of 24 lamps lie on one ball; 12 are needed; no dark disc with highlights stands out from its ground$/,
  );
});

test('bearings counted the wrong way round lie on no ball: its outline is taken', () => {
  const set = rendered(...stands[1]);
  const wrong = set.directions.map(([x, y, z]): Direction => [-x, y, z]);
  const rough = roughBall(
    set.luminance,
    set.width,
    offsets({ ...set, directions: wrong }, () => true),
  );
  expect(rough.ok && rough.value.from).toBe('outline');
});
