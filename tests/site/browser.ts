/** The browser that looks at the built pages: found by `npm test`, or Debian's. */
import { chromium, type Browser, type Page } from 'playwright-core';

export const browserPath = process.env['MIRRORLEAF_BROWSER'] ?? '/usr/bin/chromium';

/** Nothing is fetched behind the pages' back, so that a request to elsewhere is the page's own. */
export const browserFlags = [
  '--headless=new',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export function openBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: browserPath, args: browserFlags });
}

export interface Visit {
  /** Under the base path: `plates/inner-basin/`. */
  readonly page: string;
  readonly width?: number;
  readonly scheme?: 'light' | 'dark';
  readonly script?: boolean;
}

/** Open a page of the exhibit at `url` in a window of its own, do something there, close it. */
export async function visitPage<T>(
  browser: Browser,
  url: string,
  { page: path, width = 1280, scheme = 'light', script = true }: Visit,
  look: (page: Page) => Promise<T>,
): Promise<T> {
  const context = await browser.newContext({
    viewport: { width, height: 800 },
    colorScheme: scheme,
    javaScriptEnabled: script,
    reducedMotion: 'reduce',
  });
  try {
    const page = await context.newPage();
    await page.goto(`${url}${path}`, { waitUntil: 'load' });
    return await look(page);
  } finally {
    await context.close();
  }
}
