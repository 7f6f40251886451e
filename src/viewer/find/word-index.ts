/**
 * The index of words that the build wrote into `search/words/`, loaded when it is first asked
 * for. The index is read in the page's own language.
 */

import { wordPartFolder } from '../../publish/word-parts.ts';

/** What our list shows of a page that was found. */
export interface FoundPage {
  readonly address: string;
  readonly title: string;
  /** What kind of page it is, in the page's language. */
  readonly kind: string | null;
  /** HTML from the index: words that were looked for stand in `mark`, all else is escaped. */
  readonly excerpt: string;
  /** Parts of the page that have the words, by heading. */
  readonly parts: readonly { readonly address: string; readonly title: string }[];
}

interface RawPart {
  readonly url: string;
  readonly title: string;
}
interface RawPage {
  readonly url: string;
  readonly excerpt: string;
  readonly meta: Readonly<Record<string, string | undefined>>;
  readonly sub_results: readonly RawPart[];
}
interface Engine {
  options(options: { baseUrl: string }): Promise<void>;
  init(): Promise<void>;
  mergeIndex(folder: string, options: { baseUrl: string }): Promise<void>;
  search(asked: string): Promise<{ results: readonly { data(): Promise<RawPage> }[] }>;
}

export interface WordIndex {
  /** All pages that have the words, best first; each is fetched when it is shown. */
  find(asked: string): Promise<readonly (() => Promise<FoundPage>)[]>;
}

/**
 * @param folder Address of the index, with a slash at the end.
 * @param base Address of the exhibit, which the addresses of pages begin with.
 * @param parts Number of parts of a large index (`src/publish/word-parts.ts`).
 */
export async function openWordIndex(
  folder: string,
  base: string,
  parts: number,
): Promise<WordIndex> {
  const address = new URL(`${folder}pagefind.js`, location.href).href;
  const engine = (await import(/* @vite-ignore */ address)) as Engine;
  await engine.options({ baseUrl: base });
  await engine.init();
  const part = (k: number) => new URL(`${folder}${wordPartFolder(k)}/`, location.href).href;
  const more = Array.from({ length: parts }, (_, k) => part(k));
  await Promise.all(more.map((address) => engine.mergeIndex(address, { baseUrl: base })));
  return {
    async find(asked) {
      const { results } = await engine.search(asked);
      return results.map((result) => async () => foundPage(await result.data()));
    },
  };
}

function foundPage({ url, excerpt, meta, sub_results: parts }: RawPage): FoundPage {
  return {
    address: url,
    title: meta['title'] ?? url,
    kind: meta['kind'] ?? null,
    excerpt,
    parts: parts
      .filter((part) => part.url !== url)
      .slice(0, 3)
      .map((part) => ({ address: part.url, title: part.title })),
  };
}
