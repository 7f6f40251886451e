/**
 * Lamp, the renderings of the surface, Range and Difference against their CPU twins, pixel by
 * pixel, through the whole page: tiles of data planes, layers, last pass, read back from the
 * canvas at nine zooms.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { lightDirection } from '../../src/imaging/conventions.ts';
import { differenceCode } from '../../src/imaging/difference.ts';
import { lampLight, litPixel } from '../../src/imaging/relight/lamp-light.ts';
import { glossCode, reliefCode, slopeCode } from '../../src/imaging/surface-picture.ts';
import { rangeCode } from '../../src/imaging/wide-range.ts';
import type { GainLayer, LampLayer, SlopeLayer } from '../../src/records/layer.ts';
import type { Look } from '../../src/viewer/look.ts';
import { planesAt, readPlanes, worstOf } from './planes-reading.ts';
import { differencePlate, layerPlate, openDrawingBrowser, settled, zoomTo } from './viewer-page.ts';
import { zooms } from './viewer-reading.ts';

const site = inject('siteUrl');
const folder = inject('siteFolder');

let browser: Browser;
beforeAll(async () => {
  browser = await openDrawingBrowser();
});
afterAll(() => browser.close());

async function open(address: string, deviceScaleFactor: number): Promise<Page> {
  const context = await browser.newContext({
    deviceScaleFactor,
    viewport: { width: 620, height: 620 },
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await page.goto(`${site}${address}`);
  await settled(page);
  return page;
}

const description = async <T>(page: string, view: string, name: string): Promise<T> =>
  (await (await fetch(`${site}${page}views/${view}/${name}/layer.json`)).json()) as T;

const lamps = [
  [315, 45],
  [90, 30],
  [200, 65],
] as const;

describe.each([1, 2])('at a device pixel ratio of %d', (density) => {
  test('Lamp equals its CPU twin within 1 count at nine zooms', async () => {
    const { page: address, view } = layerPlate(folder, 'lamp');
    const layer = await description<LampLayer>(address, view, 'lamp');
    const page = await open(`${address}#view=lamp&of=${view}`, density);
    const lights = lamps.map(([b, h]) => lampLight(layer, lightDirection(b, h)));
    const looks = lights.map((light): Look => ({
      kind: 'lamp',
      planes: layer.planes,
      domain: light.domain,
      base: [...light.base],
      factors: [...light.factors],
    }));
    const count = Math.ceil((layer.planes + 1) / 4);
    for (const zoom of zooms) {
      await zoomTo(page, zoom);
      const { layers, screens } = await readPlanes(page, count, looks);
      const covered = (pixel: number) =>
        layers[layer.planes >> 2][4 * pixel + (layer.planes & 3)] === 255;
      const different = new Set(screens.map((screen) => screen.toString('base64')));
      expect(different.size, 'three lamps, three pictures').toBe(3);
      lights.forEach((light, n) => {
        const { most, pixels } = worstOf(screens[n], covered, (pixel) =>
          litPixel(light, planesAt(layers, layer.planes, pixel)),
        );
        expect(pixels).toBeGreaterThan(1000);
        expect(most, `lamp ${n} at zoom ${zoom}`).toBeLessThanOrEqual(1);
      });
    }
    await page.context().close();
  });

  test('relief, slope and gloss equal their CPU twins within 1 count at nine zooms', async () => {
    const { page: address, view } = layerPlate(folder, 'slope');
    const layer = await description<SlopeLayer>(address, view, 'slope');
    const lamp = layerPlate(folder, 'lamp').view;
    const page = await open(`${address}#view=lamp&of=${lamp}&as=relief`, density);
    const twins = { relief: reliefCode, slope: slopeCode, gloss: glossCode } as const;
    const cases = (['relief', 'slope', 'gloss'] as const).flatMap((rendering) =>
      lamps.map(([b, h]) => ({ rendering, light: lightDirection(b, h) })),
    );
    const { offset, step, steepest } = layer;
    const looks = cases.map(({ rendering, light }): Look => ({
      kind: 'surface',
      rendering,
      light,
      offset,
      step,
      steepest,
    }));
    for (const zoom of zooms) {
      await zoomTo(page, zoom);
      const { layers, screens } = await readPlanes(page, 2, looks);
      cases.forEach(({ rendering, light }, n) => {
        const { most, pixels } = worstOf(
          screens[n],
          (pixel) => layers[1][4 * pixel] === 255,
          (pixel) => {
            const codes = planesAt(layers, 4, pixel).map((c, k) => offset[k] + step[k] * c);
            const sample = { slopeX: codes[0], slopeY: codes[1], gloss: codes[2] };
            return [twins[rendering](sample, light, steepest)];
          },
        );
        expect(pixels).toBeGreaterThan(1000);
        expect(most, `${rendering} at zoom ${zoom}`).toBeLessThanOrEqual(1);
      });
    }
    await page.context().close();
  });

  test('Range equals its CPU twin within 1 count at nine zooms', async () => {
    const { page: address, view } = layerPlate(folder, 'gain');
    const layer = await description<GainLayer>(address, view, 'gain');
    const page = await open(`${address}#view=range&of=${view}`, density);
    const { offsetBase, offsetMerged } = layer.gain;
    const numbers = { offset: layer.offset[0], step: layer.step[0], offsetBase, offsetMerged };
    const exposures = [
      { stops: null, white: 1, clip: null },
      { stops: 0, white: 1, clip: null },
      { stops: -2.5, white: 0.5, clip: null },
      // The shortest and the longest exposure of the bracket.
      ...[layer.frames[0], layer.frames[layer.frames.length - 1]].map(({ stops, clip }) => ({
        stops,
        white: 1,
        clip,
      })),
    ];
    const looks = exposures.map((exposure): Look => ({
      kind: 'range',
      ...numbers,
      ...exposure,
      marks: false,
    }));
    for (const zoom of zooms) {
      await zoomTo(page, zoom);
      const { layers, screens } = await readPlanes(page, 2, looks);
      const [base, gain] = layers;
      exposures.forEach((exposure, n) => {
        const { most, pixels } = worstOf(
          screens[n],
          (pixel) => base[4 * pixel + 3] === 255 && gain[4 * pixel + 3] === 255,
          (pixel) =>
            [0, 1, 2].map((c) =>
              rangeCode(base[4 * pixel + c], gain[4 * pixel], numbers, exposure),
            ),
        );
        expect(pixels).toBeGreaterThan(1000);
        expect(most, `exposure ${n} at zoom ${zoom}`).toBeLessThanOrEqual(1);
      });
    }
    await page.context().close();
  });
});

test('Difference equals its CPU twin within 1 count, and shows both sittings', async () => {
  const { page: address, pair } = differencePlate(folder);
  const page = await open(`${address}#view=difference&of=${pair.join(',')}`, 1);
  const read = await page.evaluate(() => {
    const { surfaces } = document.querySelector('plate-stage') as unknown as {
      surfaces: { third: { viewer: { drawer: ReadingDrawer } }; first: unknown; second: unknown };
    };
    interface ReadingDrawer {
      canvas: HTMLCanvasElement;
      read(x: number, y: number, w: number, h: number): Uint8Array;
      readLayer(n: number, x: number, y: number, w: number, h: number): Uint8Array;
    }
    const { drawer } = surfaces.third.viewer;
    const [x, y] = [(drawer.canvas.width - 96) >> 1, (drawer.canvas.height - 96) >> 1];
    return {
      both: surfaces.first !== null && surfaces.second !== null,
      screen: [...drawer.read(x, y, 96, 96)],
      first: [...drawer.readLayer(0, x, y, 96, 96)],
      second: [...drawer.readLayer(1, x, y, 96, 96)],
    };
  });
  expect(read.both).toBe(true);
  const rgb = (codes: readonly number[], pixel: number) =>
    [codes[4 * pixel], codes[4 * pixel + 1], codes[4 * pixel + 2]] as const;
  const { most, pixels } = worstOf(
    Buffer.from(read.screen),
    (pixel) => read.first[4 * pixel + 3] === 255 && read.second[4 * pixel + 3] === 255,
    (pixel) => [differenceCode(rgb(read.first, pixel), rgb(read.second, pixel), 5)],
  );
  expect(pixels).toBeGreaterThan(1000);
  expect(most).toBeLessThanOrEqual(1);
  await page.context().close();
});
