/** The browser that looks at the built pages: found by `npm test`, or Debian's. */
import { chromium, type Browser } from 'playwright-core';

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
