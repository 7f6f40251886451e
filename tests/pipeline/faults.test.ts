/** What a machine and a person do to a build: each leaves the captures alone and nothing half-made. */
import { execFile, spawn, spawnSync } from 'node:child_process';
import { cp, mkdir, mkdtemp, readFile, rename, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findPlaces, type Places } from '../../src/pipeline/places.ts';
import { createReporter } from '../../src/pipeline/reporter.ts';
import { readFailure, readResult } from '../../src/pipeline/results.ts';
import { runPlates } from '../../src/pipeline/run.ts';
import { canSplit } from '../fixtures/network-folder/run-there.ts';
import { folderDigests } from './folder-digests.ts';
import { writeSmallContent } from './small-content.ts';

const reporter = createReporter(process.stderr, { quiet: true });
const script = join(import.meta.dirname, '../../scripts/plates.ts');
const run = promisify(execFile);
let folder: string;
let master: string;
let expected: Record<string, string>;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-faults-'));
  master = join(folder, 'master');
  await writeSmallContent(master);
  const places = await fresh('whole');
  await runPlates({ places, reporter });
  expected = await folderDigests(places.tiles);
}, 180_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

async function fresh(name: string): Promise<Places> {
  const content = join(folder, name, 'content');
  await cp(master, content, { recursive: true });
  return findPlaces({ content, cache: join(folder, name, 'cache') }, {});
}

const states = (summary: Awaited<ReturnType<typeof runPlates>>) =>
  Object.fromEntries(summary.plates.map((plate) => [plate.slug, plate.state]));

/** The command in a process of its own; its exit code and what it said. */
async function build(
  { content, cache }: Pick<Places, 'content' | 'cache'>,
  { shell }: { shell?: string } = {},
): Promise<{ code: number; said: string }> {
  const env = { ...process.env, MIRRORLEAF_CONTENT: content, MIRRORLEAF_CACHE: cache };
  const words = [process.execPath, script];
  const [file, rest] = shell
    ? ['bash', ['-c', `${shell}; exec "$@"`, 'bash', ...words]]
    : [words[0], words.slice(1)];
  try {
    const { stderr } = await run(file, rest, { env });
    return { code: 0, said: stderr };
  } catch (error) {
    const { code, stderr } = error as { code: number; stderr: string };
    return { code, said: stderr };
  }
}

/** Whether this process may mount a small disk; only root may, and not in every container. */
const canMount =
  process.platform === 'linux' &&
  spawnSync('unshare', ['-m', 'mount', '-t', 'tmpfs', 'none', '/mnt']).status === 0;

describe('a build', () => {
  test('takes captures with spaces, accents, emoji, 240 bytes or the look of an option in their names', async () => {
    const names = [
      'a plate (final) [2].tif',
      'pl\u00e9ni\u00e8re.tif',
      'ple\u0301nie\u0300re.tif',
      '銀板 🪞 ٣.tif',
      `${'n'.repeat(236)}.tif`,
      '--help.tif',
    ];
    const places = await fresh('names');
    const plate = join(places.content, 'plates/second');
    const lines = names.map(
      (name, k) =>
        `  - { id: n${k}, file: ${JSON.stringify(name)}, setup: normal, reading: positive }\n`,
    );
    for (const name of names) {
      await cp(join(plate, 'captures/normal.tif'), join(plate, 'captures', name));
    }
    const sitting = await readFile(join(plate, 'sitting.yaml'), 'utf8');
    await writeFile(join(plate, 'sitting.yaml'), sitting + lines.join(''));
    expect(states(await runPlates({ places, reporter, slugs: ['second'] }))).toEqual({
      second: 'made',
    });
    const captures = (await readResult(places, 'second'))?.sittings[0].captures ?? [];
    expect(captures.map(({ files }) => files[0].name)).toEqual(['normal.tif', ...names]);
  });

  test('tells two captures apart whose names differ in case alone', async () => {
    const places = await fresh('case');
    const plate = join(places.content, 'plates/second');
    for (const name of ['Again.tif', 'AGAIN.TIF']) {
      await cp(join(plate, 'captures/normal.tif'), join(plate, 'captures', name));
    }
    const lines =
      '  - { id: a, file: Again.tif, setup: normal, reading: positive }\n' +
      '  - { id: b, file: AGAIN.TIF, setup: normal, reading: positive }\n';
    await writeFile(
      join(plate, 'sitting.yaml'),
      (await readFile(join(plate, 'sitting.yaml'), 'utf8')) + lines,
    );
    await runPlates({ places, reporter, slugs: ['second'] });
    const names = (await readResult(places, 'second'))?.sittings[0].captures.map(
      ({ files }) => files[0].name,
    );
    expect(names).toEqual(['normal.tif', 'Again.tif', 'AGAIN.TIF']);
  });

  test('beside another one waits, says for whom, and both end well', async () => {
    const places = await fresh('two');
    const both = await Promise.all([build(places), build(places)]);
    expect(both.map(({ code }) => code)).toEqual([0, 0]);
    const waited = both.filter(({ said }) => said.includes('is building with the same cache'));
    expect(waited.length).toBeLessThanOrEqual(1);
    expect(both.map(({ said }) => /(\d+) unchanged/.exec(said)?.[1]).sort()).toEqual(['0', '2']);
    expect(await folderDigests(places.tiles)).toEqual(expected);
  });

  test('takes captures that come from the future', async () => {
    const places = await fresh('future');
    const file = join(places.content, 'plates/second/captures/normal.tif');
    await utimes(file, new Date('2049-01-01'), new Date('2049-01-01'));
    expect(states(await runPlates({ places, reporter }))['second']).toBe('made');
    expect(states(await runPlates({ places, reporter }))['second']).toBe('unchanged');
  });

  test.each([
    [
      'is written over',
      (path: string) => writeFile(path, Buffer.alloc(4000)),
      'normal.tif changed while the plate was being worked on.',
    ],
    [
      'vanishes with its folder, as a network folder does,',
      (path: string) => rename(join(path, '..'), join(path, '../../away')),
      '.tif was there when the plate was begun, and is gone.',
    ],
  ])(
    'whose capture %s while it is worked on fails that plate, keeps nothing of it, and the next mends it',
    async (name, spoil, sentence) => {
      const places = await fresh(`spoilt-${name.length}`);
      const captures = join(places.content, 'plates/first/captures');
      let spoilt: Promise<void> | undefined;
      const step = (label: string) => {
        if (label === 'first: aligning') spoilt ??= spoil(join(captures, 'normal.tif'));
      };
      const summary = await runPlates({ places, reporter: { ...reporter, step }, jobs: 1 });
      await spoilt;
      expect(states(summary)).toEqual({ first: 'failed', second: 'made' });
      expect(summary.plates[0].findings.at(-1)?.message).toContain(sentence);
      await rm(join(captures, '..', 'away'), { recursive: true, force: true });
      await cp(join(master, 'plates/first/captures'), captures, { recursive: true });
      expect(states(await runPlates({ places, reporter }))['first']).toBe('made');
      expect(await folderDigests(places.tiles)).toEqual(expected);
    },
    180_000,
  );

  test('whose clock is set back by an hour, and which stands still for a second, ends well', async () => {
    const places = await fresh('clock');
    const back =
      'const now = Date.now; const begun = now(); Date.now = () => now() - (now() - begun > 300 ? 3600000 : 0);';
    const child = spawn(process.execPath, [script], {
      env: {
        ...process.env,
        NODE_OPTIONS: `--import=data:text/javascript,${encodeURIComponent(back)}`,
        MIRRORLEAF_CONTENT: places.content,
        MIRRORLEAF_CACHE: places.cache,
      },
      stdio: 'ignore',
    });
    const ended = new Promise((resolve) => child.on('exit', resolve));
    // As on a folder that answers slowly: everything waits, and goes on.
    await sleep(900);
    child.kill('SIGSTOP');
    await sleep(1000);
    child.kill('SIGCONT');
    expect(await ended).toBe(0);
    expect(await folderDigests(places.tiles)).toEqual(expected);
    expect(states(await runPlates({ places, reporter }))).toEqual({
      first: 'unchanged',
      second: 'unchanged',
    });
  });

  test('that may write no file of more than 8 kB fails with a sentence, and the next mends it', async () => {
    const places = await fresh('small-files');
    // A full disk as far as a program can tell: writing stops with an error in mid-file.
    const { code, said } = await build(places, { shell: 'ulimit -f 8' });
    expect(code).toBe(1);
    expect(said).toMatch(/[Tt]he disk of the cache folder (is|was) full/);
    expect(said).not.toContain('fault of the program');
    expect(expected).toMatchObject(await folderDigests(places.tiles));
    expect((await build(places)).code).toBe(0);
    expect(await folderDigests(places.tiles)).toEqual(expected);
  });

  test.skipIf(!canMount)(
    'on a full disk fails with a sentence, and the next mends it',
    async () => {
      const places = await fresh('full-disk');
      await mkdir(places.cache, { recursive: true });
      // The mount lives as long as the process that sees it.
      const env = {
        ...process.env,
        MIRRORLEAF_CONTENT: places.content,
        MIRRORLEAF_CACHE: places.cache,
      };
      const words = `mount -t tmpfs -o size=200k none '${places.cache}' && exec '${process.execPath}' '${script}'`;
      const full = spawnSync('unshare', ['-m', 'bash', '-c', words], { env, encoding: 'utf8' });
      expect(full.status).toBe(1);
      expect(full.stderr).toMatch(/The disk of the cache folder (is|was) full/);
      expect(full.stderr).not.toMatch(/Copy the file again|fault of the program/);
      expect(full.stderr).toContain('MIRRORLEAF_CACHE');
      expect(await folderDigests(places.content)).toEqual(await folderDigests(master));
      expect((await build(places)).code).toBe(0);
      expect(await folderDigests(places.tiles)).toEqual(expected);
    },
  );

  test.skipIf(!canMount)('in a cache folder that may only be read says so', async () => {
    const places = await fresh('read-only');
    await mkdir(places.cache, { recursive: true });
    const env = {
      ...process.env,
      MIRRORLEAF_CONTENT: places.content,
      MIRRORLEAF_CACHE: places.cache,
    };
    const words = `mount -t tmpfs -o ro none '${places.cache}' && exec '${process.execPath}' '${script}'`;
    const refused = spawnSync('unshare', ['-m', 'bash', '-c', words], { env, encoding: 'utf8' });
    expect(refused.status).toBe(1);
    expect(refused.stderr).toContain(`The cache folder ${places.cache} cannot be written (EROFS)`);
    expect(refused.stderr).not.toContain('    at ');
  });

  test('whose thread has too little memory fails that plate with a sentence', async () => {
    const places = await fresh('memory');
    const summary = await runPlates({ places, reporter, threadMegabytes: 8 });
    expect(states(summary)).toEqual({ first: 'failed', second: 'failed' });
    expect(summary.plates[0].findings.at(-1)).toMatchObject({
      code: 'out-of-memory',
      message: 'There was not enough memory for the plate.',
    });
    expect(await readFailure(places, 'first')).toBeNull();
    expect((await build(places)).code).toBe(0);
    expect(await folderDigests(places.tiles)).toEqual(expected);
  });
});

// On machines of their own, around a network folder, in network-folder.test.ts; here where that is not permitted.
describe.skipIf(canSplit)('four shares', () => {
  test('give what one machine gives, byte for byte, one of them killed and run again', async () => {
    const places = await fresh('shares');
    const machine = (k: number) => {
      const env = {
        ...process.env,
        MIRRORLEAF_CONTENT: places.content,
        MIRRORLEAF_CACHE: places.cache,
      };
      return run(process.execPath, [script, '--share', `${k}/4`], {
        env,
        ...(k === 1 ? { timeout: 2_000, killSignal: 'SIGKILL' as const } : {}),
      }).then(
        () => 0,
        () => 1,
      );
    };
    await Promise.all([1, 2, 3, 4].map(machine));
    expect(expected).toMatchObject(await folderDigests(places.tiles));
    for (const part of [2, 3, 4, 1]) {
      const { plates } = await runPlates({ places, reporter, share: { part, of: 4 } });
      expect(plates.every(({ state }) => state !== 'failed')).toBe(true);
    }
    expect(await folderDigests(places.tiles)).toEqual(expected);
    const last = await runPlates({ places, reporter });
    expect(states(last)).toEqual({ first: 'unchanged', second: 'unchanged' });
  }, 120_000);
});
