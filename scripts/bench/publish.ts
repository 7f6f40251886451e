/**
 * The published pages: what a plate's page weighs before the viewer is asked for, and how fast
 * Lighthouse finds it on a simulated telephone. Times depend on the machine: not a test.
 */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { launch } from 'chrome-launcher';
import lighthouse from 'lighthouse';
import { buildExhibit, buildPages } from '../../src/pipeline/build.ts';
import { makePlates } from '../../src/pipeline/make-plates.ts';
import { findPlaces } from '../../src/pipeline/places.ts';
import { browserFlags, browserPath } from '../../tests/site/browser.ts';
import { serveStatic } from '../../src/pipeline/static-server.ts';
import { millisecondsToChoose } from './publish/choose-answer.ts';
import { manyPlates } from './publish/many-plates.ts';
import type { BenchRow } from './row.ts';

const page = 'plates/inner-basin/';

export default async function publish(): Promise<BenchRow[]> {
  const out = await mkdtemp(join(tmpdir(), 'mirrorleaf-bench-'));
  process.env['MIRRORLEAF_BASE'] = '/';
  await buildExhibit({ places: findPlaces({ out }), quiet: true });
  const server = await serveStatic(out);
  try {
    return [
      row('page_weight_kb', 'kB', await pageWeight(out), 60, 'lower'),
      row(
        'lighthouse_performance',
        'of 100',
        await performanceScore(server.url + page),
        95,
        'higher',
      ),
      ...(await manyPages(1000)),
    ];
  } finally {
    await server.close();
    await rm(out, { recursive: true, force: true });
  }
}

function row(
  name: string,
  unit: string,
  value: number,
  goal: number,
  better: BenchRow['better'],
): BenchRow {
  return { group: 'publish', name, value, unit, reference: null, goal, better };
}

/** Script and style that the page names or holds, gzip, kB of 1000 bytes. */
async function pageWeight(out: string): Promise<number> {
  const html = await readFile(join(out, page, 'index.html'), 'utf8');
  const files = [...html.matchAll(/(?:src|href)="\/(assets\/[^"]+\.(?:js|css))"/g)].map(
    (m) => m[1],
  );
  const inline = [...html.matchAll(/<(script|style)\b[^>]*>([\s\S]*?)<\/\1>/g)].map((m) => m[2]);
  const parts = await Promise.all([...new Set(files)].map((name) => readFile(join(out, name))));
  const weigh = (part: string | Buffer) => gzipSync(part).length;
  return [...parts, ...inline].reduce((sum, part) => sum + weigh(part), 0) / 1000;
}

/** The median of three runs: other work on the machine can only lower a run. */
async function performanceScore(url: string): Promise<number> {
  const chrome = await launch({
    chromePath: browserPath,
    chromeFlags: [...browserFlags],
    logLevel: 'silent',
  });
  try {
    const scores: number[] = [];
    for (let run = 0; run < 3; run += 1) {
      const found = await lighthouse(url, {
        port: chrome.port,
        output: 'json',
        logLevel: 'error',
        onlyCategories: ['performance'],
      });
      scores.push(Math.round((found?.lhr.categories['performance'].score ?? 0) * 100));
    }
    return scores.sort((a, b) => a - b)[1];
  } finally {
    chrome.kill();
  }
}

/**
 * Pages of a thousand plates: seconds for Astro, the index of words and the linking of tiles,
 * without the stages; what a reader of the index loads before any picture, and how long
 * one waits for an answer to narrow it (one second keeps a train of thought: R. B. Miller,
 * “Response time in man-computer conversational transactions”, AFIPS 1968).
 */
async function manyPages(count: number): Promise<BenchRow[]> {
  const folder = await manyPlates(count);
  const places = findPlaces({
    content: join(folder, 'content'),
    cache: join(folder, 'cache'),
    out: join(folder, 'dist'),
  });
  try {
    await makePlates({ places, quiet: true });
    const started = performance.now();
    const code = await buildPages(places);
    if (code !== 0) throw new Error(`The pages of ${count} plates were not made (exit ${code}).`);
    const seconds = (performance.now() - started) / 1000;
    const weight = async (page: string) =>
      gzipSync(await readFile(join(places.out, page, 'index.html'))).length / 1000;
    return [
      row(`pages_${count}_s`, 's', Math.round(seconds * 10) / 10, 120, 'lower'),
      row(`index_${count}_kb`, 'kB', await weight('plates'), 150, 'lower'),
      row(`search_${count}_kb`, 'kB', await weight('search'), 20, 'lower'),
      row(`choose_${count}_ms`, 'ms', await millisecondsToChoose(places.out), 1000, 'lower'),
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
