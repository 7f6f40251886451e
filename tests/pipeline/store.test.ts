import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  clearScratch,
  keepFolder,
  keepJson,
  writeWhole,
  type Store,
} from '../../src/pipeline/store.ts';

let store: Store;

beforeEach(async () => {
  const root = await mkdtemp(join(tmpdir(), 'mirrorleaf-store-'));
  store = { root, scratch: join(root, 'scratch') };
});
afterEach(() => rm(store.root, { recursive: true, force: true }));

describe('keepFolder', () => {
  test('makes a result once and finds it the second time', async () => {
    const tally = { made: 0, found: 0 };
    const make = (folder: string) => writeFile(join(folder, 'a.txt'), 'first');
    const place = await keepFolder(store, 'tiles', 'k', make, tally);
    const again = await keepFolder(
      store,
      'tiles',
      'k',
      () => Promise.reject(new Error('made twice')),
      tally,
    );
    expect(again).toBe(place);
    expect(await readFile(join(place, 'a.txt'), 'utf8')).toBe('first');
    expect(tally).toEqual({ made: 1, found: 1 });
  });

  test('leaves nothing behind when making fails half-way', async () => {
    const make = async (folder: string) => {
      await writeFile(join(folder, 'half.txt'), 'half');
      throw new Error('the lamp went out');
    };
    await expect(keepFolder(store, 'tiles', 'k', make)).rejects.toThrow('the lamp went out');
    expect(await readdir(store.scratch)).toEqual([]);
    expect(await readdir(store.root)).toEqual(['scratch']);
  });

  test('keeps one whole result when two builds make the same one at once', async () => {
    const make = (text: string) => (folder: string) => writeFile(join(folder, 'a.txt'), text);
    const places = await Promise.all([
      keepFolder(store, 'tiles', 'k', make('same')),
      keepFolder(store, 'tiles', 'k', make('same')),
    ]);
    expect(places[0]).toBe(places[1]);
    expect(await readdir(places[0])).toEqual(['a.txt']);
    expect(await readdir(store.scratch)).toEqual([]);
  });
});

describe('keepJson', () => {
  test('makes a kept value again when it can no longer be read', async () => {
    const parse = (value: unknown) => {
      if (typeof value !== 'number') throw new Error('not a number');
      return value;
    };
    await keepJson(store, 'read', 'k', parse, () => Promise.resolve(1));
    expect(await keepJson(store, 'read', 'k', parse, () => Promise.resolve(2))).toBe(1);
    await writeFile(join(store.root, 'read', 'k.json'), '{"half');
    expect(await keepJson(store, 'read', 'k', parse, () => Promise.resolve(3))).toBe(3);
  });
});

test('writeWhole replaces a file and leaves no draft', async () => {
  const place = join(store.root, 'x', 'record.json');
  await writeWhole(store, place, 'one');
  await writeWhole(store, place, 'two');
  expect(await readFile(place, 'utf8')).toBe('two');
  expect(await readdir(store.scratch)).toEqual([]);
});

test('clearScratch removes what a killed build left', async () => {
  await writeWhole(store, join(store.root, 'kept.json'), 'kept');
  await writeFile(join(store.scratch, 'left.part'), 'half');
  await clearScratch(store);
  expect(await readdir(store.scratch)).toEqual([]);
  expect(await readFile(join(store.root, 'kept.json'), 'utf8')).toBe('kept');
});
