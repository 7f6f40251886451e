import { describe, expect, test } from 'vitest';
import { lampWords } from '../../../src/viewer/lamp/bearing-words.ts';
import { words } from '../../../src/viewer/words.ts';
import '../english.ts';
import { bearingOf, lampTrack, onTrack } from '../../../src/viewer/lamp/border.ts';
import { standingWords } from '../../../src/viewer/lamp/lamp-words.ts';
import { heightOf, quarter } from '../../../src/viewer/lamp/quarter.ts';

const track = { x: 100, y: 50, width: 400, height: 200 };

describe('the lamp on the border', () => {
  test('a bearing of 0 is the middle of the top edge, 90 of the right one', () => {
    expect(onTrack(track, 0, false)).toEqual([300, 50]);
    const [x, y] = onTrack(track, 90, false);
    expect([x, y]).toEqual([500, expect.closeTo(150, 9)]);
  });

  test.each([0, 17, 45, 133, 200, 270, 315, 359])(
    'at %d degrees is found again there',
    (bearing) => {
      for (const mirrored of [false, true]) {
        const [x, y] = onTrack(track, bearing, mirrored);
        expect(bearingOf(track, x, y, mirrored)).toBeCloseTo(bearing, 6);
      }
    },
  );

  test('turned left for right, a lamp from the right is drawn at the left', () => {
    expect(onTrack(track, 90, true)[0]).toBe(100);
  });

  test('stays in the box where the plate is larger', () => {
    const box = { x: 0, y: 0, width: 600, height: 400 };
    const close = lampTrack({ x: -900, y: -900, width: 3000, height: 3000 }, box);
    expect(close).toEqual({ x: 18, y: 18, width: 564, height: 364 });
    const far = lampTrack({ x: 200, y: 150, width: 100, height: 80 }, box);
    expect(far).toEqual({ x: 184, y: 134, width: 132, height: 112 });
  });
});

test('the quarter circle reads 0 at the plate, 45 on the diagonal, 90 at the lens', () => {
  expect(heightOf(quarter.x + 50, quarter.y)).toBeCloseTo(0, 9);
  expect(heightOf(quarter.x + 50, quarter.y - 50)).toBeCloseTo(45, 9);
  expect(heightOf(quarter.x, quarter.y - 50)).toBeCloseTo(90, 9);
  expect(heightOf(quarter.x + 50, quarter.y + 50)).toBe(0);
});

describe('the words of Lamp', () => {
  const state = { bearing: 315, height: 10, rendering: 'lit' } as const;
  const drawn = [-0.6, 0.6, 0.529] as const;
  const frame = { number: 7, published: true };

  test('name the side from which the light falls', () => {
    expect([0, 44, 90, 314, 350].map(words.lamp.from)).toEqual([
      'from above',
      'from the upper right',
      'from the right',
      'from the upper left',
      'from above',
    ]);
    expect(lampWords(359.7, 20.2)).toBe('bearing 0°, 20° above the plate');
  });

  test('say when the lamp asked for lies beyond the captured ones, and which is shown', () => {
    expect(standingWords({ free: true }, state, 22, drawn, frame, undefined)).toBe(
      'The lamp stands at bearing 315°, 10° above the plate, from the upper left. No lamp was captured out there: the plate is shown under a lamp at bearing 315°, 32° above the plate, the nearest that the captured lamps enclose.',
    );
    expect(standingWords({ free: true }, state, 0.2, drawn, frame, undefined)).toMatch(
      /from the upper left\.$/,
    );
  });

  test('say that only captured lamps are offered, and when a frame is not published', () => {
    expect(standingWords({ free: false }, state, 5, drawn, frame, undefined)).toMatch(
      /^Only the captured lamps are offered here: this is frame 7/,
    );
    const hidden = { number: 7, published: false };
    const asFrame = { ...state, rendering: 'frame' } as const;
    expect(standingWords({ free: true }, asFrame, 5, drawn, hidden, undefined)).toMatch(
      /the frame itself is not published/,
    );
  });
});
