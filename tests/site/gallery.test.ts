import { execFileSync, spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { writeZip } from '../../src/pipeline/portable/write-zip.ts';
import { openBrowser } from './browser.ts';

const python = spawnSync('python3', ['--version']).status === 0;

/** The archive of the demonstration, unpacked by Python as a gallery would by its own means. */
describe.skipIf(!python)('the archive for a gallery’s computer', () => {
  let folder: string;
  let browser: Browser;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-gallery-'));
    const file = join(folder, 'gallery.zip');
    await writeZip({
      exhibit: inject('siteFolder'),
      base: inject('siteBase'),
      file,
      title: 'Plates',
    });
    execFileSync('python3', ['-m', 'zipfile', '-e', file, folder]);
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('can be read from the folder, and says what needs its server', async () => {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(join(folder, 'exhibit', 'index.html')).href);
    await page.locator('main a[href*="plates/"]').first().click();
    await page.waitForLoadState();
    expect(page.url()).toMatch(/^file:.*\/plates\/[a-z-]+\/index\.html$/);
    expect(await page.locator('.from-folder').isVisible()).toBe(true);
    expect(
      await page.locator('img.logo').evaluate((img: HTMLImageElement) => img.naturalWidth),
    ).toBeGreaterThan(0);
    const pictures = await page.evaluate(() =>
      [...document.images].map(({ complete, naturalWidth, loading }) =>
        complete && loading !== 'lazy' ? naturalWidth : 1,
      ),
    );
    expect(pictures.length).toBeGreaterThan(2);
    expect(pictures).not.toContain(0);
    // The style sheet came along: without it the ground would be transparent.
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).not.toBe(
      'rgba(0, 0, 0, 0)',
    );
    await page.close();
  });

  test('turns plates with its server, and no longer says so', async () => {
    const server: ChildProcess = spawn(process.execPath, [join(folder, 'serve.mjs'), '0']);
    try {
      const address = await new Promise<string>((found) => {
        server.stdout?.on('data', (text: Buffer) => {
          found(/http:\S+/.exec(String(text))?.[0] ?? '');
        });
      });
      const page = await browser.newPage();
      await page.goto(`${address}plates/inner-basin/`, { waitUntil: 'domcontentloaded' });
      expect(await page.locator('.from-folder').isVisible()).toBe(false);
      // Defined by a module, which a browser runs only from a server.
      await page.waitForFunction(() => customElements.get('plate-stage') !== undefined);
      await page.close();
    } finally {
      server.kill();
    }
  });
});
