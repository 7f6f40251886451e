import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { PagesToMake } from '../../src/integration/pages-to-make.ts';
import { beginWordIndex, type WordPart } from '../../src/integration/word-index.ts';
import { folderDigests } from '../pipeline/folder-digests.ts';

/** One more than a single index holds, so that there are parts. */
const slugs = Array.from({ length: 1001 }, (_, k) => `plate-${k}`);
/** Somewhere amid the pages of its part. */
const changed = 'plate-500';
const page = (slug: string, words: string) =>
  `<html lang="en"><body><main data-pagefind-body><h1>${slug}</h1>${words}</main></body></html>`;

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-word-index-'));
  for (const slug of slugs) await writePage('exhibit', slug, page(slug, 'harbour'));
  await cp(join(folder, 'exhibit'), join(folder, 'whole'), { recursive: true });
  await writePage('whole', changed, page(changed, 'lighthouse'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function writePage(root: string, slug: string, text: string): Promise<void> {
  const file = join(folder, root, 'plates', slug, 'index.html');
  await mkdir(dirname(file), { recursive: true });
  await writeFile(file, text);
}

function making(made: readonly string[], standing: ReadonlyMap<string, string>): PagesToMake {
  const plates = slugs.map((slug) => ({ slug }));
  return {
    plates,
    made: plates.filter(({ slug }) => made.includes(slug)),
    exhibit: join(folder, 'exhibit'),
    standing,
    wordKeys: new Map(slugs.map((slug) => [slug, made.includes(slug) ? 'new' : 'old'])),
    content: { collection: { languages: ['en'] } },
  } as unknown as PagesToMake;
}

const keysOf = (parts: readonly WordPart[]) =>
  new Map(parts.map(({ path, key }): [string, string] => [path, key]));

test('a part begun before its changed page is made equals the one from all pages', async () => {
  const standing = keysOf(
    await beginWordIndex(join(folder, 'exhibit'), making([], new Map())).finish(),
  );
  const all = await beginWordIndex(join(folder, 'whole'), making(slugs, new Map())).finish();

  const out = join(folder, 'early');
  const index = beginWordIndex(out, making([changed], standing));
  await sleep(300);
  // Written in two goes: half a page is not taken for one.
  const text = page(changed, 'lighthouse');
  await writePage('early', changed, text.slice(0, 60));
  await sleep(100);
  await writePage('early', changed, text);
  const parts = await index.finish();

  const renewed = parts.filter(({ stays }) => !stays);
  expect(parts).toHaveLength(all.length);
  expect(renewed).toHaveLength(1);
  const [{ path }] = renewed;
  expect(await folderDigests(join(out, path))).toEqual(
    await folderDigests(join(folder, 'whole', path)),
  );
});

test('a page that never comes is told of, once all pages are said to be made', async () => {
  const out = join(folder, 'never');
  await mkdir(out);
  const index = beginWordIndex(out, making([changed], new Map()));
  await expect(index.finish()).rejects.toThrow(/no such file.*plate-500/);
});
