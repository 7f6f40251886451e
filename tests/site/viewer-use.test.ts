/** What a reader does with the viewer: addresses, keys, dragging, trouble. */
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import {
  openDrawingBrowser,
  openStill,
  pairPlate,
  requestsFrom,
  settled,
  type OpenStage,
} from './viewer-page.ts';
import { viewerScript } from './viewer-script.ts';

const site = inject('siteUrl');
const folder = inject('siteFolder');
const plate = pairPlate(folder);
const pair = `${plate.positive},${plate.negative}`;
let browser: Browser;

beforeAll(async () => {
  browser = await openDrawingBrowser();
});
afterAll(() => browser.close());

/** Software drawing on a busy machine is slow; the claim is that it comes, not how soon. */
const soon = (read: () => Promise<unknown>) => expect.poll(read, { timeout: 20_000 });

const open = (fragment: string, options: BrowserContextOptions = {}): Promise<Page> =>
  openStill(browser, `${site}${plate.page}${fragment}`, options);

const region = () => {
  const stage = document.querySelector('plate-stage') as unknown as {
    state: { region: unknown };
    surfaces: { region(): { x: number; y: number; width: number; height: number } };
  };
  return stage.surfaces.region();
};

test('nothing of the viewer is fetched before it is asked for', async () => {
  const page = await open('');
  const asked = requestsFrom(page);
  await page.waitForTimeout(1000);
  expect(asked.filter((url) => /info\.json|osd/.test(url))).toEqual([]);
  await page.locator('[data-do="mode:look"]').click();
  await settled(page);
  expect(asked.some((url) => url.endsWith('info.json'))).toBe(true);
  expect(asked.every((url) => url.startsWith(new URL(site).origin))).toBe(true);
  await page.context().close();
});

test('an address opened in a fresh browser shows the same region within one pixel', async () => {
  const { width, height } = plate.data.frame;
  const wanted = {
    x: Math.round(width * 0.3),
    y: Math.round(height * 0.4),
    width: Math.round(width * 0.1),
    height: Math.round(height * 0.05),
  };
  const xywh = Object.values(wanted).join(',');
  const page = await open(`#view=look&of=${plate.positive}&xywh=pixel:${xywh}`);
  await settled(page);
  const seen = await page.evaluate(region);
  // The box has another shape than the region: the region is centred and touches two sides.
  expect(seen.x + seen.width / 2).toBeCloseTo(wanted.x + wanted.width / 2, -0.3);
  expect(seen.y + seen.height / 2).toBeCloseTo(wanted.y + wanted.height / 2, -0.3);
  const fits = Math.min(seen.width - wanted.width, seen.height - wanted.height);
  expect(Math.abs(fits)).toBeLessThanOrEqual(1);
  await page.locator('[data-do="larger"]').click();
  await soon(() => page.evaluate(() => location.hash)).not.toContain(xywh);
  await page.waitForTimeout(900);
  const address = await page.evaluate(() => location.hash);
  const before = await page.evaluate(region);
  const again = await open(address);
  await settled(again);
  const after = await again.evaluate(region);
  for (const side of ['x', 'y', 'width', 'height'] as const)
    expect(Math.abs(after[side] - before[side])).toBeLessThanOrEqual(1);
  await page.context().close();
  await again.context().close();
});

describe('moving a control asks for no tile and draws no layer', () => {
  test.each([
    ['the divider', 'slide', '[data-part="divider"]'],
    ['the tilt', 'tilt', 'input[data-set="tilt"]'],
  ])('%s, 120 moves', async (_, mode, control) => {
    const page = await open(`#view=${mode}&of=${pair}`);
    await settled(page);
    await page.waitForTimeout(800);
    const asked = requestsFrom(page);
    const counts = () =>
      page.evaluate(() => ({
        ...document.querySelector<OpenStage>('plate-stage')!.surfaces.first!.viewer.drawer.counts!,
      }));
    const before = await counts();
    await page.locator(control).focus();
    for (let i = 0; i < 120; i++)
      await page.keyboard.press(i % 40 < 30 ? 'ArrowRight' : 'ArrowLeft');
    await page.waitForTimeout(500);
    const after = await counts();
    expect(asked).toEqual([]);
    expect(after.layerPasses).toBe(before.layerPasses);
    expect(after.lastPasses).toBeGreaterThan(before.lastPasses);
    await page.context().close();
  });
});

test('the divider follows the pointer, and the picture stays where it is', async () => {
  const page = await open(`#view=slide&of=${pair}`);
  await settled(page);
  const before = await page.evaluate(region);
  const handle = (await page.locator('[data-part="divider"]').boundingBox())!;
  await page.mouse.move(handle.x + handle.width / 2, handle.y + handle.height / 2);
  await page.mouse.down();
  await page.mouse.move(handle.x + handle.width / 2 + 150, handle.y + handle.height / 2, {
    steps: 5,
  });
  await page.mouse.up();
  const now = Number(await page.locator('[data-part="divider"]').getAttribute('aria-valuenow'));
  expect(now).toBeGreaterThan(60);
  expect(await page.locator('input[data-set="divider"]').inputValue()).not.toBe('50');
  expect(await page.evaluate(region)).toEqual(before);
  await page.context().close();
});

test('the flip key does nothing; the button turns left for right and says so', async () => {
  const page = await open(`#view=look&of=${plate.positive}`);
  await settled(page);
  const flipped = () =>
    page.evaluate(() =>
      (
        document.querySelector<OpenStage>('plate-stage')!.surfaces.first!.viewer
          .viewport as unknown as { getFlip(): boolean }
      ).getFlip(),
    );
  await page.locator('[data-surface="first"] [role="application"]').focus();
  await page.keyboard.press('f');
  expect(await flipped()).toBe(false);
  await page.locator('[data-do="correct"]').click();
  expect(await flipped()).toBe(true);
  await soon(() => page.locator('[data-part="said"]').textContent()).toMatch(/left for right/);
  await soon(() => page.evaluate(() => location.hash)).toContain('handed=corrected');
  await page.context().close();
});

test('Tilt goes over from positive to negative, marks the turning point and says both', async () => {
  const page = await open(`#view=tilt&tilt=0`);
  await settled(page);
  const reading = page.locator('[data-part="reading"]');
  await soon(() => reading.textContent()).toBe('0.0°, reads positive');
  await page.locator('[data-do="tilt:turning"]').click();
  await soon(() => reading.textContent()).toMatch(/turning/);
  await page.locator('input[data-set="tilt"]').focus();
  await page.keyboard.press('End');
  await soon(() => reading.textContent()).toBe('20.0°, reads negative');
  await soon(() => page.locator('[data-part="point"]').textContent()).toMatch(
    /equally bright at \d+\.\d°/,
  );
  await page.context().close();
});

test('a spot of the reader stays in this browser', async () => {
  const page = await open(`#view=look&of=${plate.positive}`);
  await settled(page);
  await page.locator('[data-do="tool:spots"]').click();
  await page.locator('[data-part="spot-title"]').fill('A spot of mine');
  await page.locator('[data-do="spots:mark"]').click();
  await page.reload();
  await settled(page);
  await page.locator('[data-do="tool:spots"]').click();
  await soon(() => page.locator('[data-part="spot-list"]').textContent()).toContain(
    'A spot of mine',
  );
  await page.context().close();
});

test('two presses measure a length', async () => {
  const page = await open(`#view=look&of=${plate.positive}`);
  await settled(page);
  await page.locator('[data-do="tool:measure"]').click();
  // An open tool makes the picture's box lower; a press on it brings all of it into sight.
  await page.locator('plate-stage').evaluate((stage) => stage.scrollIntoView());
  await page.waitForTimeout(600);
  await settled(page);
  const box = (await page.locator('[data-surface="first"]').boundingBox())!;
  const scale = (await page.evaluate(region)).width / box.width;
  await page.mouse.click(box.x + box.width / 2 - 50, box.y + box.height / 2);
  await page.waitForTimeout(600);
  await page.mouse.click(box.x + box.width / 2 + 50, box.y + box.height / 2);
  const words = page.locator('[data-part="measured"]');
  await soon(() => words.textContent()).toMatch(/\d/);
  const said = Number(/[\d.]+/.exec((await words.textContent()) ?? '')?.[0]);
  const per = plate.data.frame.pixelsPerMillimetre ?? 1;
  expect(Math.abs(said - (100 * scale) / per)).toBeLessThan((2 * scale) / per);
  await page.context().close();
});

test('the link of a spot opened in a fresh browser shows the spot within one pixel', async () => {
  const [spot] = plate.data.spots;
  const page = await open(`#view=look&of=${plate.positive}`);
  await settled(page);
  await page.locator('[data-do="tool:spots"]').click();
  const link = page.locator('[data-part="spot-list"] a').first();
  const address = new URL((await link.getAttribute('href'))!, page.url()).href;
  const fresh = await openStill(browser, address);
  await settled(fresh);
  const seen = await fresh.evaluate(region);
  const middle = (r: typeof seen) => [r.x + r.width / 2, r.y + r.height / 2];
  const [x, y] = middle(seen);
  const [sx, sy] = middle(spot.region);
  expect(Math.abs(x - sx)).toBeLessThanOrEqual(1);
  expect(Math.abs(y - sy)).toBeLessThanOrEqual(1);
  // All of it is in sight, and it touches two sides.
  const over = [seen.width - spot.region.width, seen.height - spot.region.height];
  expect(Math.abs(Math.min(...over))).toBeLessThanOrEqual(1);
  await page.context().close();
  await fresh.context().close();
});

test('a cited view says so when its picture has changed since, and not when it has not', async () => {
  const page = await open(`#view=look&of=${plate.positive}&xywh=pixel:600,600,300,220`);
  await settled(page);
  await page.locator('[data-do="tool:cite"]').click();
  const cited = await page.locator('[data-part="citation"]').inputValue();
  const address = cited.slice(cited.lastIndexOf(' ') + 1);
  const { digest } = plate.data.views.find(({ id }) => id === plate.positive)!;
  expect(address).toContain(`was=${digest}`);
  const same = await openStill(browser, address);
  const other = await openStill(browser, address.replace(digest, '000000000000'));
  const said = (opened: Page) => opened.locator('[data-part="said"]').textContent();
  await settled(other);
  await soon(() => said(other)).toMatch(/has changed since/);
  await settled(same);
  await same.waitForTimeout(500);
  expect(await said(same)).toBe('');
  for (const opened of [page, same, other]) await opened.context().close();
});

test('the viewer without the library is below 45 kB, compressed, with all that it may load', () => {
  const { bytes, files } = viewerScript(folder);
  for (const name of ['stage', 'osd', 'tiff-file', 'viewer'])
    expect(files.some((file) => file.startsWith(`${name}.`))).toBe(true);
  expect(bytes).toBeGreaterThan(20_000);
  expect(bytes).toBeLessThan(45_000);
});
