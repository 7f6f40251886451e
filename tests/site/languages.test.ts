/**
 * A small exhibit in the four languages and in a made-up one: a switch on every page, valid and
 * accessible pages in each language, and no word of the interface that has not gone through the
 * words of a language. The made-up language is written from right to left. Some texts of the
 * museum are there in French, the others in English alone.
 */
import { existsSync, readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import { HtmlValidate } from 'html-validate';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildExhibit } from '../../src/pipeline/build.ts';
import { findPlaces } from '../../src/pipeline/places.ts';
import { serveStatic, type StaticServer } from '../../src/pipeline/static-server.ts';
import { writeSmallContent } from '../pipeline/small-content.ts';
import { openBrowser } from './browser.ts';
import { museumTexts } from './museum-texts.ts';
import { htmlOf } from './pages.ts';
import { writeTranslations } from './translations.ts';
import { isSame, unmarked } from './unmarked-words.ts';

const base = '/exhibit/';
const address = 'https://museum.example/plates/';
const pseudo = 'he-x-pseudo';
const languages = ['fr', 'de', 'es'];
const kinds = [
  '',
  'plates/',
  'plates-by/size/',
  'plates/first/',
  'plates/first/captures/',
  'plates/first/embed/',
  'planner/',
  'search/',
  'techniques/',
  'lessons/',
  'catalogue/',
];
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let folder: string;
let site: string;
let server: StaticServer;
let browser: Browser;

beforeAll(async () => {
  const ready = process.env['MIRRORLEAF_TEST_LANGUAGES'];
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-languages-'));
  site = ready ?? join(folder, 'site');
  if (ready === undefined) {
    const content = join(folder, 'content');
    await writeSmallContent(content);
    await writeTranslations(content, ['en', ...languages, pseudo]);
    process.env['MIRRORLEAF_BASE'] = base;
    const places = findPlaces({ content, cache: join(folder, 'cache'), out: site });
    expect(await buildExhibit({ places, quiet: true })).toBe(0);
  }
  server = await serveStatic(site, base);
  browser = await openBrowser();
}, 300_000);

afterAll(async () => {
  await browser.close();
  await server.close();
  await rm(folder, { recursive: true, force: true });
});

async function visit<T>(path: string, look: (page: Page) => Promise<T>): Promise<T> {
  const context = await browser.newContext({ reducedMotion: 'reduce' });
  try {
    const page = await context.newPage();
    await page.goto(`${server.url}${path}`, { waitUntil: 'load' });
    return await look(page);
  } finally {
    await context.close();
  }
}

describe('the switch', () => {
  test('leads to the same page in each language, and back', async () => {
    await visit('plates/first/', async (page) => {
      for (const [name, language] of [
        ['Français', 'fr'],
        ['Deutsch', 'de'],
        ['Español', 'es'],
        ['English', 'en'],
      ]) {
        await page.locator('nav.languages a', { hasText: name }).click();
        await page.waitForLoadState();
        const within = language === 'en' ? '' : `${language}/`;
        expect(page.url()).toBe(`${server.url}${within}plates/first/`);
        expect(await page.getAttribute('html', 'lang')).toBe(language);
        expect(await page.locator('nav.languages a[aria-current]').innerText()).toBe(name);
      }
    });
  });

  test('stands in the head of each page as well, with a default for other readers', () => {
    const links = [
      ...htmlOf(site, 'de/planner/').matchAll(/rel="alternate" hreflang="([^"]+)" href="([^"]+)"/g),
    ].map(([, language, address]) => [language, address]);
    expect(links).toEqual([
      ['en', `${address}planner/`],
      ...[...languages, pseudo].map((tag) => [tag, `${address}${tag}/planner/`]),
      ['x-default', `${address}planner/`],
    ]);
  });

  test('stands in the list of pages for search engines, where every language has its own', () => {
    const list = readFileSync(join(site, 'sitemap.xml'), 'utf8');
    const pages = [...list.matchAll(/<url>(.*?)<\/url>/gs)].map(([, page]) => page);
    const own = pages.find((page) => page.includes(`<loc>${address}de/plates/first/</loc>`)) ?? '';
    expect([...own.matchAll(/hreflang="([^"]+)" href="([^"]+)"/g)].map(([, ...at]) => at)).toEqual([
      ['en', `${address}plates/first/`],
      ...[...languages, pseudo].map((tag) => [tag, `${address}${tag}/plates/first/`]),
    ]);
    const listed = pages.map((page) => /<loc>(.*?)<\/loc>/.exec(page)?.[1] ?? '');
    expect(new Set(listed).size).toBe(listed.length);
    for (const page of listed) {
      expect(existsSync(join(site, page.slice(address.length), 'index.html')), page).toBe(true);
    }
  });
});

museumTexts(() => site, address);

describe.each(languages)('in %s', (language) => {
  test('pages are valid HTML', async () => {
    const checker = new HtmlValidate({
      extends: ['html-validate:standard', 'html-validate:document'],
      rules: {
        'doctype-style': 'off',
        'long-title': 'off',
        // Our own files come from the host that the page itself comes from.
        'require-sri': ['error', { target: 'crossorigin' }],
      },
    });
    const faults: string[] = [];
    for (const kind of kinds) {
      const report = await checker.validateString(htmlOf(site, `${language}/${kind}`));
      for (const { line, ruleId, message } of report.results.flatMap((r) => r.messages))
        faults.push(`${kind}:${line} ${ruleId} ${message}`);
    }
    expect(faults).toEqual([]);
  });

  test('axe finds nothing', { timeout: 180_000 }, async () => {
    const said: string[] = [];
    for (const kind of ['plates/first/', 'planner/']) {
      const { violations } = await visit(`${language}/${kind}`, async (page) => {
        await page.evaluate(() => {
          for (const details of document.querySelectorAll('details')) details.open = true;
        });
        await page.evaluate(axe);
        return page.evaluate(() =>
          (globalThis as unknown as { axe: { run(node: Document): Promise<AxeResults> } }).axe.run(
            document,
          ),
        );
      });
      for (const { id, nodes } of violations)
        said.push(`${kind} ${id}: ${nodes.map((n) => n.html.slice(0, 120)).join(' ')}`);
    }
    expect(said).toEqual([]);
  });

  test('numbers have the language’s decimal sign', () => {
    expect(htmlOf(site, `${language}/plates/first/captures/`)).toMatch(/\d,\d+\u202fpx/);
  });
});

describe('in a made-up language', () => {
  test.each(kinds)('every word of the interface is marked: %s', async (kind) => {
    const found = await visit(`${pseudo}/${kind}`, async (page) => {
      expect(await page.getAttribute('html', 'dir')).toBe('rtl');
      if (kind === 'plates/first/') {
        await page.waitForFunction(() => customElements.get('plate-stage') !== undefined);
        const words: string[] = [];
        for (const mode of ['look', 'slide', 'beside', 'tilt']) {
          await page.click(`[data-do="mode:${mode}"]`);
          await page.waitForTimeout(500);
          words.push(...(await unmarked(page)));
        }
        for (const tool of ['move', 'measure', 'spots', 'take', 'cite']) {
          await page.click(`[data-do="tool:${tool}"]`);
          await page.waitForTimeout(200);
          words.push(...(await unmarked(page)));
        }
        return words;
      }
      return unmarked(page);
    });
    expect(
      [...new Set(found)].filter((line) => !isSame(line.slice(line.indexOf(': ') + 2))),
    ).toEqual([]);
  });

  test('the walk finds a planted word', async () => {
    const found = await visit(`${pseudo}/planner/`, async (page) => {
      await page.evaluate(() => {
        document.querySelector('h1')!.textContent = '⟦marked⟧ planted';
      });
      return unmarked(page);
    });
    expect(found.join()).toContain('planted');
  });
});
