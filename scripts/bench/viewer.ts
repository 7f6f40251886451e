/**
 * The viewer in a browser with software drawing: how far the shaders are from their CPU twins,
 * what moving a control asks for, and what the last pass costs beside OpenSeadragon's own
 * drawing of the same two pictures in the same window.
 */
import { mkdtemp, readFile, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { buildExhibit } from '../../src/pipeline/build.ts';
import { findPlaces } from '../../src/pipeline/places.ts';
import { serveStatic } from '../../tests/site/static-server.ts';
import {
  openDrawingBrowser,
  pairPlate,
  requestsFrom,
  settled,
  type OpenStage,
} from '../../tests/site/viewer-page.ts';
import { readAt, worstSlide, worstTilt, zooms } from '../../tests/site/viewer-reading.ts';
import type { BenchRow } from './row.ts';

const base = '/exhibit/';
const group = 'viewer';

async function built(): Promise<{ readonly folder: string; readonly temporary: boolean }> {
  const ready = process.env['MIRRORLEAF_TEST_SITE'];
  if (ready !== undefined) return { folder: ready, temporary: false };
  const folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-bench-'));
  process.env['MIRRORLEAF_BASE'] = base;
  const code = await buildExhibit({ places: findPlaces({ out: folder }), quiet: true });
  if (code !== 0) throw new Error(`The demonstration did not build (exit code ${code}).`);
  return { folder, temporary: true };
}

async function tiltPage(browser: Browser, address: string, density: number): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 900, height: 700 },
    deviceScaleFactor: density,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await page.goto(`${address}#view=tilt&tilt=8`);
  await settled(page);
  await page.waitForTimeout(1500);
  return page;
}

async function largestError(browser: Browser, address: string): Promise<number> {
  let most = 0;
  for (const density of [1, 2]) {
    const page = await tiltPage(browser, address, density);
    for (const zoom of zooms) {
      const reading = await readAt(page, zoom);
      most = Math.max(most, worstTilt(reading), worstSlide(reading));
    }
    await page.context().close();
  }
  return most;
}

async function requestsWhileMoving(page: Page): Promise<number> {
  const asked = requestsFrom(page);
  await page.locator('input[data-set="tilt"]').focus();
  for (let i = 0; i < 120; i++) await page.keyboard.press(i % 40 < 30 ? 'ArrowLeft' : 'ArrowRight');
  await page.waitForTimeout(500);
  return asked.length;
}

/** Median milliseconds of drawing to the end: the last pass alone, or everything by the library. */
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
        if ('read' in drawer) drawer.read(0, 0, 1, 1);
        else canvas.getContext('2d')!.getImageData(0, 0, 1, 1);
      }
    };
    for (let i = 0; i < 5; i++) once();
    const times = Array.from({ length: 40 }, () => {
      const start = performance.now();
      once();
      return performance.now() - start;
    }).sort((a, b) => a - b);
    return times[20];
  }, what);
}

async function scriptKilobytes(folder: string): Promise<number> {
  const assets = join(folder, 'assets');
  const names = await readdir(assets);
  const compressed = async (path: string) => gzipSync(await readFile(path)).length;
  const size = async (pattern: RegExp) =>
    compressed(join(assets, names.find((name) => pattern.test(name)) ?? 'missing'));
  const library = 'node_modules/openseadragon/build/openseadragon/openseadragon.min.js';
  const alone = await compressed(join(import.meta.dirname, '..', '..', library));
  return ((await size(/^PlateStage.*\.js$/)) + (await size(/^osd.*\.js$/)) - alone) / 1000;
}

export default async function (): Promise<BenchRow[]> {
  const { folder, temporary } = await built();
  const server = await serveStatic(folder, base);
  const shader = await openDrawingBrowser();
  const plain = await openDrawingBrowser(['--disable-3d-apis']);
  try {
    const address = server.url + pairPlate(folder).page;
    const error = await largestError(shader, address);
    const page = await tiltPage(shader, address, 1);
    const requests = await requestsWhileMoving(page);
    const pass = await drawTime(page, 'last pass');
    const whole = await drawTime(page, 'whole draw');
    const library = await drawTime(await tiltPage(plain, address, 1), 'whole draw');
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
      row('max_count_error', error, 'counts of 255', 1),
      row('requests_while_moving', requests, 'requests in 120 moves', 0),
      {
        ...row('pass_ratio_to_osd_draw', pass / library, 'times', 1),
        reference: {
          name: `canvas draw, ms (our whole redraw ${whole.toFixed(1)} ms)`,
          value: library,
        },
      },
      row('script_kb_gzip', await scriptKilobytes(folder), 'kB', 45),
    ];
  } finally {
    await shader.close();
    await plain.close();
    await server.close();
    if (temporary) await rm(folder, { recursive: true, force: true });
  }
}
