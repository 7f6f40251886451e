/**
 * The planner and the lessons in a browser: by keyboard, without script, on paper, and the
 * section that turns with the plate.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { visitPage } from './browser.ts';
import { openDrawingBrowser } from './viewer-page.ts';

const url = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await openDrawingBrowser();
});
afterAll(() => browser.close());

const visit = <T>(page: string, look: (page: Page) => Promise<T>, script = true, width = 1280) =>
  visitPage(browser, url, { page, script, width }, look);

const ghost = (page: Page) =>
  page.locator('tr', { hasText: 'Ghost beside the picture' }).locator('td').innerText();

describe('the planner', () => {
  test('without script shows the worked example, its formulas and its drawings', async () => {
    await visit(
      'planner/',
      async (page) => {
        expect(await ghost(page)).toBe('0.743\u202fmm');
        const body = await page.locator('main').innerText();
        expect(body).toContain('Without script this page shows the worked example');
        expect(await page.locator('details').count()).toBe(8);
        await page.locator('details summary').nth(4).click();
        expect(await page.locator('main').innerText()).toContain('t sin 2i/√(n² − sin² i)');
        expect(await page.locator('svg.setup-svg').count()).toBe(6);
      },
      false,
    );
  });

  test('is worked by keyboard alone, and says what changed', async () => {
    await visit('planner/', async (page) => {
      await page.locator('#plan-panelDistance').focus();
      await page.keyboard.press('Shift+Tab');
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('plan-glassThickness');
      await page.keyboard.press('Control+A');
      await page.keyboard.type('3');
      // 3 x 0.743212 mm.
      await expect.poll(() => ghost(page), { timeout: 20_000 }).toBe('2.23\u202fmm');
      expect(await page.locator('[role=status]').innerText()).toMatch(/warning/);
      expect(await page.locator('pre').innerText()).toContain('thickness: 3');
      await page.keyboard.press('Control+A');
      await page.keyboard.type('99');
      await expect
        .poll(() => page.locator('[role=status]').innerText(), { timeout: 20_000 })
        .toBe('Outside its limits: Thickness of the glass.');
      expect(await page.locator('#plan-glassThickness').getAttribute('aria-invalid')).toBe('true');
    });
  });

  test('is one sheet of paper with its cautions', async () => {
    await visit('planner/', async (page) => {
      const pdf = (await page.pdf({ format: 'A4' })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('.planner-cautions').isVisible()).toBe(true);
    });
  });
});

describe('a lesson', () => {
  test('one control moves the drawing and the plate', async () => {
    await visit('lessons/why-it-turns/', async (page) => {
      const line = () => page.locator('[data-draw="ray"]').first().getAttribute('d');
      const before = await line();
      await page.locator('#turning-tilt').focus();
      for (let i = 0; i < 12; i += 1) await page.keyboard.press('PageUp');
      expect(await line()).not.toBe(before);
      const shown = await page.locator('turning-section [data-part="said"]').innerText();
      expect(parseFloat(shown)).toBeGreaterThan(5);
      expect(await page.locator('plate-stage [data-part="reading"]').innerText()).toContain(
        `${parseFloat(shown).toFixed(1)}°`,
      );
      // And the other way: the plate's own button moves the drawing.
      await page.locator('plate-stage [data-do="tilt:less"]').click();
      await expect
        .poll(() => page.locator('turning-section [data-part="said"]').innerText(), {
          timeout: 20_000,
        })
        .not.toBe(shown);
    });
  });

  test('keeps its answer on a page of its own', async () => {
    await visit('lessons/why-it-turns/', async (page) => {
      expect(await page.locator('main').innerText()).not.toContain('By 10 degrees');
      await page.getByRole('link', { name: 'To the answer' }).click();
      await page.waitForURL(/answer\/$/);
      expect(await page.locator('main').innerText()).toContain('By 10 degrees');
    });
  });
});
