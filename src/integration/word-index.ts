/**
 * The index of words for the exhibit's own search, in parts where the exhibit is large
 * (`src/publish/word-parts.ts`). A part of which some plates have changed is begun while their
 * pages are still being made: reading the others takes longer than making a few.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { close } from 'pagefind';
import { wordPartFolder, wordPartOf, wordParts } from '../publish/word-parts.ts';
import { plateFolders, type PagesToMake } from './pages-to-make.ts';
import type { WordPartsWork } from './word-parts-worker.ts';
import { writeWords, type WordPage } from './words-of-pages.ts';

/** Folder of the index within the exhibit. */
const wordIndexFolder = 'search/words';

/** A part of the index that stands already, or has just been written, with the key of its pages. */
export interface WordPart {
  readonly path: string;
  readonly key: string;
  readonly stays: boolean;
}

interface PlannedPart extends WordPart {
  readonly pages: readonly PlatePage[];
}

interface PlatePage extends WordPage {
  readonly folder: string;
  /** Whether this build makes it. */
  readonly isMade: boolean;
}

export interface WordIndex {
  /** Folders within the exhibit whose pages are waited for. */
  readonly awaited: ReadonlySet<string>;
  /**
   * Writes what is not written yet. Call it when all pages are made.
   * @throws If the index cannot be made, with the library's own sentences.
   */
  finish(): Promise<readonly WordPart[]>;
}

/** Begins the index of the exhibit that is being made in `out`. */
export function beginWordIndex(out: string, making: PagesToMake): WordIndex {
  const { plates, content } = making;
  const count = wordParts(plates.length);
  const parts = planParts(out, making, count);
  const due = parts.filter(({ stays }) => !stays);
  const isEarly = ({ pages }: PlannedPart) =>
    pages.some(({ isMade }) => isMade) && pages.some(({ isMade }) => !isMade);
  const early = due.filter(isEarly);
  const thread = early.length > 0 ? beginParts(out, early) : null;

  const finish = async (): Promise<readonly WordPart[]> => {
    const begun = thread?.finish();
    const languages = content.collection?.languages ?? [];
    const folders = new Set(plates.flatMap(({ slug }) => plateFolders(slug, languages)));
    const others = await otherPages(out, folders);
    const read = (file: string) => readFileSync(file, 'utf8');
    try {
      const own = count === 0 ? platePages(out, making, plates) : [];
      await writeWords(join(out, wordIndexFolder), [...others, ...own], read);
      for (const part of due) {
        if (!early.includes(part)) await writeWords(join(out, part.path), part.pages, read);
      }
    } finally {
      await close();
    }
    await begun;
    return parts;
  };
  const comingPages = early.flatMap(({ pages }) => pages.filter(({ isMade }) => isMade));
  return { awaited: new Set(comingPages.map(({ folder }) => folder)), finish };
}

/** The parts that the plates are divided among, and which of them stand already. */
function planParts(out: string, making: PagesToMake, count: number): PlannedPart[] {
  const { plates, wordKeys, standing, content } = making;
  const languages = content.collection?.languages ?? [];
  return Array.from({ length: count }, (_, k) => {
    const inPart = plates.filter(({ slug }) => wordPartOf(slug, count) === k);
    const lines = inPart.flatMap(({ slug }) =>
      plateFolders(slug, languages).map((folder) => `${folder} ${wordKeys.get(slug)}`),
    );
    const key = createHash('sha256').update(lines.sort().join('\n')).digest('hex');
    const path = `${wordIndexFolder}/${wordPartFolder(k)}`;
    return { path, key, stays: standing.get(path) === key, pages: platePages(out, making, inPart) };
  });
}

function platePages(
  out: string,
  { made, exhibit, content }: PagesToMake,
  plates: PagesToMake['plates'],
): PlatePage[] {
  const languages = content.collection?.languages ?? [];
  const slugs = new Set(made.map(({ slug }) => slug));
  return plates.flatMap(({ slug }) =>
    plateFolders(slug, languages).map((folder) => {
      const isMade = slugs.has(slug);
      const path = `${folder}/index.html`;
      return { folder, path, file: join(isMade ? out : exhibit, path), isMade };
    }),
  );
}

/** Parts in a thread of their own, which waits for the pages that are being made. */
function beginParts(out: string, parts: readonly PlannedPart[]): { finish(): Promise<void> } {
  const ready = new Int32Array(new SharedArrayBuffer(4));
  const pages = parts.flatMap((part) => part.pages);
  const workerData: WordPartsWork = {
    parts: parts.map((part) => ({ folder: join(out, part.path), pages: part.pages })),
    awaited: new Set(pages.filter(({ isMade }) => isMade).map(({ file }) => file)),
    ready,
  };
  const worker = new Worker(new URL('./word-parts-worker.ts', import.meta.url), { workerData });
  const ended = new Promise<void>((resolve, reject) => {
    worker.on('error', reject);
    worker.on('exit', (code) => {
      if (code === 0) resolve();
      else reject(new Error(`The thread that counts words ended with ${code}.`));
    });
  });
  // Heard when the pages are made.
  ended.catch(() => undefined);
  return {
    finish: () => {
      Atomics.store(ready, 0, 1);
      return ended;
    },
  };
}

/** The pages of `out` that are in no plate's folder. */
async function otherPages(out: string, plates: ReadonlySet<string>): Promise<WordPage[]> {
  const found: WordPage[] = [];
  const look = async (within: string): Promise<void> => {
    for (const entry of await readdir(join(out, within), { withFileTypes: true })) {
      const path = within === '' ? entry.name : `${within}/${entry.name}`;
      if (entry.isDirectory() && !plates.has(path)) await look(path);
      else if (entry.name === 'index.html') found.push({ path, file: join(out, path) });
    }
  };
  await look('');
  return found;
}
