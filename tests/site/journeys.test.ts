/**
 * Three readers, each from the home page to what they came for, by what is written on the page:
 * a visitor, a teacher with a class, a researcher with a footnote to write.
 */
import { readFile } from 'node:fs/promises';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { openDrawingBrowser, settled } from './viewer-page.ts';

const home = inject('siteUrl');
let browser: Browser;

beforeAll(async () => {
  browser = await openDrawingBrowser();
});
afterAll(() => browser.close());

const soon = (read: () => Promise<unknown>) => expect.poll(read, { timeout: 20_000 });

async function begin(): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({
    viewport: { width: 900, height: 700 },
    reducedMotion: 'reduce',
    acceptDownloads: true,
  });
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const page = await context.newPage();
  await page.goto(home);
  return { context, page };
}

/** Nothing of an exhibit may be asked of anybody else. */
function elsewhere(page: Page): string[] {
  const asked: string[] = [];
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(new URL(home).origin) && !/^(data|blob):/.test(url)) asked.push(url);
  });
  return asked;
}

test('a visitor finds a plate coloured by hand, turns it and reads whose it was', async () => {
  const { context, page } = await begin();
  const asked = elsewhere(page);
  await page.getByRole('link', { name: 'Plates', exact: true }).click();
  await page.locator('#by-colour summary').click();
  await page.getByLabel('coloured by hand').check();
  const shown = page.locator('.plates > li:visible');
  expect(await shown.count()).toBe(1);
  await shown.getByRole('link', { name: "The pilot's desk" }).click();
  await page.waitForURL('**/plates/chart-desk/');

  await page.getByRole('button', { name: 'Tilt', exact: true }).click();
  await settled(page);
  const tilt = page.locator('plate-stage').getByRole('slider').first();
  await tilt.focus();
  for (let k = 0; k < 40; k += 1) await page.keyboard.press('ArrowRight');
  await soon(() => page.evaluate(() => location.hash)).toMatch(/view=tilt.*tilt=\d/);

  const provenance = page.getByRole('heading', { name: 'Provenance' });
  await provenance.scrollIntoViewIfNeeded();
  const owners = await page.locator('.provenance > li').allInnerTexts();
  expect(owners.join(' ')).toContain('Pilots’ Association, Fennel Quay');
  expect(owners.at(-1)).toMatch(/^1994\s+Transferred to the museum/);
  expect(asked).toEqual([]);
  await context.close();
});

test('a teacher opens “Why it turns” full screen and prints the sheet without the answer', async () => {
  const { context, page } = await begin();
  await page.getByRole('link', { name: 'Lessons', exact: true }).click();
  await page.getByRole('link', { name: 'Why it turns' }).first().click();
  await page.waitForURL('**/lessons/why-it-turns/');
  const whole = page.locator('.turning-control').getByRole('button', { name: 'Full screen' });
  await whole.click();
  await soon(() => whole.getAttribute('aria-pressed')).toBe('true');
  // The class sees the drawing, the control and the plate without moving the page.
  for (const part of ['.turning-drawings', '#turning-tilt', '.turning-plate .stage-well']) {
    expect(
      await page
        .locator(part)
        .first()
        .evaluate((element) => {
          const { top, height } = element.getBoundingClientRect();
          return height > 20 && top >= 0 && top < innerHeight;
        }),
      part,
    ).toBe(true);
  }
  await page.locator('#turning-tilt').fill('12');
  await soon(() => page.locator('.turning-drawings figcaption').textContent()).toContain('12.0°');
  await whole.click();
  await soon(() => page.evaluate(() => document.fullscreenElement === null)).toBe(true);

  await page.evaluate(() => {
    window.print = () => (document.body.dataset['printed'] = '');
  });
  await page.getByRole('button', { name: 'Print the sheet' }).click();
  expect(await page.locator('body').getAttribute('data-printed')).toBe('');
  await page.emulateMedia({ media: 'print' });
  const sheet = await page.locator('main').innerText();
  expect(sheet).toContain('For the sheet');
  expect(sheet).toContain('by how much did the direction of the reflected ray turn?');
  expect(sheet).not.toContain('By 10 degrees');
  expect(await page.getByRole('button', { name: 'Print the sheet' }).isVisible()).toBe(false);
  await context.close();
});

test('a researcher marks a scratch, measures it, cites it, and takes picture and manifest', async () => {
  const { context, page } = await begin();
  await page.getByRole('link', { name: 'Plates', exact: true }).click();
  await page.locator('#by-condition summary').click();
  await page.getByLabel(/^scratch/).check();
  await page
    .locator('.plates > li:visible')
    .getByRole('link', { name: "The pilot's desk" })
    .click();
  // The record says where the scratch is; the link shows it.
  await page.getByRole('link', { name: /^Show where: scratch/ }).click();
  await soon(() => page.evaluate(() => location.hash)).toContain('xywh=pixel:');
  await settled(page);
  const stage = page.locator('plate-stage');

  await stage.getByRole('button', { name: 'Spots' }).click();
  await stage.getByLabel('Title of a new spot').fill('The scratch on the chart');
  await stage.getByRole('button', { name: 'Keep the shape, or what is in sight' }).click();
  await soon(() => stage.locator('[data-part="spot-list"]').innerText()).toContain(
    'The scratch on the chart',
  );

  await stage.getByRole('button', { name: 'Measure', exact: true }).click();
  // An open tool makes the picture's box lower; all of it in sight, so that no press moves the page.
  await stage.evaluate((element) => element.scrollIntoView());
  await page.waitForTimeout(600);
  await settled(page);
  const box = (await page.locator('[data-surface="first"]').boundingBox())!;
  await page.mouse.click(box.x + box.width * 0.3, box.y + box.height * 0.6);
  await page.waitForTimeout(600);
  await page.mouse.click(box.x + box.width * 0.7, box.y + box.height * 0.4);
  const measured = stage.locator('[data-part="measured"]');
  await soon(() => measured.textContent()).toMatch(/[\d.]+\smm ± [\d.]+\smm/);

  await stage.getByRole('button', { name: 'Cite' }).click();
  await page.waitForTimeout(600);
  await stage.getByRole('button', { name: 'Copy', exact: true }).click();
  const citation = await page.evaluate(() => navigator.clipboard.readText());
  expect(citation).toContain('FQ 1994.21');
  const address = /https?:\S+$/.exec(citation)?.[0] ?? '';

  const region = await regionOf(page);
  const picture = page.waitForEvent('download', { timeout: 60_000 });
  await stage.getByRole('button', { name: 'Take away' }).click();
  await stage.getByRole('button', { name: 'Save what is in sight as PNG' }).click();
  const png = await readFile(await (await picture).path());
  expect((await sharp(png).metadata()).width).toBeGreaterThanOrEqual(region.width);

  const manifest = page.getByRole('link', { name: 'IIIF manifest' });
  const answer = await page.request.get(
    await manifest.evaluate((link) => (link as HTMLAnchorElement).href),
  );
  expect(((await answer.json()) as { label: object }).label).toMatchObject({
    en: ["The pilot's desk"],
  });
  await context.close();

  // Somebody else, another day, another browser: the same place of the same picture.
  const fresh = await browser.newContext({ viewport: { width: 900, height: 700 } });
  const reader = await fresh.newPage();
  await reader.goto(address);
  await settled(reader);
  const seen = await regionOf(reader);
  const cited = /xywh=pixel:(\d+),(\d+),(\d+),(\d+)/.exec(address)!.slice(1).map(Number);
  const middle = (x: number, width: number) => x + width / 2;
  expect(middle(seen.x, seen.width)).toBeCloseTo(middle(cited[0], cited[2]), -1);
  expect(middle(seen.y, seen.height)).toBeCloseTo(middle(cited[1], cited[3]), -1);
  expect(await reader.locator('plate-stage').innerText()).not.toContain('has changed');
  await fresh.close();
});

function regionOf(page: Page): Promise<{ x: number; y: number; width: number; height: number }> {
  return page.evaluate(() =>
    (
      document.querySelector('plate-stage') as unknown as {
        surfaces: { region(): { x: number; y: number; width: number; height: number } };
      }
    ).surfaces.region(),
  );
}
