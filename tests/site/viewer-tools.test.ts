/**
 * The tools of the stage in a browser: measuring a rendered plate whose size is known, taking a
 * picture away, guided looks, another plate beside this one, a device's tilt, code to embed; and
 * that no control of Lamp and Range asks for a tile.
 */
import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import {
  layerPlate,
  openDrawingBrowser,
  openStill,
  pairPlate,
  plateOf,
  requestsFrom,
  settled,
  type OpenStage,
} from './viewer-page.ts';

const site = inject('siteUrl');
const folder = inject('siteFolder');
let browser: Browser;

beforeAll(async () => {
  browser = await openDrawingBrowser();
});
afterAll(() => browser.close());

const soon = (read: () => Promise<unknown>) => expect.poll(read, { timeout: 20_000 });

async function open(address: string, options: BrowserContextOptions = {}): Promise<Page> {
  const page = await openStill(browser, `${site}${address}`, options);
  await settled(page);
  return page;
}

/**
 * Left and right edge of the plate in the middle row of the screen, CSS pixels: where the bright
 * plate ends on the dark table, halfway between both.
 */
function plateEdges(page: Page): Promise<readonly [left: number, right: number, y: number]> {
  return page.evaluate(() => {
    const { drawer } = document.querySelector<OpenStage>('plate-stage')!.surfaces.first!.viewer;
    const { width, height } = drawer.canvas;
    const row = height >> 1;
    const codes = drawer.read(0, row, width, 1);
    const light = Array.from(
      { length: width },
      (_, x) => codes[4 * x + 1] * (codes[4 * x + 3] / 255),
    );
    const bright = [...light].sort((a, b) => a - b)[Math.floor(width * 0.9)];
    const half = bright / 2;
    const first = light.findIndex((v) => v > half);
    const last = light.findLastIndex((v) => v > half);
    const between = (x: number, step: 1 | -1) => {
      const [out, within] = [light[x - step], light[x]];
      return x + 0.5 - (step * (within - half)) / (within - out);
    };
    return [between(first, 1), between(last, -1), row] as const;
  });
}

describe('measuring a rendered plate of known size', () => {
  const { page: address, data, width } = plateOf(folder, 'inner-basin');
  test.each([
    [0.6, ''],
    [0.8, '&handed=corrected'],
    [1, ''],
    [1, '&handed=corrected'],
  ])(
    'at %d of the whole plate %s, its width is right within its uncertainty',
    async (zoom, handed) => {
      const page = await open(`${address}#view=look&of=axial${handed}`);
      // The tool makes the picture's box lower, so it is opened before the zoom.
      await page.locator('[data-do="tool:measure"]').click();
      await page.waitForTimeout(600);
      await settled(page);
      await page.evaluate((factor) => {
        const { viewport } =
          document.querySelector<OpenStage>('plate-stage')!.surfaces.first!.viewer;
        viewport.zoomTo(viewport.getHomeZoom() * factor, undefined, true);
      }, zoom);
      await page.waitForTimeout(200);
      await settled(page);
      const [left, right, y] = await plateEdges(page);
      // Whole pixels, as a pointer gives them.
      const box = (await page.locator('[data-surface="first"]').boundingBox())!;
      await page.mouse.click(box.x + Math.round(left), box.y + y);
      await page.waitForTimeout(600);
      await page.mouse.click(box.x + Math.round(right), box.y + y);
      const words = page.locator('[data-part="measured"]');
      await soon(() => words.textContent()).toMatch(/standard uncertainty/);
      const said = /([\d.]+)\smm ± ([\d.]+)\smm/.exec((await words.textContent()) ?? '')!;
      // Two standard uncertainties: 95 of 100 such measurements.
      expect(Math.abs(Number(said[1]) - width)).toBeLessThan(2 * Number(said[2]));
      expect(data.frame.pixelsPerMillimetre).not.toBeNull();
      await page.context().close();
    },
  );
});

test('a picture taken away is the tiles themselves at full size, with words below', async () => {
  const { page: address, positive, data: found } = pairPlate(folder);
  const page = await open(`${address}#view=look&of=${positive}&xywh=pixel:600,600,300,220`);
  // An open tool makes the picture's box lower, so another region is in sight.
  await page.locator('[data-do="tool:take"]').click();
  await page.waitForTimeout(800);
  await settled(page);
  const region = await page.evaluate(() => {
    const stage = document.querySelector('plate-stage') as unknown as {
      rested(): void;
      state: { region: { x: number; y: number; width: number; height: number } };
    };
    stage.rested();
    return stage.state.region;
  });
  const coming = page.waitForEvent('download', { timeout: 60_000 });
  await page.locator('[data-do="take:png"]').click();
  const made = await readFile(await (await coming).path());
  const { width, height, data } = await crop(made, region.width, region.height);
  expect([width, height]).toEqual([region.width, region.height]);
  expect((await sharp(made).metadata()).height).toBeGreaterThan(region.height + 40);
  // The tile that holds the region's first pixel.
  const service = join(folder, address, 'views', positive);
  const info = JSON.parse(readFileSync(join(service, 'info.json'), 'utf8')) as {
    width: number;
    height: number;
  };
  const [x, y] = [Math.floor(region.x / 512) * 512, Math.floor(region.y / 512) * 512];
  const [w, h] = [Math.min(512, info.width - x), Math.min(512, info.height - y)];
  const tile = `${site}${address}views/${positive}/${x},${y},${w},${h}/${w},${h}/0/default.jpg`;
  // Decoded by the same browser: decoders differ in how they enlarge the colour of a JPEG.
  const row = await page.evaluate(
    async ({ tile, x, y }) => {
      const bitmap = await createImageBitmap(await (await fetch(tile)).blob());
      const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d')!;
      context.drawImage(bitmap, 0, 0);
      return [...context.getImageData(x, y, bitmap.width - x, 1).data];
    },
    { tile, x: region.x - x, y: region.y - y },
  );
  const across = Math.min(region.width, x + w - region.x);
  expect(across).toBeGreaterThan(50);
  const taken = Array.from({ length: across }, (_, k) => [...data.subarray(3 * k, 3 * k + 3)]);
  const own = Array.from({ length: across }, (_, k) => row.slice(4 * k, 4 * k + 3));
  expect(new Set(own.map(String)).size).toBeGreaterThan(5);
  expect(taken).toEqual(own);
  // The TIFF holds the same picture; what writes it comes only now.
  const asked = requestsFrom(page);
  const second = page.waitForEvent('download', { timeout: 60_000 });
  await page.locator('[data-do="take:tiff"]').click();
  const file = await second;
  expect(file.suggestedFilename()).toMatch(/\.tif$/);
  expect(asked.some((url) => /tiff-file.*\.js$/.test(url))).toBe(true);
  const tiff = await readFile(await file.path());
  const again = await crop(tiff, region.width, region.height);
  expect(again.data.equals(data)).toBe(true);
  // Whole pixels per inch, as libvips gives them.
  expect((await sharp(tiff).metadata()).density).toBeCloseTo(
    found.frame.pixelsPerMillimetre! * 25.4,
    -0.5,
  );
  await page.context().close();
});

async function crop(png: Buffer, width: number, height: number) {
  const { data } = await sharp(png)
    .removeAlpha()
    .toColourspace('srgb')
    .extract({ left: 0, top: 0, width, height })
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width, height, data };
}

test('guided looks go forward by button and by key, and move the viewer', async () => {
  const { page: address, data } = plateOf(folder, 'inner-basin');
  const steps = data.looks[0].steps;
  const page = await open(`${address}#view=look&of=axial`);
  await page.locator('[data-do="tool:looks"]').click();
  const text = page.locator('[data-part="look-text"]');
  await soon(() => text.textContent()).toBe(steps[0].text);
  await page.locator('[data-do="looks:next"]').click();
  await soon(() => text.textContent()).toBe(steps[1].text);
  await page.keyboard.press('PageDown');
  await soon(() => text.textContent()).toBe(steps[2].text);
  await soon(() => page.locator('plate-stage').getAttribute('data-mode')).toBe('tilt');
  await page.context().close();
});

test('another plate lies beside this one at the same physical scale', async () => {
  const { page: address, data } = plateOf(folder, 'inner-basin');
  const other = plateOf(folder, 'ropewalk-street');
  const page = await open(`${address}#view=beside&with=ropewalk-street`);
  const widths = await page.evaluate(() => {
    const { first, second } = document.querySelector<OpenStage>('plate-stage')!.surfaces;
    return [first, second].map(
      (s) => (s as unknown as { region(): { width: number } }).region().width,
    );
  });
  const scales = [data, other.data].map((d) => d.frame.pixelsPerMillimetre!);
  expect(widths[0] / scales[0]).toBeCloseTo(widths[1] / scales[1], 6);
  await soon(() => page.locator('[data-part="second-name"]').textContent()).toContain(
    other.data.title,
  );
  await soon(() => page.evaluate(() => location.hash)).toContain('with=ropewalk-street');
  await page.context().close();
});

test('a held device turns the plate once asked to, and stops when asked', async () => {
  const { page: address } = pairPlate(folder);
  const page = await open(`${address}#view=tilt&tilt=2`, {
    reducedMotion: 'no-preference',
    hasTouch: true,
    isMobile: true,
    viewport: { width: 390, height: 844 },
  });
  const hold = (beta: number) =>
    page.evaluate(async (b) => {
      for (let i = 0; i < 60; i++) {
        dispatchEvent(new DeviceOrientationEvent('deviceorientation', { beta: b }));
        await new Promise((resolve) => setTimeout(resolve, 4));
      }
    }, beta);
  const tilt = () =>
    page.evaluate(
      () =>
        (document.querySelector('plate-stage') as unknown as { state: { tilt: number } }).state
          .tilt,
    );
  await hold(40);
  expect(await tilt()).toBe(2);
  await page.locator('[data-do="tilt:device"]').click();
  await hold(40);
  await hold(49);
  await soon(tilt).toBeGreaterThan(9);
  await page.locator('[data-do="tilt:device"]').click();
  const stopped = await tilt();
  await hold(40);
  expect(await tilt()).toBe(stopped);
  await page.context().close();
});

test('the code to embed opens the same view in a frame', async () => {
  const { page: address, positive } = pairPlate(folder);
  const page = await open(`${address}#view=look&of=${positive}&xywh=pixel:600,600,300,220`);
  await page.locator('[data-do="tool:cite"]').click();
  const code = page.locator('[data-part="embedding"]');
  await soon(() => code.inputValue()).toMatch(/^<iframe src="http/);
  const source = await page.evaluate(
    (text) => {
      const parsed = new DOMParser().parseFromString(text, 'text/html');
      return parsed.querySelector('iframe')?.src ?? '';
    },
    await code.inputValue(),
  );
  expect(source).toContain(`/${address}embed/#view=look&of=${positive}`);
  await page.goto(source);
  await settled(page);
  expect(await page.evaluate(() => location.hash)).toContain('view=look');
  await page.context().close();
});

test.each([
  ['lamp', 'lamp', '[data-part="lamp"]'],
  ['lamp', 'lamp', '[data-part="quarter"]'],
  ['range', 'gain', 'input[data-set="stops"]'],
  ['range', 'gain', 'input[data-set="white"]'],
] as const)(
  '120 moves in %s, of %s planes by %s, ask for nothing',
  async (mode, layer, control) => {
    const { page: address, view } = layerPlate(folder, layer);
    const page = await open(`${address}#view=${mode}&of=${view}`, {
      viewport: { width: 480, height: 480 },
    });
    await page.waitForTimeout(800);
    const asked = requestsFrom(page);
    const hash = await page.evaluate(() => location.hash);
    await page.locator(control).focus();
    // A first press as a reader's, the others from within: each waits for its frame.
    await page.keyboard.press('ArrowRight');
    await page.evaluate(async () => {
      const held = document.activeElement as HTMLElement;
      for (let i = 1; i < 120; i++) {
        const forward = i % 40 < 30;
        if (held instanceof HTMLInputElement) {
          if (forward) held.stepUp();
          else held.stepDown();
          held.dispatchEvent(new Event('input', { bubbles: true }));
        } else {
          const key = forward ? 'ArrowRight' : 'ArrowLeft';
          held.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
        }
        await new Promise((resolve) => requestAnimationFrame(resolve));
      }
    });
    await page.waitForTimeout(600);
    expect(asked).toEqual([]);
    expect(await page.evaluate(() => location.hash)).not.toBe(hash);
    await page.context().close();
  },
);
