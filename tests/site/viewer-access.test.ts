/**
 * The stage by keyboard alone, and by axe-core: every way of looking and every tool, light and
 * dark. Small windows, since software drawing is slow.
 */
import axeCore from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import {
  differencePlate,
  layerPlate,
  openDrawingBrowser,
  openStill,
  pairPlate,
  settled,
} from './viewer-page.ts';

const site = inject('siteUrl');
const folder = inject('siteFolder');
let browser: Browser;

beforeAll(async () => {
  browser = await openDrawingBrowser();
});
afterAll(() => browser.close());

const open = (address: string): Promise<Page> =>
  openStill(browser, `${site}${address}`, { viewport: { width: 480, height: 480 } });

describe('axe finds no fault, light and dark,', () => {
  async function faultsOf(page: Page): Promise<string[]> {
    const found: string[] = [];
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      const faults = await page.evaluate(async () => {
        const { axe } = globalThis as unknown as { axe: typeof axeCore };
        const { violations } = await axe.run(document.querySelector('plate-stage')!, {
          runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
        });
        return violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' ')}`);
      });
      found.push(...faults.map((fault) => `${colorScheme} ${fault}`));
    }
    return found;
  }

  test.each([
    [['look', 'slide', 'beside', 'tilt'], pairPlate(folder).page],
    [['lamp'], layerPlate(folder, 'lamp').page],
    [['range'], layerPlate(folder, 'gain').page],
    [['difference'], differencePlate(folder).page],
  ])('in %j', async (modes, address) => {
    const page = await open(address);
    await page.evaluate(axeCore.source);
    for (const mode of modes) {
      await page.locator(`[data-do="mode:${mode}"]`).click();
      await settled(page);
      expect(await faultsOf(page), mode).toEqual([]);
    }
    await page.context().close();
  });

  test('with any tool open', async () => {
    const page = await open(`${pairPlate(folder).page}#view=slide`);
    await settled(page);
    await page.evaluate(axeCore.source);
    for (const tool of ['move', 'measure', 'spots', 'looks', 'take', 'cite']) {
      const button = page.locator(`[data-do="tool:${tool}"]`);
      if ((await button.count()) === 0) continue;
      await button.click();
      expect(await faultsOf(page), tool).toEqual([]);
    }
    await page.context().close();
  });
});

/** What has the focus. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const held = document.activeElement as HTMLInputElement;
    const { width, height } = held.getBoundingClientRect();
    const name =
      held.getAttribute('aria-label') ??
      held.labels?.[0]?.textContent?.trim() ??
      held.textContent?.trim() ??
      '';
    const within = held.closest('plate-stage') !== null;
    const does = held.dataset['do'] ?? held.dataset['part'] ?? held.dataset['set'] ?? '';
    return { name, within, does, width, height, inLine: held.tagName === 'A' };
  });

/** Press Tab until something of the stage has the focus. */
async function tabTo(page: Page, wanted: string): Promise<void> {
  for (let n = 0; n < 90; n++) {
    await page.keyboard.press('Tab');
    if ((await focused(page)).does === wanted) return;
  }
  throw new Error(`“${wanted}” was not reached with Tab.`);
}

describe('with the keyboard alone', () => {
  test.each([
    ['slide', pairPlate(folder).page, 'divider', 'ArrowRight', 'divider=51'],
    ['tilt', pairPlate(folder).page, 'tilt', 'End', 'tilt=20'],
    ['lamp', layerPlate(folder, 'lamp').page, 'lamp', 'ArrowRight', 'lamp=320,45'],
    ['range', layerPlate(folder, 'gain').page, 'stops', 'ArrowRight', 'stops=0.1'],
  ])('%s is reached, turned and left', async (mode, address, control, key, expected) => {
    const page = await open(address);
    await tabTo(page, `mode:${mode}`);
    await page.keyboard.press('Enter');
    await settled(page);
    expect((await focused(page)).does, 'the focus stays').toBe(`mode:${mode}`);
    await page.locator('.skip, a[href^="#"]').first().focus();
    await tabTo(page, control);
    await page.keyboard.press(key);
    await expect.poll(() => page.evaluate(() => location.hash)).toContain(expected);
    // On through the rest of the stage: a name and 24 pixels for each stop, and a way out.
    const stops: Awaited<ReturnType<typeof focused>>[] = [];
    for (let n = 0; n < 60; n++) {
      await page.keyboard.press('Tab');
      const stop = await focused(page);
      if (!stop.within) break;
      stops.push(stop);
    }
    expect(stops.length).toBeGreaterThan(8);
    expect((await focused(page)).within, 'Tab leaves the stage').toBe(false);
    expect(stops.filter(({ name }) => name === '')).toEqual([]);
    const small = stops.filter((s) => !s.inLine && Math.min(s.width, s.height) < 24);
    expect(small).toEqual([]);
    await page.context().close();
  });
});
