/**
 * The built pages in a browser: for readers with and without script, by keyboard, on a narrow
 * screen, in light and dark.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { openBrowser, visitPage, type Visit } from './browser.ts';
import { pageOfEachKind, pagesToWalk } from './pages.ts';

const url = inject('siteUrl');
const folder = inject('siteFolder');
const kinds = Object.entries(pageOfEachKind(folder));
const kind = pageOfEachKind(folder);
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const visit = <T>(options: Visit, look: (page: Page) => Promise<T>) =>
  visitPage(browser, url, options, look);

describe.each(['light', 'dark'] as const)('axe finds nothing, %s', (scheme) => {
  test.each(kinds)('%s', async (_, path) => {
    const { violations, passes } = await visit({ page: path, scheme }, async (page) => {
      // Folded parts are pages too.
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      // By the debugger, which the page's policy does not bind.
      await page.evaluate(axe);
      return page.evaluate(() =>
        (globalThis as unknown as { axe: { run(node: Document): Promise<AxeResults> } }).axe.run(
          document,
        ),
      );
    });
    const said = violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' ')}`);
    expect(said).toEqual([]);
    expect(passes.map(({ id }) => id)).toContain('color-contrast');
  });
});

test('no page asks another host for anything, misses a file, or complains', async () => {
  const context = await browser.newContext();
  const faults: string[] = [];
  const page = await context.newPage();
  page.on('request', (request) => {
    if (!request.url().startsWith(url) && !/^(data|blob):/.test(request.url())) {
      faults.push(`${page.url()} asks for ${request.url()}`);
    }
  });
  page.on('response', (response) => {
    if (response.status() >= 400) faults.push(`${response.status()} ${response.url()}`);
  });
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`${page.url()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => faults.push(`${page.url()}: ${error.message}`));
  // Kinds of page whose script loads words of the language.
  const spoken = pagesToWalk(folder, ['plates', 'plate', 'search', 'planner', 'lesson']);
  for (const path of spoken) {
    await page.goto(`${url}${path}`, { waitUntil: 'networkidle' });
  }
  await context.close();
  expect(faults).toEqual([]);
});

describe('nothing scrolls sideways at 320 px', () => {
  test.each(kinds)('%s', async (_, path) => {
    const wide = await visit({ page: path, width: 320 }, (page) =>
      page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
        return document.documentElement.scrollWidth;
      }),
    );
    expect(wide).toBe(320);
  });
});

describe('without script', () => {
  test('a plate shows both readings as pictures, with their text alternatives', async () => {
    const pictures = await visit({ page: kind['plate'], script: false }, (page) =>
      page.locator('.stand img').evaluateAll((images) =>
        (images as HTMLImageElement[]).map((image) => ({
          seen: image.getBoundingClientRect().width > 100 && image.naturalWidth > 0,
          alt: image.alt,
        })),
      ),
    );
    const seen = pictures.filter((picture) => picture.seen);
    expect(seen.length).toBeGreaterThanOrEqual(2);
    expect(new Set(seen.map(({ alt }) => alt)).size).toBeGreaterThanOrEqual(2);
    expect(seen.every(({ alt }) => alt.length > 20)).toBe(true);
  });

  test('a plate has all the text and all the links that it has with script', async () => {
    const read = (script: boolean) =>
      visit({ page: kind['plate'], script }, async (page) => {
        // A button that only a script can answer is neither text nor link.
        await page.locator('.body button').evaluateAll((buttons) => {
          for (const button of buttons) button.remove();
        });
        return {
          text: await page.locator('.heading, .body').allInnerTexts(),
          links: await page
            .locator('.heading a, .body a, .turning a')
            .evaluateAll((links) => links.map((link) => link.getAttribute('href'))),
        };
      });
    const [without, withScript] = [await read(false), await read(true)];
    expect(without.text.join('').length).toBeGreaterThan(1000);
    expect(without).toEqual(withScript);
  });

  test('a plate with a word of care shows it, and its pictures only when asked', async () => {
    await visit({ page: kind['covered'], script: false }, async (page) => {
      const picture = page.locator('.stand img').first();
      expect(await page.locator('.cover > summary').innerText()).toContain('Show the pictures');
      expect(await picture.isVisible()).toBe(false);
      await page.locator('.cover > summary').click();
      expect(await picture.isVisible()).toBe(true);
    });
  });

  test('the index can be narrowed, and every choice by itself keeps a plate', async () => {
    await visit({ page: kind['plates'], script: false }, async (page) => {
      const plates = page.locator('.plates > li');
      const all = await plates.count();
      const counts: number[] = [];
      for (const summary of await page.locator('.facets summary').all()) await summary.click();
      for (const choice of await page.locator('.facets input[id]').all()) {
        await choice.check();
        counts.push(
          await plates.evaluateAll(
            (items) => items.filter((item) => getComputedStyle(item).display !== 'none').length,
          ),
        );
        await page.locator('.facets button[type=reset]').click();
      }
      expect(counts.length).toBeGreaterThan(10);
      expect(counts.every((count) => count > 0)).toBe(true);
      expect(counts.some((count) => count < all)).toBe(true);
    });
  });
});

describe('the keyboard alone reaches every link and control, and shows where it is', () => {
  test.each(kinds)('%s', async (_, path) => {
    await visit({ page: path }, async (page) => {
      // The stage shows its controls when the words of the page's language are there.
      await page.waitForFunction(() => document.querySelector(':not(:defined)') === null);
      const expected = await page.evaluate(() => {
        const focusable = 'a[href], button, input, select, textarea, summary, [tabindex="0"]';
        const radios = new Set<string>();
        const wanted = [...document.querySelectorAll<HTMLElement>(focusable)].filter((element) => {
          if (!element.checkVisibility({ visibilityProperty: true })) return false;
          if (element.matches(':disabled, [tabindex="-1"]')) return false;
          // Arrow keys move within a group of radio buttons; Tab stops at one of them.
          if (!element.matches('input[type="radio"]')) return true;
          const { name } = element as HTMLInputElement;
          return !radios.has(name) && Boolean(radios.add(name));
        });
        return wanted.length;
      });
      // Where the focus comes, the page itself notes: one look at the end instead of one a step.
      await page.evaluate(() => {
        const stops: { html: string; shown: boolean }[] = [];
        const seen = new Set<EventTarget>();
        document.addEventListener('focusin', ({ target }) => {
          if (!(target instanceof Element) || seen.has(target)) return;
          seen.add(target);
          const { outlineStyle, outlineWidth } = getComputedStyle(target);
          stops.push({
            html: target.outerHTML.slice(0, 120),
            shown: outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2,
          });
        });
        Object.assign(globalThis, { stops });
      });
      for (let step = 0; step < expected + 2; step++) await page.keyboard.press('Tab');
      const stops = await page.evaluate(
        () => (globalThis as unknown as { stops: { html: string; shown: boolean }[] }).stops,
      );
      expect(stops.filter(({ shown }) => !shown).map(({ html }) => html)).toEqual([]);
      expect(stops.length).toBe(expected);
    });
  });
});

test('the skip link is the first stop and leads to the text', async () => {
  await visit({ page: kind['plate'] }, async (page) => {
    await page.keyboard.press('Tab');
    const link = page.locator(':focus');
    expect(await link.getAttribute('href')).toBe('#main');
    expect(
      await link.evaluate((element) => element.getBoundingClientRect().top),
    ).toBeGreaterThanOrEqual(0);
  });
});

test('text can be set apart as WCAG 1.4.12 asks, without anything being cut off', async () => {
  await visit({ page: kind['plate'], width: 320 }, async (page) => {
    const client = await page.context().newCDPSession(page);
    await client.send('Page.setBypassCSP', { enabled: true });
    await page.reload();
    await page.addStyleTag({
      content:
        '*{line-height:1.5!important;letter-spacing:.12em!important;word-spacing:.16em!important}p{margin-bottom:2em!important}',
    });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
  });
});
