/**
 * The catalogue as a PDF: the exhibit's own catalogue page, opened in a browser of the machine
 * and printed. Twice, since only the first printing tells on which pages the plates begin.
 */
import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { serveStatic } from '../static-server.ts';
import { openPage, type BrowserPage } from './browser-pipe.ts';
import { namedPages } from './named-pages.ts';

export interface CatalogueOrder {
  /** The built exhibit. */
  readonly exhibit: string;
  /** Plates by name; none means all. */
  readonly slugs: readonly string[];
  /** Path of the browser. */
  readonly browser: string;
  /** The PDF. */
  readonly to: string;
  /** Day in the colophon, `YYYY-MM-DD`. */
  readonly day: string;
  /** A language of the exhibit other than its first. */
  readonly language?: string | undefined;
}

export type PrintedCatalogue =
  | { readonly ok: true; readonly pages: number; readonly plates: number }
  | { readonly ok: false; readonly reason: string };

/** A browser that loads nothing for this long will not any more, milliseconds. */
const patience = 120_000;

export async function printCatalogue(order: CatalogueOrder): Promise<PrintedCatalogue> {
  const first = join(order.exhibit, 'catalogue', 'index.html');
  if (!existsSync(first)) {
    return refused(`There is no exhibit in ${order.exhibit}. Build it first: npm run build.`);
  }
  const page = join(order.exhibit, order.language ?? '', 'catalogue', 'index.html');
  if (!existsSync(page)) {
    return refused(
      `The exhibit does not speak "${order.language}"; --language is for others than its first.`,
    );
  }
  const absent = order.slugs.filter(
    (slug) => !existsSync(join(order.exhibit, 'plates', slug, 'index.html')),
  );
  if (absent.length > 0) return refused(`The exhibit has no plate ${absent.join(', ')}.`);
  const server = await serveStatic(order.exhibit, basePath(await readFile(page, 'utf8')));
  try {
    const browser = await openPage(order.browser);
    try {
      return await printWith(browser, server.url, order);
    } finally {
      await browser.close();
    }
  } catch (error) {
    return refused((error as Error).message);
  } finally {
    await server.close();
  }
}

const refused = (reason: string) => ({ ok: false, reason }) as const;

/** The path that the exhibit was built for: its addresses are absolute. */
function basePath(html: string): string {
  return /<link rel="icon"[^>]*href="([^"]*)mark\.svg"/.exec(html)?.[1] ?? '/';
}

async function printWith(
  browser: BrowserPage,
  url: string,
  { slugs, day, to, language }: CatalogueOrder,
): Promise<PrintedCatalogue> {
  const asked = new URLSearchParams({ plates: slugs.length > 0 ? slugs.join(',') : 'all', day });
  await browser.send('Page.enable');
  const folder = language === undefined ? '' : `${language}/`;
  await browser.send('Page.navigate', { url: `${url}${folder}catalogue/?${asked.toString()}` });
  const said = await whole(browser);
  if (said !== '') return refused(said);
  const { places: first } = namedPages(await print(browser));
  await evaluate(browser, `${catalogue}.showPages(${JSON.stringify(first)})`);
  const pdf = await print(browser);
  const { places: last, count: pages } = namedPages(pdf);
  const moved = Object.keys(first).find((name) => first[name] !== last[name]);
  if (moved !== undefined) {
    return refused(`"${moved}" moved to another page while the list of plates was numbered.`);
  }
  await mkdir(dirname(to), { recursive: true });
  // A reader has the old catalogue or the new one, never half of it.
  const draft = `${to}.${randomUUID().slice(0, 8)}`;
  await writeFile(draft, pdf);
  await rename(draft, to);
  const plates = Object.keys(last).filter((name) => name.startsWith('plate-')).length;
  return { ok: true, pages, plates };
}

const catalogue = `document.querySelector('printed-catalogue')`;

/** Wait until the page has put itself together; what it says where it has not. */
async function whole(browser: BrowserPage): Promise<string> {
  const until = Date.now() + patience;
  let files = 0;
  for (let end = until; Date.now() < end;) {
    const [state, said, loaded] = (await evaluate(
      browser,
      `[${catalogue}?.dataset.state, ${catalogue}?.dataset.said,
        performance.getEntriesByType('resource').length]`,
    )) as [string | undefined, string | undefined, number];
    if (state === 'ready') return '';
    if (state === 'failed') return said ?? 'The catalogue is not whole.';
    if (loaded !== files) end = Date.now() + patience;
    files = loaded;
    await new Promise((done) => setTimeout(done, 100));
  }
  return `The catalogue was not put together: nothing came for ${patience / 1000} s.`;
}

async function evaluate(browser: BrowserPage, expression: string): Promise<unknown> {
  const answer = await browser.send('Runtime.evaluate', { expression, returnByValue: true });
  return (answer['result'] as { value?: unknown }).value;
}

async function print(browser: BrowserPage): Promise<Buffer> {
  const { data } = await browser.send('Page.printToPDF', {
    printBackground: true,
    preferCSSPageSize: true,
    generateTaggedPDF: true,
    generateDocumentOutline: true,
  });
  return Buffer.from(data as string, 'base64');
}
