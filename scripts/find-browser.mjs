/** Where a Chromium is: the environment's word first, then the usual places. */
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const names = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome'];
const places = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** @returns {string | null} Path of a browser that can be driven, or null. */
export function findBrowser(env = process.env) {
  if (env.MIRRORLEAF_BROWSER) return env.MIRRORLEAF_BROWSER;
  const folders = (env.PATH ?? '').split(delimiter).filter(Boolean);
  const candidates = [...folders.flatMap((f) => names.map((n) => join(f, n))), ...places];
  return candidates.find((path) => existsSync(path)) ?? null;
}
