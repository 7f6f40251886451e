/**
 * What a newcomer does with photographs of their own: `npm run new`, a build of that content
 * folder, a look. With two real photographs of historical plates that nobody here took.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { resultSchema, type PlateResult } from '../../src/records/result.ts';
import { hasShared, sharedPath } from '../shared.ts';
import { openBrowser } from './browser.ts';
import { serveStatic, type StaticServer } from '../../src/pipeline/static-server.ts';

const project = join(import.meta.dirname, '..', '..');

describe.skipIf(!hasShared('data', 'plates'))('two photographs of one’s own', () => {
  let folder: string;
  let server: StaticServer;
  let browser: Browser;
  let result: PlateResult;

  function run(script: string, ...args: string[]): number | null {
    const env = {
      ...process.env,
      MIRRORLEAF_BASE: '/',
      MIRRORLEAF_CACHE: join(folder, 'cache'),
      MIRRORLEAF_OUT: join(folder, 'dist'),
    };
    const path = join(project, 'scripts', script);
    const child = spawnSync(process.execPath, [path, ...args], { env, encoding: 'utf8' });
    if (child.status !== 0) console.error(child.stdout, child.stderr);
    return child.status;
  }

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-own-'));
    const content = join(folder, 'content');
    const from = sharedPath('data', 'plates');
    expect(run('new.ts', 'two-photographs', '--from', from, '--content', content)).toBe(0);
    expect(run('build.ts', '--content', content)).toBe(0);
    const records = join(folder, 'cache', 'records');
    const [own] = await readdir(records);
    const text = await readFile(join(records, own, 'two-photographs', 'record.json'), 'utf8');
    result = resultSchema.parse(JSON.parse(text));
    server = await serveStatic(join(folder, 'dist'));
    browser = await openBrowser();
  }, 400_000);

  afterAll(async () => {
    await browser.close();
    await server.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('both are tiled at full size, in their own frames', () => {
    // Sizes as `vipsheader` prints them for the two files.
    expect(result.views.map(({ width, height }) => `${width}x${height}`).sort()).toEqual([
      '1596x2096',
      '6035x8212',
    ]);
    for (const view of result.views) {
      expect(
        existsSync(join(folder, 'dist/plates/two-photographs/views', view.id, 'info.json')),
      ).toBe(true);
    }
  });

  test('two different plates are never laid on each other, and it is said why', () => {
    expect(result.pair).toBeNull();
    const states = result.sittings.flatMap((s) => s.captures.map((c) => c.registration.state));
    expect(states.sort()).toEqual(['base', 'failed']);
    const codes = result.findings.map((finding) => finding.code);
    expect(codes).toContain('another-plate');
  });

  test('they can be zoomed into and compared beside each other, in a browser', async () => {
    const page = await (await browser.newContext()).newPage();
    const problems: string[] = [];
    page.on('pageerror', (error) => problems.push(error.message));
    page.on('response', (response) => {
      if (response.status() >= 400) problems.push(`${response.status()} ${response.url()}`);
    });
    const [first, second] = result.views.map((view) => view.id);
    await page.goto(`${server.url}plates/two-photographs/#view=beside&of=${first},${second}`);
    const canvas = page.locator('.openseadragon-canvas');
    await canvas.first().waitFor({ timeout: 30_000 });
    await expect.poll(() => canvas.count(), { timeout: 30_000 }).toBe(2);

    const tiles: string[] = [];
    page.on('response', (response) => {
      const path = new URL(response.url()).pathname;
      if (/\/views\/[^/]+\/\d+,\d+,\d+,\d+\//.test(path)) tiles.push(path);
    });
    await page.getByRole('button', { name: 'Larger' }).click();
    await page.getByRole('button', { name: 'Larger' }).click();
    for (const view of [first, second]) {
      await expect
        .poll(() => tiles.some((path) => path.includes(`/views/${view}/`)), { timeout: 30_000 })
        .toBe(true);
    }
    expect(problems).toEqual([]);
    await page.context().close();
  });
});
