/** Hand colouring as a stage: when it is looked for, what is refused, what the view says. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { encodeSrgb } from '../../../src/imaging/colour/srgb-curve.ts';
import type { ColourPicture } from '../../../src/imaging/hand-colouring/chroma.ts';
import { standInPlate } from '../../../src/imaging/render/test-pair.ts';
import { handColouringViews } from '../../../src/pipeline/combine/hand-colouring.ts';
import type { PlannedView } from '../../../src/pipeline/combine/part.ts';
import { figureOf, stageBench } from '../../fixtures/combine/stage-bench.ts';
import {
  inBothLights,
  perMillimetre,
  withPigment,
} from '../../imaging/hand-colouring/coloured-plates.ts';

let bench: Awaited<ReturnType<typeof stageBench>>;
let pair: PlannedView[];
beforeAll(async () => {
  bench = await stageBench();
  const painted = withPigment(
    standInPlate(11, { width: 600, tarnish: 20 }),
    [0.52, 0.085, 0.06],
    0.8,
  );
  const [side, even] = inBothLights(painted);
  pair = [
    { ...(await put('side.tif', side)), setupKind: 'normal', reading: 'positive' },
    { ...(await put('even.tif', even)), setupKind: 'axial', reading: 'negative' },
  ];
});
afterAll(() => bench.remove());

function put(name: string, { width, height, red, green, blue }: ColourPicture) {
  const data = new Uint16Array(3 * width * height);
  [red, green, blue].forEach((channel, c) => {
    channel.forEach((v, at) => {
      data[3 * at + c] = 65535 * encodeSrgb(Math.min(1, Math.max(0, v))) + 0.5;
    });
  });
  return bench.put({ name, width, height, data });
}

function colouring(record: Record<string, unknown>, views: readonly PlannedView[]) {
  const { width, height } = pair[0];
  const capture = { id: 'side', file: 'side.tif', setup: 'normal', reading: 'positive' };
  const sitting = { scale: { pixelsPerMillimetre: perMillimetre }, captures: [capture] };
  const { aligned } = bench.plate(record, sitting, { width, height });
  return handColouringViews(aligned, views, bench.context);
}

test('240 mm² of red lie within the stated uncertainty of the area', async () => {
  const { views, findings } = await colouring({ handColouring: true }, pair);
  expect(findings).toEqual([]);
  const [view] = views;
  expect(view).toMatchObject({
    id: 'hand-colouring',
    kind: 'derived',
    captures: ['side.tif', 'even.tif'],
  });
  const uncertainty = figureOf(view, 'area-uncertainty');
  expect(Math.abs(figureOf(view, 'area') - 240)).toBeLessThan(uncertainty);
  expect(uncertainty).toBeLessThan(50);
  // The record's size is 70 by 52 mm.
  expect(figureOf(view, 'area-share')).toBeCloseTo((100 * figureOf(view, 'area')) / 3640, 1);
  expect(view.caution).toContain('Not an identification of pigment');
});

test('a plate whose record does not speak of colouring is not looked at', async () => {
  expect(await colouring({}, pair)).toEqual({ views: [], findings: [] });
});

test('without a negative in an even field the note says what to take', async () => {
  const { views, findings } = await colouring({ handColouring: true }, [pair[0]]);
  expect(views).toEqual([]);
  expect(findings).toMatchObject([
    {
      ...{ level: 'note', code: 'hand-colouring-not-told', plate: 'bench' },
      message:
        'Hand colouring is recorded, but its area cannot be told here: it takes a positive under a side lamp and a negative in an even field of one sitting, both in register.',
    },
  ]);
  expect(findings[0].remedy).toMatch(
    /^Take a positive under a side lamp and a negative in an even field/,
  );
});
