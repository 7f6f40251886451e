/**
 * A small exhibit in the four languages and in a made-up one: a switch on every page, valid and
 * accessible pages in each language, and no word of the interface that has not gone through the
 * words of a language. The made-up language is written from right to left.
 */
import { readFileSync } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
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
import { htmlOf } from './pages.ts';

const base = '/exhibit/';
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
    const collection = join(content, 'collection.md');
    const text = await readFile(collection, 'utf8');
    const list = ['en', ...languages, pseudo].join(', ');
    await writeFile(collection, text.replace('languages: [en]', `languages: [${list}]`));
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
      ['en', `${base}planner/`],
      ...[...languages, pseudo].map((tag) => [tag, `${base}${tag}/planner/`]),
      ['x-default', `${base}planner/`],
    ]);
  });
});

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

/** Code, names of languages in themselves, and the titles of other plates in a list. */
const notLookedAt =
  'script, style, noscript, template, code, pre, nav.languages, select[data-set="with"]';

/**
 * Words that stand on a page without the marks of the made-up language: texts and names for
 * screen readers, in sight or not, but for what is marked as being in another language.
 */
function unmarked(page: Page): Promise<string[]> {
  return page.evaluate((without) => {
    const own = document.documentElement.lang;
    const found: string[] = [];
    const letters = /\p{L}{2}/u;
    const foreign = (element: Element | null) =>
      element?.closest('[lang]')?.getAttribute('lang') !== own || element.closest(without) !== null;
    const look = (text: string | null, element: Element, what: string) => {
      // Marks may be nested: take them away from the inside.
      let rest = text ?? '';
      for (let before = ''; before !== rest;) {
        before = rest;
        rest = rest.replace(/⟦[^⟦⟧]*⟧/g, ' ');
      }
      if (letters.test(rest))
        found.push(
          `${what} in ${element.tagName.toLowerCase()}.${element.className?.toString() ?? ''}: ${rest.trim().slice(0, 80)}`,
        );
    };
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const element = node.parentElement;
      if (element && !foreign(element)) look(node.textContent, element, 'text');
    }
    for (const element of document.body.querySelectorAll('*')) {
      if (foreign(element)) continue;
      for (const name of ['aria-label', 'title', 'alt', 'placeholder', 'aria-valuetext'])
        look(element.getAttribute(name), element, name);
    }
    return found;
  }, notLookedAt);
}

/** What is the same in every language: units, codes, and in English a registry's own label. */
const same =
  /^(No Known Copyright|[^\p{L}]*(mm|px|µm|lx|lx h|min|h|s|ppi|ISO|SHA-256|TIFF|PNG|sRGB|LED|f|kB|MB|dB|IIIF|CC)?[^\p{L}]*)$/u;

/** But for the page of measurements, whose labels and settings the record keeps in English. */
const walked = kinds.filter((kind) => !kind.endsWith('captures/'));

describe('in a made-up language', () => {
  test.each(walked)('every word of the interface is marked: %s', async (kind) => {
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
      [...new Set(found)].filter((line) => !same.test(line.slice(line.indexOf(': ') + 2))),
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
