/**
 * The plate's page as Lighthouse measures it on a telephone with its own simulated network:
 * performance at least 95, the rest 100. Performance depends on what else the machine is doing,
 * and can only be measured too low by that: the best of up to three runs counts.
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

const asked = 95;
const most = 3;

test('a plate’s page: performance at least 95, the rest 100', { timeout: 240_000 }, async () => {
  let best = 0;
  let short = '';
  for (let run = 0; run < most && best < asked; run++) {
    const { categories, audits } = await measure();
    const score = (name: string) => Math.round((categories[name].score ?? 0) * 100);
    short = Object.values(audits)
      .filter((audit) => audit.score !== null && audit.score < 1)
      .map(({ id, displayValue }) => `${id} ${displayValue ?? ''}`)
      .join('; ');
    expect(score('accessibility'), short).toBe(100);
    expect(score('best-practices'), short).toBe(100);
    expect(score('seo'), short).toBe(100);
    best = Math.max(best, score('performance'));
  }
  expect(best, short).toBeGreaterThanOrEqual(asked);
});

async function measure() {
  const run = await lighthouse(`${url}${plate}`, {
    port: chrome.port,
    output: 'json',
    logLevel: 'error',
    onlyCategories: ['performance', 'accessibility', 'best-practices', 'seo'],
  });
  expect(run?.lhr.runtimeError).toBeUndefined();
  return run!.lhr;
}
