/** Highlights on the renderer's ball, whose lamp is known. */
import { describe, expect, test } from 'vitest';
import { lightDirection } from '../../../src/imaging/conventions.ts';
import { ballHighlight, fromPlateCentre } from '../../../src/imaging/relight/ball-highlight.ts';
import { type BallLamp, lampStrengths } from '../../../src/imaging/relight/lamp-strengths.ts';
import { degreesBetween } from '../../../src/imaging/relight/light-place.ts';
import { addBall } from '../../../src/imaging/render/ball.ts';
import { emptyChannels } from '../../../src/imaging/render/blur.ts';
import { spiral } from '../../fixtures/relight/lit-plates.ts';

const [width, height, scale] = [130, 130, 10];
const ball = { x: 64.3, y: 65.8, radius: 60 };
// The ball lies at the upper left of a picture twelve times as wide: 64 mm left, 60 mm up.
const view = {
  ...{ width: 1400, height: 1300, pixelsPerMillimetre: scale, distance: 900 },
  ...{ shift: [0, 0] as const, turn: 0, tilt: [0, 0] as const },
};

function photograph(
  place: { bearing: number; height: number },
  { size, strength } = { size: 12, strength: 1 },
): Float64Array {
  const lamp = { ...place, distance: 350, size, strength };
  const luminance = new Float64Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const row = emptyChannels(width);
    addBall(row, ball, y, 0, [lamp], view);
    // Clipped as a camera would, and in steps of its codes.
    luminance.set(
      row[1].map((v) => Math.round(Math.min(1, v) * 4095) / 4095),
      y * width,
    );
  }
  return luminance;
}

test('forty lamps are found within 0.75 degrees in the median, seen from the plate', () => {
  const place = [
    (ball.x - (view.width - 1) / 2) / scale,
    -(ball.y - (view.height - 1) / 2) / scale,
  ] as const;
  const found = spiral(40, 15, 75).map((lamp) => {
    const highlight = ballHighlight(photograph(lamp), width, ball, 1);
    if (!highlight.ok) throw new Error(highlight.reason);
    const { direction } = highlight.value;
    const truth = lightDirection(lamp.bearing, lamp.height);
    return {
      near: degreesBetween(fromPlateCentre(direction, place, 350), truth),
      far: degreesBetween(direction, truth),
    };
  });
  const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1];
  expect(median(found.map(({ near }) => near))).toBeLessThan(0.75);
  // Without the lamp's distance the ball's own place would be 8 degrees or more.
  expect(median(found.map(({ far }) => far))).toBeGreaterThan(5);
});

test('a ball without a highlight is a reason, not a direction', () => {
  const found = ballHighlight(new Float64Array(width * height).fill(0.001), width, ball, 1);
  expect(found).toEqual({ ok: false, reason: 'no highlight stands out on the ball' });
});

describe('lamp strengths', () => {
  const place = [
    (ball.x - (view.width - 1) / 2) / scale,
    -(ball.y - (view.height - 1) / 2) / scale,
  ] as const;
  const places = spiral(24, 15, 75);
  /** A lamp that flickers by known factors; so broad and weak that nothing clips. */
  const factors = places.map((_, i) => 1 + 0.12 * Math.sin(2.3 * i));
  const seen = (strength: number) =>
    places.map((lamp, i): BallLamp => {
      const shown = photograph(lamp, { size: 80, strength: strength * factors[i] });
      const found = ballHighlight(shown, width, ball, 1);
      const [x, y, z] = lightDirection(lamp.bearing, lamp.height);
      const farther = Math.hypot(x - place[0] / 350, y - place[1] / 350, z);
      return { highlight: found.ok ? found.value : null, farther };
    });

  test('a flicker of 12 per cent is told to 2 per cent in the median, frame by frame', () => {
    const told = lampStrengths(seen(0.2));
    if (!told.ok) throw new Error(told.reason);
    const middle = [...factors].sort((a, b) => a - b)[12];
    const errors = told.value.strengths.map((s, i) =>
      Math.abs((s ?? NaN) / (factors[i] / middle) - 1),
    );
    expect(errors.sort((a, b) => a - b)[12]).toBeLessThan(0.02);
    expect(told.value.clipped).toBe(0);
    // Taken as steady, the lamp would be wrong by 8 per cent in the median.
    expect(told.value.spreadPercent).toBeGreaterThan(8);
  });

  test('clipped highlights tell nothing, and it is said', () => {
    expect(lampStrengths(seen(1))).toEqual({
      ok: false,
      reason: 'its highlight is clipped in 24 of 24 frames',
    });
  });

  test('neither do highlights of a pixel or two', () => {
    const speck = { direction: [0, 0, 1], light: 0.5, pixels: 2, clipped: false } as const;
    const lamps = [{ ...speck, clipped: true }, speck, speck, null];
    expect(lampStrengths(lamps.map((highlight) => ({ highlight, farther: 1 })))).toEqual({
      ok: false,
      reason: 'its highlight is clipped in 1 of 4 frames and too small, or absent, in 3',
    });
  });
});
