/** A whole set of lights, from files to views: lamps told by a ball whose circle nobody gave. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { lightDirection } from '../../../src/imaging/conventions.ts';
import { degreesBetween } from '../../../src/imaging/relight/light-place.ts';
import { lightsViews } from '../../../src/pipeline/combine/lights.ts';
import { lampLayerSchema } from '../../../src/records/layer.ts';
import { figureOf, stageBench } from '../../fixtures/combine/stage-bench.ts';
import { ballSet } from '../../fixtures/relight/ball-set.ts';
import { spiral } from '../../fixtures/relight/lit-plates.ts';

const count = 16;
const ball = { x: 46.3, y: 44.8, radius: 36.4 };
const set = ballSet('satin', ball, count);
const places = spiral(count, 15, 70);
const names = places.map((_, l) => `lights-${String(l + 1).padStart(2, '0')}.tif`);
let bench: Awaited<ReturnType<typeof stageBench>>;
beforeAll(async () => {
  bench = await stageBench();
  for (const [l, name] of names.entries()) {
    await bench.put({ name, width: set.width, height: set.height, data: set.frames[l] });
  }
});
afterAll(() => bench.remove());

/** @param known Of which frames the sitting says where the lamp was. */
function lights(known: (lamp: number) => boolean, more: Record<string, unknown>) {
  const { aligned, sitting } = bench.plate(
    {},
    {
      scale: { pixelsPerMillimetre: set.pixelsPerMillimetre },
      setups: { string: { kind: 'other', lamps: [{ distance: set.distance }] } },
      captures: [
        {
          ...{ id: 'lights', kind: 'lights', setup: 'string', reading: 'positive', ...more },
          frames: names.map((file, l) => ({ file, ...(known(l) ? places[l] : {}) })),
        },
      ],
    },
    { width: set.width, height: set.height },
  );
  return lightsViews(aligned, sitting, sitting.record.captures[0], bench.context);
}

test('a ball anywhere in the frame tells the lamps of which the sitting is silent', async () => {
  const third = (lamp: number) => lamp % 3 === 0;
  const { views, findings } = await lights(third, { ballWithin: 'frame' });
  expect(findings.map(({ code }) => code).filter((code) => code !== 'lamps-too-far-apart')).toEqual(
    [],
  );
  expect(views.map(({ id }) => id)).toEqual([
    ...['lights', 'lights-slope', 'lights-relief', 'lights-gloss'],
    ...[2, 4, 6, 8, 10, 12, 14, 16].map((n) => `lights-${String(n).padStart(2, '0')}`),
  ]);
  const [surface] = views;
  expect(figureOf(surface, 'ball-residual')).toBeLessThan(0.5);
  const setting = Object.fromEntries(surface.settings.map(({ name, value }) => [name, value]));
  expect(setting['lamp directions from']).toBe('the ball');
  expect(setting['lamp strength']).toBe(
    `not told by the ball: its highlight is clipped in ${count} of ${count} frames`,
  );
  const words = /^found by its highlights and outline: x (.+), y (.+), radius (.+) pixels$/;
  const circle = words.exec(String(setting['circle of the ball'])) ?? [];
  [ball.x, ball.y, ball.radius].forEach((value, i) => {
    expect(Math.abs(Number(circle[i + 1]) - value)).toBeLessThan(0.2);
  });
  const layer = lampLayerSchema.parse(
    JSON.parse(
      await readFile(
        join(bench.folder, 'store', 'layers', surface.layers[0].folder, 'layer.json'),
        'utf8',
      ),
    ),
  );
  const errors = layer.lamps.flatMap(({ direction }, l) => {
    const { bearing, height } = places[l];
    const truth = lightDirection(bearing, height);
    return third(l) ? [] : [degreesBetween(direction, truth)];
  });
  expect(errors.sort((a, b) => a - b)[errors.length >> 1]).toBeLessThan(0.75);
  const { made } = bench.tally;
  await lights(third, { ballWithin: 'frame' });
  expect(bench.tally.made).toBe(made);
});

test('a ball that is not where it was said to be is told, with what to do', async () => {
  const elsewhere = { ballWithin: [200, 150, 120, 100] };
  const told = await lights(() => true, elsewhere);
  const found = told.findings.find(({ code }) => code === 'ball-not-found');
  expect(found?.message).toMatch(
    /^The circle of the glossy ball of lights was not found \(.+\); its lamp directions are those of the sitting, not confirmed\.$/,
  );
  expect(found?.remedy).toBe(
    'Give the circle as "ball: { x, y, radius }" in pixels, or a rectangle about it in "ballWithin".',
  );
  expect(told.views[0].kind).toBe('relight');
});

test('a rectangle beside the frame, where the ball alone could tell, leaves the frames as they are', async () => {
  const { findings } = await lights(() => false, { ballWithin: [600, 20, 90, 90] });
  expect(findings.map(({ code, message }) => [code, message])).toEqual([
    [
      'lights-not-fitted',
      'The light of lights cannot be moved: the circle of its glossy ball was not found (the rectangle given for it hardly touches the frame). Its frames are shown as they were taken.',
    ],
  ]);
});

test('without a ball and with lamps unknown the frames are shown as they were taken', async () => {
  const { views, findings } = await lights((lamp) => lamp > 4, {});
  expect(views.map(({ kind }) => kind)).toEqual(Array<string>(8).fill('capture'));
  expect(findings.map(({ message }) => message)).toEqual([
    'The light of lights cannot be moved: some frames have neither bearing and height nor a ball. Its frames are shown as they were taken.',
  ]);
});
