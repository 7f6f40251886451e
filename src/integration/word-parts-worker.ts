/**
 * Parts of the index of words in a thread of its own, one after another. Pages that stand already
 * are read while the others are still being made; those are waited for.
 */
import { readFileSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import { isMainThread, workerData } from 'node:worker_threads';
import { close } from 'pagefind';
import { writeWords, type WordPage } from './words-of-pages.ts';

export interface WordPartsWork {
  readonly parts: readonly { readonly folder: string; readonly pages: readonly WordPage[] }[];
  /** Files that may not be there yet. */
  readonly awaited: ReadonlySet<string>;
  /** One number, not 0 as soon as all pages are made: then nothing is waited for any more. */
  readonly ready: Int32Array;
}

/** A page that is waited for is looked for this often, milliseconds. */
const glance = 20;

/** The page, when its last line is written. */
async function finishedPage(file: string, ready: Int32Array): Promise<string> {
  for (;;) {
    const allMade = Atomics.load(ready, 0) !== 0;
    const text = readPage(file, allMade);
    if (text.trimEnd().endsWith('</html>')) return text;
    if (allMade) throw new Error(`The page ${file} has no end.`);
    await sleep(glance);
  }
}

/** @param must Whether it is an error that there is no such file; else an empty text. */
function readPage(file: string, must: boolean): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    if (must || (error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    return '';
  }
}

if (!isMainThread) {
  const { parts, awaited, ready } = workerData as WordPartsWork;
  const read = (file: string) =>
    awaited.has(file) ? finishedPage(file, ready) : readFileSync(file, 'utf8');
  try {
    for (const { folder, pages } of parts) await writeWords(folder, pages, read);
  } finally {
    await close();
  }
}
