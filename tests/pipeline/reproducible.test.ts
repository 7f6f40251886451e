/**
 * The same content gives the same exhibit, byte for byte: in another folder, time zone and
 * language, with another number of threads, at another time of day; and whether the pages were
 * all made at once or only those that a change reaches.
 */
import { spawn } from 'node:child_process';
import { appendFile, cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildPages } from '../../src/pipeline/build.ts';
import { findPlaces } from '../../src/pipeline/places.ts';
import { folderDigests } from './folder-digests.ts';
import { writeSmallContent } from './small-content.ts';

const script = join(import.meta.dirname, '../../scripts/build.ts');
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-reproducible-'));
  const content = join(folder, 'one', 'content');
  await writeSmallContent(content);
  // Three more, later and elsewhere: neither beside the first in the catalogue nor like it.
  for (const [slug, date] of [
    ['third', '1890'],
    ['fourth', '1901'],
    ['fifth', '1930'],
  ]) {
    const plate = join(content, 'plates', slug);
    await cp(join(content, 'plates', 'second'), plate, { recursive: true });
    await edit(join(plate, 'plate.md'), "'1850'", `'${date}'`);
  }
  await edit(join(content, 'collection.md'), '[en]', '[en, fr]');
  await writeFile(join(content, 'plates/fifth/plate.fr.md'), '---\ntitle: Un port\n---\n');
}, 60_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

async function edit(path: string, from: string, to: string): Promise<void> {
  await writeFile(path, (await readFile(path, 'utf8')).replace(from, to));
}

async function build(name: string, env: NodeJS.ProcessEnv, prefix: string[] = []): Promise<void> {
  const [command, ...words] = [...prefix, process.execPath, script, '--quiet'];
  const child = spawn(command, words, {
    env: {
      ...process.env,
      MIRRORLEAF_CONTENT: join(folder, name, 'content'),
      MIRRORLEAF_CACHE: join(folder, name, 'cache'),
      MIRRORLEAF_OUT: join(folder, name, 'out'),
      MIRRORLEAF_BASE: '/plates/',
      ...env,
    },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let said = '';
  child.stderr.on('data', (chunk: Buffer) => (said += chunk.toString()));
  const code = await new Promise((resolve) => child.on('exit', resolve));
  if (code !== 0)
    throw new Error(`The build in "${name}" ended with code ${String(code)}: ${said}`);
}

/** Keys of the pages of the plates that stand in an exhibit, by folder. */
async function pageKeys(name: string): Promise<Record<string, string>> {
  const content = join(folder, name, 'content');
  const { pages } = findPlaces({ content, cache: join(folder, name, 'cache') }, {});
  const { keys } = JSON.parse(await readFile(join(pages, 'standing.json'), 'utf8')) as {
    keys: Record<string, string>;
  };
  return keys;
}

const page = (keys: Record<string, string>, slug: string): string | undefined =>
  keys[`plates/${slug}`];

test('the same content gives the same exhibit anywhere, made at once or after a change', async () => {
  await build('one', { TZ: 'UTC', LANG: 'C', UV_THREADPOOL_SIZE: '4' });
  const before = await pageKeys('one');
  await edit(join(folder, 'one/content/plates/first/plate.md'), 'The first plate', 'A quay');
  await edit(join(folder, 'one/content/plates/fifth/plate.fr.md'), 'Un port', 'Un quai');
  await cp(join(folder, 'one/content'), join(folder, 'two/elsewhere'), { recursive: true });
  await build('one', { TZ: 'UTC', LANG: 'C', UV_THREADPOOL_SIZE: '4' });
  const after = await pageKeys('one');
  // The plate that was changed or translated anew, and the one beside it.
  for (const slug of ['first', 'second', 'fourth', 'fifth'])
    expect(page(after, slug)).not.toBe(page(before, slug));
  expect(page(before, 'third')).toMatch(/^[0-9a-f]{64}$/);
  expect(page(after, 'third')).toBe(page(before, 'third'));
  expect(await readFile(join(folder, 'one/out/fr/plates/fourth/index.html'), 'utf8')).toContain(
    'Un quai',
  );

  const ahead = 'const now = Date.now; Date.now = () => now() + 40 * 86400e3;';
  const oneCore = process.platform === 'linux' ? ['taskset', '-c', '0'] : [];
  const elsewhere = {
    MIRRORLEAF_CONTENT: join(folder, 'two/elsewhere'),
    ...{ TZ: 'Pacific/Kiritimati', LANG: 'tr_TR.UTF-8', LC_ALL: 'C', UV_THREADPOOL_SIZE: '1' },
    NODE_OPTIONS: `--import=data:text/javascript,${encodeURIComponent(ahead)}`,
  };
  await build('two', elsewhere, oneCore);
  const first = await folderDigests(join(folder, 'one/out'));
  expect(Object.keys(first).length).toBeGreaterThan(60);
  expect(await folderDigests(join(folder, 'two/out'))).toEqual(first);

  // The texts are not those that were checked: an unchecked one is not published.
  await appendFile(join(folder, 'one/content/plates/first/plate.md'), '\nOne more sentence.\n');
  const places = findPlaces(
    { content: join(folder, 'one/content'), cache: join(folder, 'one/cache') },
    { MIRRORLEAF_OUT: join(folder, 'one/out') },
  );
  expect(await buildPages(places, '0'.repeat(64))).toBe(1);
  expect(await folderDigests(join(folder, 'one/out'))).toEqual(first);
}, 600_000);
