import { describe, expect, test } from 'vitest';
import { divideCode } from '../../src/imaging/divide.ts';
import type { Plane } from '../../src/imaging/plane.ts';
import {
  brightShare,
  readingContrast,
  reflectedLuminance,
  roomLight,
  rooms,
  tiltCode,
  tiltFor,
  tiltLimit,
  tiltReading,
  tonesOf,
  turningPoint,
} from '../../src/imaging/tilt.ts';

const room = { surround: 0, bright: 1, from: 20, to: 90, spread: 10 };

describe('what the mirror reflects', () => {
  test('a tilt of 10 degrees looks 20 degrees away: the edge of a window there is half in', () => {
    // Law of reflection: the ray turns by twice the mirror's angle.
    expect(brightShare(10, room)).toBeCloseTo(0.5, 12);
    expect(brightShare(7.5, room)).toBeCloseTo(0, 12);
    expect(brightShare(12.5, room)).toBeCloseTo(1, 12);
  });

  test('a window narrower than what the mirror gathers never fills it', () => {
    expect(brightShare(11, { ...room, from: 20, to: 24 })).toBeCloseTo(0.4, 12);
  });

  test.each(rooms)('in the %s room more tilt never reflects less', (name) => {
    let before = 0;
    for (let tilt = 0; tilt <= tiltLimit; tilt += 0.25) {
      const now = reflectedLuminance(tilt, roomLight[name]);
      expect(now).toBeGreaterThanOrEqual(before);
      before = now;
    }
  });

  test('the tilt for a luminance reflects that luminance', () => {
    for (const b of [0.5, 1, 2.5]) {
      const tilt = tiltFor(b, roomLight.window);
      expect(tilt).not.toBeNull();
      expect(reflectedLuminance(tilt!, roomLight.window)).toBeCloseTo(b, 10);
    }
  });

  test('a dark room never turns a plate whose turning point is 0.8', () => {
    expect(tiltFor(0.8, roomLight.dark)).toBeNull();
  });
});

const tones = {
  positiveHighlight: 0.6,
  positiveShadow: 0.04,
  negativeHighlight: 0.1,
  negativeShadow: 0.8,
};

describe('the turning point', () => {
  test('is (P_h - P_s) / (N_s - N_h)', () => {
    // 0.56 / 0.70, by hand.
    expect(turningPoint(tones)).toEqual({ ok: true, value: expect.closeTo(0.8, 12) as number });
  });

  test('is where highlight and shadow are equally bright, and the reading changes there', () => {
    expect(readingContrast(tones, 1, 0.8)).toBeCloseTo(0, 12);
    expect(tiltReading(readingContrast(tones, 1, 0))).toBe('reads positive');
    expect(tiltReading(readingContrast(tones, 1, 0.8))).toBe('turning');
    expect(tiltReading(readingContrast(tones, 1, 5))).toBe('reads negative');
  });

  test('fails with a reason when the second picture does not reverse the first', () => {
    const same = { ...tones, negativeHighlight: 0.8, negativeShadow: 0.1 };
    expect(turningPoint(same)).toEqual({
      ok: false,
      reason: 'the negative does not reverse the tones here',
    });
  });
});

function plane(values: (x: number, y: number) => number): Plane {
  const data = new Float32Array(400);
  for (let i = 0; i < 400; i++) data[i] = values(i % 20, Math.floor(i / 20));
  return { width: 20, height: 20, data };
}

describe('tones of a region', () => {
  test('are the means over the lightest and the darkest tenth of the positive, in both', () => {
    // A ramp over columns 0..19: a tenth is two columns. Means by hand: 0.5 and 18.5.
    const found = tonesOf(
      plane((x) => x),
      plane((x) => 100 - 2 * x),
    );
    expect(found).toEqual({
      ok: true,
      value: {
        positiveShadow: 0.5,
        positiveHighlight: 18.5,
        negativeShadow: 99,
        negativeHighlight: 63,
      },
    });
  });

  test('of a spot come from the spot alone', () => {
    const found = tonesOf(
      plane((x) => x),
      plane((x) => -x),
      { x: 0, y: 0, width: 10, height: 20 },
    );
    expect(found.ok && found.value.positiveHighlight).toBe(9);
  });

  test('of a region too small to sort into tenths are refused', () => {
    const p = plane((x) => x);
    const found = tonesOf(p, p, { x: 0, y: 0, width: 5, height: 5 });
    expect(found).toEqual({ ok: false, reason: 'fewer than 100 samples lie in it' });
  });
});

describe('the CPU twins of the last pass', () => {
  test('b = 0 gives back the positive, a = 0 the negative, code for code', () => {
    for (let code = 0; code < 256; code++) {
      expect(Math.round(tiltCode(code, 90, 1, 0))).toBe(code);
      expect(Math.round(tiltCode(90, code, 0, 1))).toBe(code);
    }
  });

  test('an equal mix of black and white is 188, not 128', () => {
    // Mean of linear light 0.5; IEC 61966-2-1 encodes it as 187.516.
    expect(tiltCode(0, 255, 1, 1)).toBeCloseTo(187.516, 2);
    expect(divideCode(0, 255, 0)).toBeCloseTo(187.516, 2);
  });

  test('a divider half a pixel away leaves each side alone', () => {
    expect(divideCode(10, 200, -0.5)).toBeCloseTo(10, 9);
    expect(divideCode(10, 200, 0.5)).toBeCloseTo(200, 9);
  });
});
