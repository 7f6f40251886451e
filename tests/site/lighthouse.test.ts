/**
 * The plate's page as Lighthouse measures it on a telephone with its own simulated network:
 * performance at least 95, the rest 100. One run, since a run takes most of a minute.
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

test('a plate’s page: performance at least 95, the rest 100', { timeout: 180_000 }, async () => {
  const run = await lighthouse(`${url}${plate}`, {
    port: chrome.port,
    output: 'json',
    logLevel: 'error',
    onlyCategories: ['performance', 'accessibility', 'best-practices', 'seo'],
  });
  expect(run?.lhr.runtimeError).toBeUndefined();
  const { categories, audits } = run!.lhr;
  const score = (name: string) => Math.round((categories[name].score ?? 0) * 100);
  const short = Object.values(audits)
    .filter((audit) => audit.score !== null && audit.score < 1)
    .map(({ id, displayValue }) => `${id} ${displayValue ?? ''}`)
    .join('; ');
  expect(score('performance'), short).toBeGreaterThanOrEqual(95);
  expect(score('accessibility'), short).toBe(100);
  expect(score('best-practices'), short).toBe(100);
  expect(score('seo'), short).toBe(100);
});
