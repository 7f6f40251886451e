/** What raking adds, on pictures whose light is known. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { PlannedView } from '../../../src/pipeline/combine/part.ts';
import { rakingViews } from '../../../src/pipeline/combine/raking.ts';
import { openFrames } from '../../../src/raster/frame-strips.ts';
import { figureOf, stageBench } from '../../fixtures/combine/stage-bench.ts';

const [width, height] = [320, 240];
/** Codes of ground and scratch: the third lamp is weaker. */
const captures = [
  { name: 'left.tif', ground: 120, scratch: 200 },
  { name: 'right.tif', ground: 120, scratch: 200 },
  { name: 'top.tif', ground: 90, scratch: 152 },
];
/** Columns where each capture has its scratch; what the means of the cells look at is every fourth. */
const columns = [
  [62, 63],
  [142, 143],
  [222, 223],
];
/** IEC 61966-2-1, above its straight part. */
const linear = (code: number) => ((code / 255 + 0.055) / 1.055) ** 2.4;

let bench: Awaited<ReturnType<typeof stageBench>>;
let views: PlannedView[];
beforeAll(async () => {
  bench = await stageBench();
  views = [];
  for (const [k, { name, ground, scratch }] of captures.entries()) {
    const data = new Uint8Array(width * height * 3).fill(ground);
    for (let y = 0; y < height; y += 1) {
      for (const x of columns[k]) data.fill(scratch, 3 * (y * width + x), 3 * (y * width + x) + 3);
    }
    const view = await bench.put({ name, width, height, data });
    views.push({ ...view, setupKind: 'raking' });
  }
});
afterAll(() => bench.remove());

function added(some: readonly PlannedView[]) {
  const capture = { id: 'left', file: 'left.tif', setup: 'raking', reading: 'positive' };
  const { aligned } = bench.plate({}, { captures: [capture] }, { width, height });
  return rakingViews(aligned, some, bench.context);
}

test('a scratch that one lamp shows is white, what all lamps show is black', async () => {
  const { views: made } = await added(views);
  const [view] = made;
  expect(made.map(({ id, kind }) => [id, kind])).toEqual([['raking-adds', 'derived']]);
  expect(view.captures).toEqual(['left.tif', 'right.tif', 'top.tif']);
  // Made equally bright, each is the mean of the three grounds; above it lies what the scratch adds.
  const mean = captures.reduce((sum, { ground }) => sum + linear(ground) / 3, 0);
  const excess = captures.map(
    ({ ground, scratch }) => (mean * linear(scratch)) / linear(ground) - mean,
  );
  expect(figureOf(view, 'raking-median')).toBeCloseTo(0, 3);
  const high = figureOf(view, 'raking-high');
  expect(high).toBeGreaterThan(99 * Math.min(...excess));
  expect(high).toBeLessThan(101 * Math.max(...excess));
  const strips = await openFrames([{ path: view.path, gain: 1, homography: null }], {
    frame: { width, height },
    scratch: bench.context.store.scratch,
  });
  for await (const { top, rows, frames } of strips.strips()) {
    for (let x = 0; x < width; x += 1) {
      const code = frames[0][3 * ((rows >> 1) * width + x)];
      if (columns.flat().includes(x))
        expect(code, `column ${x} below row ${top}`).toBeGreaterThan(245);
      else expect(code, `column ${x} below row ${top}`).toBeLessThan(3);
    }
  }
  await strips.close();
});

test('one bearing alone, or one out of register, adds nothing', async () => {
  expect(await added([views[0]])).toEqual({ views: [], findings: [] });
  expect(await added([views[0], { ...views[1], registered: false }])).toEqual({
    views: [],
    findings: [],
  });
  expect(await added([views[0], { ...views[1], width: 160 }])).toEqual({ views: [], findings: [] });
});
