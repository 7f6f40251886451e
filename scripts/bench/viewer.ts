/**
 * The viewer in a browser with software drawing: how far the shaders are from their CPU twins,
 * what moving a control asks for, and what the last pass costs beside OpenSeadragon's own
 * drawing, by its WebGL drawer in the same software, of the same two pictures in the same window. Bounded to about four minutes: small
 * windows, few repetitions, and a clock that skips the rest of the zooms rather than run on.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { buildExhibit } from '../../src/pipeline/build.ts';
import { findPlaces } from '../../src/pipeline/places.ts';
import { serveStatic } from '../../src/pipeline/static-server.ts';
import {
  openDrawingBrowser,
  pairPlate,
  requestsFrom,
  settled,
  type OpenStage,
} from '../../tests/site/viewer-page.ts';
import { readAt, worstSlide, worstTilt, zooms } from '../../tests/site/viewer-reading.ts';
import { viewerScript } from '../../tests/site/viewer-script.ts';
import type { BenchRow } from './row.ts';

const base = '/exhibit/';
const group = 'viewer';
/** Milliseconds for comparing shaders with their twins; at least three zooms are always read. */
const comparing = 60_000;

async function built(): Promise<{ readonly folder: string; readonly temporary: boolean }> {
  const ready = process.env['MIRRORLEAF_TEST_SITE'];
  if (ready !== undefined) return { folder: ready, temporary: false };
  const folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-bench-'));
  process.env['MIRRORLEAF_BASE'] = base;
  const code = await buildExhibit({ places: findPlaces({ out: folder }), quiet: true });
  if (code !== 0) throw new Error(`The demonstration did not build (exit code ${code}).`);
  return { folder, temporary: true };
}

async function open(
  browser: Browser,
  address: string,
  fragment: string,
  density: number,
): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 620, height: 520 },
    deviceScaleFactor: density,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await page.goto(`${address}${fragment}`);
  await settled(page);
  await page.waitForTimeout(500);
  return page;
}

/** The largest error, and how many zooms it was looked for at. */
async function largestError(
  browser: Browser,
  address: string,
): Promise<{ readonly most: number; readonly places: number }> {
  const until = performance.now() + comparing;
  let most = 0;
  let places = 0;
  for (const density of [1, 2]) {
    const page = await open(browser, address, '#view=tilt&tilt=8', density);
    for (const zoom of zooms) {
      if (places >= 3 && performance.now() > until) break;
      const reading = await readAt(page, zoom);
      most = Math.max(most, worstTilt(reading), worstSlide(reading));
      places++;
    }
    await page.context().close();
  }
  return { most, places };
}

async function requestsWhileMoving(page: Page, control: string): Promise<number> {
  const asked = requestsFrom(page);
  await page.evaluate(async (selector) => {
    const range = document.querySelector<HTMLInputElement>(selector)!;
    const [low, high] = [Number(range.min), Number(range.max)];
    for (let i = 0; i < 120; i++) {
      range.value = String(low + ((high - low) * (i % 40)) / 40);
      range.dispatchEvent(new Event('input', { bubbles: true }));
      await new Promise((resolve) => requestAnimationFrame(resolve));
    }
  }, control);
  await page.waitForTimeout(500);
  return asked.length;
}

/**
 * Median milliseconds of drawing to the end: the last pass alone, or everything by the library.
 * Ends after nine repetitions or twenty seconds.
 */
async function drawTime(page: Page, what: 'last pass' | 'whole draw'): Promise<number> {
  return page.evaluate((what) => {
    const { viewer } = document.querySelector<OpenStage>('plate-stage')!.surfaces.first!;
    const { world } = viewer;
    const drawer = viewer.drawer as typeof viewer.drawer & { draw(items: unknown[]): void };
    const items = Array.from({ length: world.getItemCount() }, (_, i) => world.getItemAt(i));
    const once = () => {
      if (what === 'last pass') drawer.read(0, 0, 1, 1);
      else {
        drawer.draw(items);
        const canvas = drawer.canvas;
        // Reading one pixel waits for the end of the drawing.
        if ('read' in drawer) drawer.read(0, 0, 1, 1);
        else canvas.getContext('2d')!.getImageData(0, 0, 1, 1);
      }
    };
    once();
    once();
    const times: number[] = [];
    const begin = performance.now();
    while (times.length < 3 || (times.length < 9 && performance.now() - begin < 20_000)) {
      const start = performance.now();
      once();
      times.push(performance.now() - start);
    }
    return times.sort((a, b) => a - b)[times.length >> 1];
  }, what);
}

/** Let the library's own WebGL drawer take over, with the tiles that are there. */
async function useLibraryDrawer(page: Page): Promise<void> {
  const type = await page.evaluate(() => {
    const viewer = document.querySelector<OpenStage>('plate-stage')!.surfaces.first!
      .viewer as unknown as {
      requestDrawer(name: string, how: object): void;
      world: { requestInvalidate(restore: boolean): void };
      drawer: { getType(): string };
    };
    viewer.requestDrawer('webgl', { mainDrawer: true, redrawImmediately: false });
    viewer.world.requestInvalidate(true);
    return viewer.drawer.getType();
  });
  if (type !== 'webgl') throw new Error(`The library drew by "${type}", not by WebGL.`);
  await page.waitForTimeout(3000);
  await settled(page);
}

export default async function (): Promise<BenchRow[]> {
  const { folder, temporary } = await built();
  const server = await serveStatic(folder, base);
  const shader = await openDrawingBrowser();
  try {
    const address = server.url + pairPlate(folder).page;
    const { most, places } = await largestError(shader, address);
    const page = await open(shader, address, '#view=tilt&tilt=8', 1);
    const tilt = await requestsWhileMoving(page, 'input[data-set="tilt"]');
    const pass = await drawTime(page, 'last pass');
    const whole = await drawTime(page, 'whole draw');
    const slide = await open(shader, address, '#view=slide', 1);
    const divider = await requestsWhileMoving(slide, 'input[data-set="divider"]');
    const beside = await open(shader, address, '#view=tilt&tilt=8', 1);
    await useLibraryDrawer(beside);
    const library = await drawTime(beside, 'whole draw');
    const row = (name: string, value: number, unit: string, goal: number): BenchRow => ({
      group,
      name,
      value,
      unit,
      reference: null,
      goal,
      better: 'lower',
    });
    return [
      {
        ...row('max_count_error', most, 'counts of 255', 1),
        reference: { name: 'zooms read, both densities', value: places },
      },
      row('requests_while_moving', Math.max(tilt, divider), 'requests in 120 moves', 0),
      {
        ...row('pass_ratio_to_osd_draw', pass / library, 'times', 1),
        reference: {
          name: `OpenSeadragon's WebGL draw, ms (our last pass ${pass.toFixed(1)} ms, whole redraw ${whole.toFixed(1)} ms)`,
          value: library,
        },
      },
      row('script_kb_gzip', viewerScript(folder).bytes / 1000, 'kB', 45),
    ];
  } finally {
    await shader.close();
    await server.close();
    if (temporary) await rm(folder, { recursive: true, force: true });
  }
}
