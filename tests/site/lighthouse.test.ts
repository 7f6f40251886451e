/**
 * The plate's page as Lighthouse sees it: accessibility, best practices and search at 100. Its
 * performance score is a time, and belongs to `npm run bench -- publish`.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { launch, type LaunchedChrome } from 'chrome-launcher';
import lighthouse from 'lighthouse';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { browserFlags, browserPath } from './browser.ts';
import { pageOfEachKind } from './pages.ts';

const url = inject('siteUrl');
const { plate } = pageOfEachKind(inject('siteFolder'));

let chrome: LaunchedChrome;
let profile: string;
beforeAll(async () => {
  profile = mkdtempSync(join(tmpdir(), 'mirrorleaf-lighthouse-'));
  chrome = await launch({
    chromePath: browserPath,
    chromeFlags: [...browserFlags],
    userDataDir: profile,
    logLevel: 'silent',
  });
});
afterAll(() => {
  chrome.kill();
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
});

const wholly = ['accessibility', 'best-practices', 'seo'];

test('a plate’s page is at 100 but for its speed', { timeout: 240_000 }, async () => {
  const { categories, audits } = await measure();
  const short = Object.values(audits)
    .filter((audit) => audit.score !== null && audit.score < 1)
    .map(({ id, displayValue }) => `${id} ${displayValue ?? ''}`)
    .join('; ');
  for (const name of wholly) {
    expect(Math.round((categories[name].score ?? 0) * 100), `${name}: ${short}`).toBe(100);
  }
});

async function measure() {
  const run = await lighthouse(`${url}${plate}`, {
    port: chrome.port,
    output: 'json',
    logLevel: 'error',
    onlyCategories: wholly,
  });
  expect(run?.lhr.runtimeError).toBeUndefined();
  return run!.lhr;
}
