/**
 * The shaders against their CPU twins, pixel by pixel, through the whole page: tiles, layers,
 * last pass, read back from the canvas.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { openDrawingBrowser, pairPlate, settled } from './viewer-page.ts';
import { codes, readAt, worstSlide, worstTilt, zooms } from './viewer-reading.ts';

const site = inject('siteUrl');
const plate = pairPlate(inject('siteFolder'));

let browser: Browser;
beforeAll(async () => {
  browser = await openDrawingBrowser();
});
afterAll(() => browser.close());

describe.each([1, 2])('at a device pixel ratio of %d', (deviceScaleFactor) => {
  let page: Page;
  beforeAll(async () => {
    const context = await browser.newContext({
      deviceScaleFactor,
      viewport: { width: 620, height: 520 },
      reducedMotion: 'reduce',
    });
    page = await context.newPage();
    await page.goto(`${site}${plate.page}#view=tilt&of=${plate.positive},${plate.negative}`);
    await settled(page);
  });
  afterAll(() => page.context().close());

  test.each(zooms)(
    'Tilt and Slide equal their CPU twins within 1 count at zoom %d',
    async (zoom) => {
      const reading = await readAt(page, zoom);
      const first = codes(reading.first);
      const second = codes(reading.second);
      const covered = first.filter((code, i) => i % 4 === 3 && code === 255).length;
      expect(covered).toBeGreaterThan(1000);
      // Both layers must be different pictures, or the comparison would say nothing.
      expect(first.equals(second)).toBe(false);
      expect(worstTilt(reading)).toBeLessThanOrEqual(1);
      expect(worstSlide(reading)).toBeLessThanOrEqual(1);
    },
  );
});
