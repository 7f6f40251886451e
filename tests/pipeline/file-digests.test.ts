import { mkdtemp, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { digestFile, openFileDigests } from '../../src/pipeline/file-digests.ts';
import { exists, type Store } from '../../src/pipeline/store.ts';

let store: Store;
let file: string;

beforeEach(async () => {
  const root = await mkdtemp(join(tmpdir(), 'mirrorleaf-digests-'));
  store = { root, scratch: join(root, 'scratch') };
  file = join(root, 'capture.tif');
  await writeFile(file, 'abc');
});
afterEach(() => rm(store.root, { recursive: true, force: true }));

describe('digestFile', () => {
  test('gives the SHA-256 of "abc" that FIPS 180-4 prints', async () => {
    // NIST, "Examples with Intermediate Values", SHA-256, one-block message (from memory).
    expect(await digestFile(file)).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });
});

describe('openFileDigests', () => {
  test('does not remember a file that was written a moment ago', async () => {
    const digests = await openFileDigests(store);
    await digests.of(file);
    await digests.save();
    expect(await exists(join(store.root, 'file-digests.json'))).toBe(false);
  });

  test('sees a change of bytes that keeps size and mtime', async () => {
    const before = await (await openFileDigests(store)).of(file);
    const { atime, mtime } = await stat(file);
    await writeFile(file, 'abd');
    await utimes(file, atime, mtime);
    expect(await (await openFileDigests(store)).of(file)).not.toBe(before);
  });

  test('rejects for a file that is not there', async () => {
    const digests = await openFileDigests(store);
    await expect(digests.of(join(store.root, 'gone.tif'))).rejects.toThrow('ENOENT');
  });
});
