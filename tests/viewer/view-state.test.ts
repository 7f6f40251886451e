import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { settleState } from '../../src/viewer/settle-state.ts';
import { formatViewState, parseViewState } from '../../src/viewer/view-address.ts';
import {
  clipRegion,
  firstState,
  frameOf,
  modes,
  type ViewState,
} from '../../src/viewer/view-state.ts';
import { data } from './stage-fixture.ts';
import './english.ts';

const opening = firstState(data, false);

function open(fragment: string) {
  const asked = parseViewState(fragment);
  if (asked === null) throw new Error(`${fragment} holds no view state`);
  return settleState(data, asked, opening);
}

describe('an address', () => {
  test('of the documented form gives mode, views and region', () => {
    const { state, said } = open('#view=slide&of=axial,normal&xywh=pixel:812,440,300,220');
    expect(state.mode).toBe('slide');
    expect(state.of).toEqual(['axial', 'normal']);
    expect(state.region).toEqual({ x: 812, y: 440, width: 300, height: 220 });
    expect(said).toEqual([]);
  });

  // Media Fragments URI 1.0, 4.2.2: pixel is the default; percent of the picture.
  test.each([
    ['xywh=160,120,320,240', { x: 160, y: 120, width: 320, height: 240 }],
    ['xywh=pixel:160,120,320,240', { x: 160, y: 120, width: 320, height: 240 }],
    ['xywh=percent:25,25,50,50', { x: 1000, y: 750, width: 2000, height: 1500 }],
  ])('with the W3C form %s names that region', (text, region) => {
    expect(open(`#view=look&of=normal&${text}`).state.region).toEqual(region);
  });

  // The same clause: what does not match the syntax is ignored.
  test.each(['xywh=1,2,3', 'xywh=a,b,c,d', 'xywh=pixel:1,2,0,4', 'xywh=percent:60,0,50,10'])(
    'with a region that cannot be read, %s, shows the whole plate',
    (text) => {
      expect(open(`#view=look&${text}`).state.region).toBeNull();
    },
  );

  test('without anything of ours is left alone', () => {
    expect(parseViewState('#provenance')).toBeNull();
    expect(parseViewState('')).toBeNull();
  });

  test('any text at all neither throws nor leaves the plate', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const asked = parseViewState(`#view=${text}&of=${text}&xywh=${text}&tilt=${text}`);
        if (asked === null) return;
        const { state } = settleState(data, asked, opening);
        expect(modes).toContain(state.mode);
        for (const id of state.of) expect(data.views.map((v) => v.id)).toContain(id);
      }),
    );
  });

  test('written from a state opens the same state', () => {
    const number = (max: number) => fc.integer({ min: 0, max });
    fc.assert(
      fc.property(
        fc.constantFrom('look', 'slide', 'tilt'),
        number(3000),
        number(2000),
        number(1000),
        number(100),
        number(20),
        fc.constantFrom('screen', 'plate'),
        fc.boolean(),
        (mode, x, y, across, tilt, turn, fixed, corrected) => {
          const state: ViewState = {
            ...opening,
            mode,
            region: { x, y, width: 900, height: 900 },
            corrected,
            ...(mode === 'slide' ? { divider: across / 1000, turn, fixed } : {}),
            ...(mode === 'tilt' ? { tilt: tilt / 10, room: 'bright' } : {}),
          };
          expect(open(formatViewState(state)).state).toEqual(state);
        },
      ),
    );
  });
});

describe('what an address asks for in vain is said', () => {
  test('a view that is gone', () => {
    const { state, said } = open('#view=look&of=sepia');
    expect(said).toEqual(['This plate has no view “sepia” any more.']);
    expect(state.of).toEqual(['normal', 'axial']);
  });

  test('a spot that is gone', () => {
    expect(open('#spot=anchor').said).toEqual(['This plate has no spot “anchor” any more.']);
  });

  test('Slide with a picture that is not in register, with the reason', () => {
    const { state, said } = open('#view=slide&of=normal,uv');
    expect(state.mode).toBe('beside');
    expect(said).toEqual(['“uv” cannot be laid under a divider: too few tiles agreed.']);
  });

  test('Tilt on a plate without a pair', () => {
    const asked = parseViewState('#view=tilt');
    const { state, said } = settleState({ ...data, pair: null }, asked!, opening);
    expect(state.mode).toBe('look');
    expect(said[0]).toMatch(/needs a positive and a negative in register/);
  });

  test('a picture that has changed since', () => {
    expect(open('#view=look&of=normal&was=abcdefabcdef').said[0]).toMatch(/has changed/);
    expect(open(`#view=look&of=normal&was=${data.views[0].digest}`).said).toEqual([]);
  });
});

test('a spot opens its own view and region', () => {
  const { state } = open('#spot=mast');
  expect(state.mode).toBe('look');
  expect(state.of[0]).toBe('axial');
  expect(state.region).toEqual(data.spots[0].region);
});

test('a region that reaches over the edge is cut there', () => {
  const frame = { width: 100, height: 80 };
  expect(clipRegion({ x: -10, y: -5, width: 60.4, height: 200 }, frame)).toEqual({
    x: 0,
    y: 0,
    width: 50,
    height: 80,
  });
  expect(clipRegion({ x: 200, y: 0, width: 10, height: 10 }, frame)).toBeNull();
});

test('a picture outside the frame counts in its own pixels and has no scale', () => {
  const frame = frameOf(data, 'look', ['uv']);
  expect([frame.width, frame.height, frame.pixelsPerMillimetre]).toEqual([900, 700, null]);
});
