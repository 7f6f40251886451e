/** Opening a plate with a pair in a browser with software drawing, and waiting until it rests. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';
import { differencePair, viewWith } from '../../src/viewer/mode-views.ts';
import type { StageData } from '../../src/viewer/stage-data.ts';
import { browserFlags, browserPath } from './browser.ts';
import { allPages } from './pages.ts';

/** WebGL 2 in software, so that the shaders run where there is no graphics card. */
const drawing = ['--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'];

export function openDrawingBrowser(extra: readonly string[] = drawing): Promise<Browser> {
  return chromium.launch({ executablePath: browserPath, args: [...browserFlags, ...extra] });
}

function stageDataIn(html: string): StageData | null {
  const found = /<script type="application\/json">(.*?)<\/script>/s.exec(html);
  return found ? (JSON.parse(found[1]) as StageData) : null;
}

export interface PairPlate {
  /** Address under the base path, `plates/quay/`. */
  readonly page: string;
  readonly data: StageData;
  readonly positive: string;
  readonly negative: string;
}

/** The first plate of the built exhibit that has both readings in register and no cover. */
export function pairPlate(folder: string): PairPlate {
  for (const page of allPages(folder).filter((name) => /^plates\/[^/]+\/$/.test(name))) {
    const html = readFileSync(join(folder, page, 'index.html'), 'utf8');
    const data = stageDataIn(html);
    if (data?.pair && !html.includes('<details class="cover')) return { page, data, ...data.pair };
  }
  throw new Error('No plate of the built exhibit has both readings in register.');
}

/** Every plate of the built exhibit that is not covered, with what its viewer knows. */
function plates(folder: string): { readonly page: string; readonly data: StageData }[] {
  return allPages(folder)
    .filter((name) => /^plates\/[^/]+\/$/.test(name))
    .flatMap((page) => {
      const html = readFileSync(join(folder, page, 'index.html'), 'utf8');
      const data = html.includes('<details class="cover') ? null : stageDataIn(html);
      return data === null ? [] : [{ page, data }];
    });
}

/** One plate by its name, with its width in millimetres as its record gives it. */
export function plateOf(
  folder: string,
  slug: string,
): { readonly page: string; readonly data: StageData; readonly width: number } {
  const found = plates(folder).find(({ data }) => data.slug === slug);
  if (found === undefined) throw new Error(`The built exhibit has no plate "${slug}".`);
  const record = join(import.meta.dirname, '..', '..', 'content', 'plates', slug, 'plate.md');
  const size = /^size: \[([\d.]+),/m.exec(readFileSync(record, 'utf8'));
  return { ...found, width: Number(size?.[1]) };
}

/** Whether a plate of the built exhibit has data planes of a kind. */
export function hasLayer(folder: string, layer: string): boolean {
  return plates(folder).some(({ data }) => viewWith(data, layer) !== null);
}

/** The first plate with data planes of a kind, and the view that has them. */
export function layerPlate(
  folder: string,
  layer: string,
): { readonly page: string; readonly view: string; readonly data: StageData } {
  for (const { page, data } of plates(folder)) {
    const view = viewWith(data, layer);
    if (view) return { page, data, view: view.id };
  }
  throw new Error(`No plate of the built exhibit has data planes "${layer}".`);
}

/** The first plate whose two sittings can be compared. */
export function differencePlate(folder: string): {
  readonly page: string;
  readonly pair: readonly [string, string];
} {
  for (const { page, data } of plates(folder)) {
    const pair = differencePair(data);
    if (pair) return { page, pair };
  }
  throw new Error('No plate of the built exhibit has two sittings in register.');
}

/** The parts of the viewer that a test reaches into; the same names as in the sources. */
interface OpenSurface {
  readonly viewer: {
    readonly viewport: {
      zoomTo(zoom: number, at: undefined, immediately: boolean): void;
      getHomeZoom(): number;
    };
    readonly world: {
      needsDraw(): boolean;
      getItemCount(): number;
      getItemAt(index: number): { getFullyLoaded(): boolean; getOpacity(): number };
    };
    readonly drawer: {
      readonly counts?: { layerPasses: number; lastPasses: number; uploads: number };
      readonly canvas: HTMLCanvasElement;
      look: unknown;
      read(x: number, y: number, width: number, height: number): Uint8Array;
      readLayer(n: number, x: number, y: number, width: number, height: number): Uint8Array;
    };
    forceRedraw(): void;
  };
}

export interface OpenStage extends HTMLElement {
  readonly surfaces: {
    readonly first: OpenSurface | null;
    readonly second: OpenSurface | null;
    readonly third: OpenSurface | null;
  };
}

/** Wait until all tiles of what is shown are there and drawn. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(
    () => {
      const stage = document.querySelector<OpenStage>('plate-stage');
      if (stage?.dataset['live'] === undefined || !stage.surfaces.first) return false;
      const { first, second, third } = stage.surfaces;
      const count = { beside: 2, difference: 3 }[stage.dataset['mode'] ?? ''] ?? 1;
      const surfaces = [first, second, third].slice(0, count);
      return surfaces.every((surface) => {
        if (!surface) return false;
        const { world } = surface.viewer;
        const items = Array.from({ length: world.getItemCount() }, (_, i) => world.getItemAt(i));
        const shown = items.filter((item) => item.getOpacity() > 0);
        return shown.length > 0 && !world.needsDraw() && shown.every((i) => i.getFullyLoaded());
      });
    },
    undefined,
    { timeout: 60_000, polling: 100 },
  );
}

/**
 * Addresses that the page asks for from now on. The site's icon does not count: the browser
 * itself asks for it again when the address of the page is replaced.
 */
export function requestsFrom(page: Page): string[] {
  const asked: string[] = [];
  page.on('request', (request) => {
    if (!request.url().endsWith('/mark.svg')) asked.push(request.url());
  });
  return asked;
}

/** Bring a plate to a zoom and wait until it rests. */
export async function zoomTo(page: Page, zoom: number): Promise<void> {
  await page.evaluate((factor) => {
    const viewer = document.querySelector<OpenStage>('plate-stage')!.surfaces.first!.viewer;
    viewer.viewport.zoomTo(viewer.viewport.getHomeZoom() * factor, undefined, true);
    viewer.forceRedraw();
  }, zoom);
  await page.waitForTimeout(120);
  await settled(page);
}

/** A page in a window of its own, small enough for software drawing, with nothing that moves by itself. */
export async function openStill(
  browser: Browser,
  address: string,
  options: BrowserContextOptions = {},
): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 900, height: 700 },
    reducedMotion: 'reduce',
    ...options,
  });
  const page = await context.newPage();
  await page.goto(address);
  return page;
}
