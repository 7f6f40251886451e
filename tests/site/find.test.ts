/** Finding a plate: choices that combine, orders, words, with script and without. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { openBrowser, visitPage } from './browser.ts';
import { htmlOf, pageOfEachKind } from './pages.ts';

const url = inject('siteUrl');
const folder = inject('siteFolder');
const covered = pageOfEachKind(folder)['covered'];

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const visit = <T>(page: string, script: boolean, look: (page: Page) => Promise<T>) =>
  visitPage(browser, url, { page, script }, look);

const shownTitles = (page: Page) =>
  page
    .locator('.plates > li')
    .evaluateAll((items) =>
      items
        .filter((item) => getComputedStyle(item).display !== 'none')
        .map((item) => item.querySelector('.title')?.textContent.trim()),
    );

describe('the index of plates', () => {
  test('narrows by two questions at once without script', async () => {
    await visit('plates/', false, async (page) => {
      const all = await shownTitles(page);
      await page.locator('#by-process summary').click();
      await page.getByLabel('ambrotype').check();
      const ambrotypes = await shownTitles(page);
      expect(ambrotypes).toEqual(["The shipwright's bench"]);
      await page.locator('select[name="to"]').selectOption({ label: '1840s' });
      expect(await shownTitles(page)).toEqual([]);
      await page.getByRole('button', { name: 'Begin again' }).click();
      expect(await shownTitles(page)).toEqual(all);
    });
  });

  test('keeps a plate in every decade that its date reaches into', async () => {
    await visit('plates/', false, async (page) => {
      await page.locator('select[name="from"]').selectOption({ label: '1850s' });
      const titles = await shownTitles(page);
      // Dated 1849/1851 and 1847/1849 in the content.
      expect(titles).toContain('Shells, a bottle and a plaster hand');
      expect(titles).not.toContain('Ropewalk Street, looking towards the water');
    });
  });

  test('says how many plates are shown, and a sentence where there is none', async () => {
    await visit('plates/', true, async (page) => {
      // Generated text is in the tree that assistive programs read.
      const client = await page.context().newCDPSession(page);
      const tree = await client.send('Accessibility.getFullAXTree');
      const heard = tree.nodes.map(({ name }) => String(name?.value ?? ''));
      expect(heard.join(' ')).toMatch(/Plates shown:\s+8\b/);
      expect(await page.locator('.nothing').isHidden()).toBe(true);
      await page.goto(`${url}plates/?process=ambrotype&to=to-1840`);
      expect(await shownTitles(page)).toEqual([]);
      expect(await page.locator('.nothing').isVisible()).toBe(true);
    });
  });

  test('keeps the choices in the address and takes them along to another order', async () => {
    await visit('plates/?condition=tarnish', true, async (page) => {
      const byDate = await shownTitles(page);
      expect(byDate.length).toBeGreaterThan(1);
      await page.getByRole('link', { name: 'title', exact: true }).click();
      await page.waitForURL('**/plates-by/title/?condition=tarnish');
      const byTitle = await shownTitles(page);
      expect(byTitle).toEqual([...byDate].sort((a, b) => (a ?? '').localeCompare(b ?? '', 'en')));
    });
  });

  test('orders by size from the smallest plate', () => {
    const html = htmlOf(folder, 'plates-by/size/');
    const at = (slug: string) => html.indexOf(`plates/${slug}/"`);
    // 82.6 × 69.9 mm before 108 × 82.6 before 139.7 × 108.
    expect(at('shells-and-drapery')).toBeLessThan(at('chart-desk'));
    expect(at('chart-desk')).toBeLessThan(at('inner-basin'));
    expect(at('shells-and-drapery')).toBeGreaterThan(0);
  });
});

function titleOf(slug: string): string {
  const list = JSON.parse(readFileSync(join(folder, 'plates.json'), 'utf8')) as {
    slug: string;
    title: string;
  }[];
  return list.find((plate) => plate.slug === slug)!.title;
}

/** What the index of words says of an English page: each has a file of its own, packed (gzip). */
function wordsOf(page: string): string {
  const fragments = join(folder, 'search', 'words', 'fragment');
  for (const name of readdirSync(fragments).filter((one) => one.startsWith('en_'))) {
    const text = gunzipSync(readFileSync(join(fragments, name))).toString();
    const found = JSON.parse(text.slice(text.indexOf('{'))) as { url: string; content: string };
    if (found.url.endsWith(`/${page}`)) return found.content;
  }
  throw new Error(`The index of words has no page ${page}.`);
}

describe('the search of words', () => {
  test('finds a spot by its note, names its page and leads there', async () => {
    await visit('search/', true, async (page) => {
      const asked: string[] = [];
      page.on('request', (request) => asked.push(request.url()));
      expect(asked.filter((one) => one.includes('search/words'))).toEqual([]);
      await page.getByLabel('Words to look for').fill('mastheads');
      const spot = page.locator('word-search li a', { hasText: /^Mastheads$/ });
      await spot.waitFor();
      expect(new URL(page.url()).search).toBe('?words=mastheads');
      expect(asked.every((one) => one.startsWith(url) || one.startsWith('blob:'))).toBe(true);
      await spot.click();
      await page.waitForURL('**/plates/inner-basin/#spot-mastheads');
    });
  });

  test('says so when nothing is found', async () => {
    await visit('search/?words=zeppelin', true, async (page) => {
      await page.locator('word-search [role=status]', { hasText: 'zeppelin' }).waitFor();
      expect(await page.locator('word-search li').count()).toBe(0);
    });
  });

  test('does not know the words of a covered plate', async () => {
    const html = htmlOf(folder, covered);
    expect(html).not.toContain('data-pagefind-body');
    await visit('search/?words=mourning', true, async (page) => {
      await page.locator('word-search [role=status]:not(:empty)').waitFor();
      const links = await page
        .locator('word-search li a')
        .evaluateAll((found) => found.map((one) => one.getAttribute('href')));
      expect(links.filter((href) => href?.includes(covered))).toEqual([]);
    });
  });

  test('does not find a plate by the titles of plates beside it and like it', () => {
    const page = 'plates/inner-basin/';
    const html = htmlOf(folder, page);
    const shown = [...html.matchAll(/href="[^"]*\/plates\/([a-z-]+)\/"/g)].map(([, slug]) => slug);
    const others = [...new Set(shown)].filter((slug) => slug !== 'inner-basin');
    const titles = others.map((slug) => titleOf(slug));
    expect(titles.length).toBeGreaterThan(2);
    const words = wordsOf(page);
    expect(words).toContain(titleOf('inner-basin'));
    expect(titles.filter((title) => words.includes(title))).toEqual([]);
  });

  test('without script leads to the lists instead of showing a dead field', async () => {
    await visit('search/', false, async (page) => {
      expect(await page.locator('#words').isVisible()).toBe(false);
      expect(await page.locator('noscript p').isVisible()).toBe(true);
      expect(await page.locator('nav[aria-labelledby=ways] a').count()).toBeGreaterThan(2);
    });
  });

  test('publishes the index without the library’s own pages and styles', () => {
    const files = readdirSync(join(folder, 'search', 'words'));
    expect(files).toContain('pagefind.js');
    expect(files.filter((name) => /ui|css|playground/.test(name))).toEqual([]);
    const entry = JSON.parse(
      readFileSync(join(folder, 'search', 'words', 'pagefind-entry.json'), 'utf8'),
    ) as { languages: Record<string, { page_count: number }> };
    expect(entry.languages['en'].page_count).toBeGreaterThan(15);
  });
});
