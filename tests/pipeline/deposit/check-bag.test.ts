import { spawnSync } from 'node:child_process';
import { cp, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { checkBag } from '../../../src/pipeline/deposit/check-bag.ts';
import { hasShared, sharedPath } from '../../shared.ts';

const made: string[] = [];
afterAll(() => Promise.all(made.map((folder) => rm(folder, { recursive: true }))));

describe.skipIf(!hasShared('data', 'bagit'))('every bag of the conformance suite', () => {
  /** Folder of the suite to what a checker must say: the suite's own README. */
  const truths = { valid: true, warning: true, invalid: false, 'linux-only': false } as const;

  async function bags(version: string) {
    const found: { name: string; kind: keyof typeof truths; folder: string }[] = [];
    for (const kind of Object.keys(truths) as (keyof typeof truths)[]) {
      const folder = sharedPath('data', 'bagit', version, kind);
      for (const name of await readdir(folder).catch(() => [])) {
        found.push({ name, kind, folder: join(folder, name) });
      }
    }
    return found;
  }

  test.each([
    ['v0.93', 2],
    ['v0.94', 2],
    ['v0.95', 2],
    ['v0.96', 8],
    ['v0.97', 35],
    ['v1.0', 5],
  ])('%s: each gets its verdict', async (version, count) => {
    const all = await bags(version);
    expect(all.length).toBe(count);
    for (const { name, kind, folder } of all) {
      const verdict = await checkBag(folder);
      expect(verdict.valid, `${version} ${kind} ${name}: ${verdict.errors.join(' ')}`).toBe(
        truths[kind],
      );
      if (kind === 'warning') expect(verdict.warnings, name).not.toEqual([]);
      if (!truths[kind]) expect(verdict.errors.length, name).toBeGreaterThan(0);
    }
  });

  test('paths that lead out of the bag on another system are refused on this one too', async () => {
    const folder = sharedPath('data', 'bagit', 'v0.97', 'windows-only');
    for (const name of await readdir(folder)) {
      const { errors } = await checkBag(join(folder, name));
      expect(errors.join(' '), name).toContain('leads out of the bag');
    }
  });

  test('a file added to a good bag is named', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'bag-'));
    made.push(folder);
    await cp(sharedPath('data', 'bagit', 'v1.0', 'valid', 'basicBag'), folder, {
      recursive: true,
      mode: 0,
    });
    expect((await checkBag(folder)).errors).toEqual([]);
    await writeFile(join(folder, 'data', 'more.txt'), 'more');
    expect((await checkBag(folder)).errors.join(' ')).toContain('"data/more.txt" is in the bag');
  });
});

test('a folder that is no bag is said to be none', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'bag-'));
  made.push(folder);
  const verdict = await checkBag(folder);
  expect(verdict.errors).toEqual(['There is no bagit.txt, so this is no bag.']);
});

test('the command ends with 1 for a folder that is no bag, and with 2 where nothing is asked', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'bag-'));
  made.push(folder);
  const run = (...args: string[]) =>
    spawnSync(process.execPath, ['scripts/deposit.ts', ...args], { encoding: 'utf8' });
  const checked = run('--check', folder);
  expect(checked.status).toBe(1);
  expect(checked.stdout).toContain('There is no bagit.txt');
  const asked = run();
  expect(asked.status).toBe(2);
  expect(asked.stderr).toContain('--to FOLDER');
});
