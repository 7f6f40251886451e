/** The viewer in trouble: a lost context, missing and slow tiles, no connection, no WebGL, no script. */
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import {
  openDrawingBrowser,
  openStill,
  pairPlate,
  requestsFrom,
  settled,
  type OpenStage,
} from './viewer-page.ts';

const site = inject('siteUrl');
const plate = pairPlate(inject('siteFolder'));
let browser: Browser;

beforeAll(async () => {
  browser = await openDrawingBrowser();
});
afterAll(() => browser.close());

/** Software drawing on a busy machine is slow; the claim is that it comes, not how soon. */
const soon = (read: () => Promise<unknown>) => expect.poll(read, { timeout: 20_000 });

const open = (fragment: string, options: BrowserContextOptions = {}): Promise<Page> =>
  openStill(browser, `${site}${plate.page}${fragment}`, options);

test('after a lost context the picture comes back the same, with no request', async () => {
  const page = await open(`#view=look&of=${plate.positive}`);
  await settled(page);
  const look = () =>
    page.evaluate(() => {
      const { drawer } = document.querySelector<OpenStage>('plate-stage')!.surfaces.first!.viewer;
      const { width, height } = drawer.canvas;
      return drawer.read(Math.floor(width / 2), Math.floor(height / 2), 8, 8).join(',');
    });
  const before = await look();
  const asked = requestsFrom(page);
  await page.evaluate(async () => {
    const { drawer } = document.querySelector<OpenStage>('plate-stage')!.surfaces.first!.viewer;
    const lose = drawer.canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!;
    lose.loseContext();
    await new Promise((resolve) => setTimeout(resolve, 300));
    lose.restoreContext();
    await new Promise((resolve) => setTimeout(resolve, 700));
  });
  await settled(page);
  await soon(look).toBe(before);
  expect(asked).toEqual([]);
  await page.context().close();
});

test('tiles that are missing leave the coarser picture in place', async () => {
  const context = await browser.newContext({ viewport: { width: 900, height: 700 } });
  const page = await context.newPage();
  await page.route(
    (url) => /\/views\/.*\/\d+,\d+,512,512\/512,512\//.test(url.href),
    (route) => route.fulfill({ status: 404 }),
  );
  const { width, height } = plate.data.frame;
  const xywh = [width * 0.4, height * 0.4, 300, 300].map(Math.round).join(',');
  await page.goto(`${site}${plate.page}#view=look&of=${plate.positive}&xywh=${xywh}`);
  await settled(page);
  const middle = await page.evaluate(() => {
    const { drawer } = document.querySelector<OpenStage>('plate-stage')!.surfaces.first!.viewer;
    return [...drawer.read(drawer.canvas.width >> 1, drawer.canvas.height >> 1, 1, 1)];
  });
  expect(middle[3]).toBe(255);
  await context.close();
});

test('offline after loading, what was loaded can still be turned', async () => {
  const page = await open(`#view=tilt&tilt=0`);
  await settled(page);
  await soon(() => page.locator('[data-part="reading"]').textContent()).toMatch(/reads/);
  await page.context().setOffline(true);
  await page.locator('[data-do="tilt:turning"]').click();
  await soon(() => page.locator('[data-part="reading"]').textContent()).toMatch(/turning/);
  await page.context().close();
});

test('a picture that cannot be fetched leaves the still one, with a sentence', async () => {
  const page = await open('');
  await page.route('**/info.json', (route) => route.fulfill({ status: 404 }));
  await page.locator('[data-do="mode:look"]').click();
  await soon(() => page.locator('[data-part="said"]').textContent()).toMatch(
    /could not be fetched: 404/,
  );
  expect(await page.locator('[data-part="stills"]').isVisible()).toBe(true);
  await page.context().close();
});

test('without WebGL Tilt goes by steps that were mixed beforehand', async () => {
  const plain = await openDrawingBrowser(['--disable-3d-apis']);
  const page = await openStill(plain, `${site}${plate.page}#view=tilt&tilt=0`, {
    viewport: { width: 480, height: 480 },
  });
  await settled(page);
  await soon(() => page.locator('[data-part="said"]').textContent()).toMatch(/mixed beforehand/);
  const { steps } = plate.data.stills!;
  const reading = page.locator('[data-part="reading"]');
  const seen: Buffer[] = [];
  for (const [n, step] of steps.entries()) {
    if (n > 0) await page.locator('[data-do="tilt:more"]').click();
    const words = new RegExp(
      `^([\\d.]+)°, ${step.reading} \\(step ${n + 1} of ${steps.length}\\)$`,
    );
    await soon(() => reading.textContent()).toMatch(words);
    const told = Number(words.exec((await reading.textContent()) ?? '')?.[1]);
    expect(Math.abs(told - step.tilt)).toBeLessThan(0.06);
    await page.waitForTimeout(300);
    await settled(page);
    seen.push(await page.locator('[data-surface="first"]').screenshot());
  }
  expect(steps[0].reading).toBe('reads positive');
  expect(steps.at(-1)?.reading).toBe('reads negative');
  expect(new Set(seen.map((png) => png.toString('base64'))).size).toBe(steps.length);
  await plain.close();
});

test('without script the steps of Tilt are plain pictures', async () => {
  const page = await open('', { javaScriptEnabled: false });
  const pictures = page.locator('.stage-between img');
  expect(await pictures.count()).toBe(plate.data.stills!.steps.length);
  for (const picture of await pictures.all()) {
    await picture.scrollIntoViewIfNeeded();
    await soon(() => picture.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(
      plate.data.stills!.width,
    );
  }
  await page.context().close();
});

test('what is pressed before the words of the page have come is done when they are there', async () => {
  const context = await browser.newContext({ viewport: { width: 900, height: 700 } });
  const page = await context.newPage();
  let come = (): void => undefined;
  const words = new Promise<void>((resolve) => (come = resolve));
  let held = 0;
  await page.route(/\/viewer\.[\w-]+\.js$/, async (route) => {
    held += 1;
    await words;
    await route.continue();
  });
  await page.goto(`${site}${plate.page}`);
  await page.locator('[data-do="mode:slide"]').click();
  // In impatience, of a button that opens and closes.
  await page.locator('[data-do="tool:cite"]').click({ clickCount: 2 });
  expect(held).toBeGreaterThan(0);
  const mode = () => page.locator('plate-stage').getAttribute('data-mode');
  expect(await mode()).not.toBe('slide');
  come();
  await soon(mode).toBe('slide');
  await soon(() => page.locator('[data-part="citation"]').isVisible()).toBe(true);
  await context.close();
});

test('while tiles are slow the stage is usable and says what it waits for', async () => {
  const page = await open('');
  let slow = true;
  await page.route(
    (url) => /\/views\/.*\/\d+,\d+,\d+,\d+\//.test(url.href),
    async (route) => {
      while (slow) await new Promise((resolve) => setTimeout(resolve, 100));
      await route.continue();
    },
  );
  const said = page.locator('[data-part="said"]');
  await page.locator('[data-do="mode:tilt"]').click();
  await soon(() => said.textContent()).toMatch(/Waiting for parts of the picture/);
  // Every control answers meanwhile.
  await page.locator('[data-do="tilt:more"]').click();
  await soon(() => page.evaluate(() => location.hash)).toContain('tilt=0.5');
  await page.locator('[data-do="tool:cite"]').click();
  expect(await page.locator('[data-part="citation"]').inputValue()).toContain('view=tilt');
  await page.locator('[data-do="mode:slide"]').click();
  await page.locator('input[data-set="divider"]').focus();
  await page.keyboard.press('ArrowRight');
  await soon(() => page.evaluate(() => location.hash)).toContain('divider=50.5');
  slow = false;
  await settled(page);
  await soon(() => said.textContent()).toBe('');
  await page.context().close();
});
