/**
 * Builds on a folder of another machine that is slow, refuses, dies or comes back empty, and
 * shares on four machines around one such folder. The folder is real to the program (a file
 * system of its own, served by a process beside it); where none can be mounted the tests skip.
 */
import { cp, mkdir, mkdtemp, readdir, rename, rm, utimes } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  canServe,
  canSplit,
  runThere,
  startThere,
  type There,
} from '../fixtures/network-folder/run-there.ts';
import { exists } from '../../src/pipeline/store.ts';
import type { Trouble } from '../fixtures/network-folder/serve.ts';
import { folderFiles } from './folder-files.ts';
import { digestsBelow, namedResults, strangers, type Digests } from './named-results.ts';
import { blobs, writeCapture, writeSmallContent } from './small-content.ts';

const plates = join(import.meta.dirname, '../../scripts/plates.ts');
const size = { width: 256, height: 208 };
let folder: string;
/** What the other machine has, and where it is seen. */
let served: string;
let at: string;
let captures: Digests;
let expected: Digests;
/** What one plate by itself gives. */
let alone: Digests;

beforeAll(async () => {
  if (!canServe) return;
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-network-'));
  [served, at] = [join(folder, 'served'), join(folder, 'at')];
  await mkdir(at);
  const content = join(served, 'content');
  await writeSmallContent(content, size);
  for (const [slug, like, seed] of [
    ['third', 'second', 3],
    ['fourth', 'second', 4],
  ] as const) {
    await cp(join(content, 'plates', like), join(content, 'plates', slug), { recursive: true });
    const capture = join(content, 'plates', slug, 'captures', 'normal.tif');
    await writeCapture(capture, blobs(seed, size), size);
  }
  captures = await digestsBelow(content);
  expect(await build('alone', {}, 'second')).toMatchObject({ code: 0 });
  alone = await namedResults(join(served, 'alone'));
  expect(await build('one', {})).toMatchObject({ code: 0 });
  expected = await namedResults(join(served, 'one'));
}, 120_000);
afterAll(async () => {
  if (!canServe) return;
  expect(await digestsBelow(join(served, 'content'))).toEqual(captures);
  await rm(folder, { recursive: true, force: true });
});

/** The content is seen over there, and so are the results where their folder has no place of its own. */
const setting = (cache: string, trouble: Trouble): There => ({
  ...{ folder: served, at, trouble },
  env: {
    MIRRORLEAF_CONTENT: join(at, 'content'),
    MIRRORLEAF_CACHE: resolve(at, cache),
    // Twenty builds need not compile the program twenty times.
    NODE_COMPILE_CACHE: join(folder, 'compiled'),
  },
});
const build = (cache: string, trouble: Trouble, ...slugs: string[]) =>
  runThere(setting(cache, trouble), [process.execPath, plates, ...slugs]);

const programFault = /fault of the program|Copy the file again|\n {4}at /;

describe.skipIf(!canServe)(
  'on a folder of another machine (skipped where FUSE cannot mount)',
  () => {
    test('a slow one, which stands still for two seconds, gives the same bytes', async () => {
      const trouble = { delay: 2, from: 30, stall: 2000 };
      expect(await build('slow', trouble, 'second')).toMatchObject({ code: 0 });
      expect(await namedResults(join(served, 'slow'))).toEqual(alone);
    });

    test.each([
      ['input/output errors', 5],
      ['stale handles', 116],
    ])(
      'a capture on one that answers with %s for a moment is asked for once more',
      async (name, error) => {
        // The reader of the capture meets it; two readings later only a decoder that need not know the file.
        const trouble = { from: 12, refuse: { error, count: 2 } };
        const cache = join(folder, `again-${name.length}`);
        expect(await build(cache, trouble, 'second')).toMatchObject({ code: 0 });
        expect(await namedResults(cache)).toEqual(alone);
      },
    );

    test.each([
      ['dies while texts are read', { from: 3, die: true }, /cannot be read \(ENOTCONN\)/],
      ['dies while captures are read', { from: 14, die: true }, /could not be read \(ENOTCONN\)/],
      // For good: the program asks once more for a capture, and the kernel for a stale name: one that
      // comes back in time gives the plate.
      [
        'forgets what was open',
        { from: 14, refuse: { error: 116 } },
        /could not be read \(ESTALE\)/,
      ],
    ])(
      'content on one that %s fails with a sentence, and is not remembered as a fault of the capture',
      async (name, trouble, sentence) => {
        const cache = join(folder, `own-${name.length}`);
        const { code, said } = await build(cache, trouble, 'second');
        expect(code).toBe(1);
        expect(said).toMatch(sentence);
        expect(said).not.toMatch(programFault);
        expect(strangers(await namedResults(cache), alone)).toEqual([]);
        expect(await build(cache, {}, 'second')).toMatchObject({ code: 0 });
        expect(await namedResults(cache)).toEqual(alone);
      },
    );

    test.each([
      ['dies', { from: 20, die: true }, /The cache folder .* no longer answers \(E\w+\)/],
      [
        'answers nothing but errors for a while',
        { from: 20, refuse: { error: 5, count: 40 } },
        /no longer answers|was full, or failed,/,
      ],
    ])(
      'results on one that %s: a sentence, nothing half-made, a clean next build',
      async (name, trouble, sentence) => {
        const cache = `results-${name.length}`;
        const { code, said } = await build(cache, trouble, 'second');
        expect(code).toBe(1);
        expect(said).toMatch(sentence);
        expect(said).not.toMatch(programFault);
        expect(strangers(await namedResults(join(served, cache)), alone)).toEqual([]);
        expect(await build(cache, {}, 'second')).toMatchObject({ code: 0 });
        expect(await namedResults(join(served, cache))).toEqual(alone);
      },
    );

    test('an exhibit on one is put there whole, and stays as it was when the folder dies under the next', async () => {
      const source = join(import.meta.dirname, '../../src/pipeline');
      const put = `
        import { mkdir, writeFile } from 'node:fs/promises';
        import { finishedFolder } from '${source}/finished-folder.ts';
        import { nearFolder } from '${source}/near-folder.ts';
        const [place, near, text] = process.argv.slice(1);
        await finishedFolder(place, (folder) => nearFolder(folder, near, async (out) => {
          await mkdir(out, { recursive: true });
          for (let k = 0; k < 30; k += 1) await writeFile(out + '/' + k, text);
          return true;
        }));`;
      const publish = (text: string, trouble: Trouble) =>
        runThere(setting('', trouble), [
          ...[process.execPath, '--input-type=module', '-e', put],
          ...[join(at, 'exhibit'), join(folder, 'near'), text],
        ]);
      const published = async () =>
        (await folderFiles(join(served, 'exhibit'))).map(([, bytes]) => String(bytes));
      expect((await publish('one', {})).code).toBe(0);
      expect(await published()).toEqual(Array(30).fill('one'));
      expect((await publish('two', { from: 20, die: true })).code).toBe(1);
      expect(await published()).toEqual(Array(30).fill('one'));
      expect((await publish('two', {})).code).toBe(0);
      expect(await published()).toEqual(Array(30).fill('two'));
      const names = await readdir(served);
      expect(names.filter((name) => name.startsWith('exhibit'))).toEqual(['exhibit']);
    });

    test('content that is not mounted at all takes no result and no record away', async () => {
      const [content, away] = [join(served, 'content'), join(served, 'away')];
      await rename(content, away);
      await mkdir(content);
      const empty = await build('one', {});
      await rm(content, { recursive: true });
      await rename(away, content);
      expect(empty).toMatchObject({ code: 1 });
      expect(empty.said).toContain('There is no collection.md.');
      expect(await namedResults(join(served, 'one'))).toEqual(expected);
    });
  },
);

test.skipIf(!canSplit)(
  'four shares on four machines around one folder give what one machine gives, byte for byte, one of them killed and run again (skipped where FUSE or namespaces are not permitted)',
  async () => {
    // Two machines have the same name, as containers can; each has networks and process numbers of its own.
    const hosts = ['gallery', 'gallery', 'store', 'studio'];
    const share = (k: number) =>
      startThere({ ...setting('shared', {}), host: hosts[k - 1] }, [
        ...[process.execPath, plates, '--share', `${k}/4`],
      ]);
    const cache = join(served, 'shared');
    const lock = 'lock-1-of-4';
    const first = share(1);
    // Killed in the gate it would keep the others out until its silence is believed.
    const there = (...path: string[]) => exists(join(cache, ...path));
    const begun = async () => (await there('scratch', '1-of-4')) && !(await there('lock'));
    while (!(await begun())) await sleep(20);
    const others = [2, 3, 4].map(share);
    await sleep(200);
    first.kill();
    const ends = await Promise.all([first, ...others].map(({ ended }) => ended));
    expect(ends.map(({ code }) => code)).toEqual([null, 0, 0, 0]);
    expect(strangers(await namedResults(cache), expected)).toEqual([]);
    // Nobody over there can be asked whether it lives: three minutes of silence are waited for.
    const silent = new Date(Date.now() - 200_000);
    await utimes(join(cache, lock), silent, silent);
    expect(await share(1).ended).toMatchObject({ code: 0 });
    expect(await namedResults(cache)).toEqual(expected);
    expect((await build('shared', {})).said).toMatch(/0 made, 4 unchanged, 0 failed/);
  },
  120_000,
);
