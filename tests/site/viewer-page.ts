/** Opening a plate with a pair in a browser with software drawing, and waiting until it rests. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
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

/** The parts of the viewer that a test reaches into; the same names as in the sources. */
export interface OpenStage extends HTMLElement {
  readonly surfaces: {
    first: {
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
        };
        forceRedraw(): void;
      };
    } | null;
  };
}

/** Wait until all tiles of what is shown are there and drawn. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(
    () => {
      const stage = document.querySelector<OpenStage>('plate-stage');
      const viewer = stage?.surfaces.first?.viewer;
      if (stage?.dataset['live'] === undefined || !viewer) return false;
      const { world } = viewer;
      const items = Array.from({ length: world.getItemCount() }, (_, i) => world.getItemAt(i));
      const shown = items.filter((item) => item.getOpacity() > 0);
      return shown.length > 0 && !world.needsDraw() && shown.every((i) => i.getFullyLoaded());
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
