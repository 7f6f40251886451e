import { mkdir, mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { finishedFolder } from '../../src/pipeline/finished-folder.ts';

let outer: string;
let place: string;
beforeEach(async () => {
  outer = await mkdtemp(join(tmpdir(), 'mirrorleaf-finished-'));
  place = join(outer, 'deep', 'dist');
});
afterEach(async () => {
  await rm(outer, { recursive: true, force: true });
});

const fill = (text: string) => async (folder: string) => {
  await mkdir(join(folder, 'plates'), { recursive: true });
  await writeFile(join(folder, 'plates', `${text}.html`), text);
  return true;
};
const pages = () => readdir(join(place, 'plates'));
const beside = () => readdir(join(outer, 'deep'));

describe('a finished folder', () => {
  test('is put in its place, first and again, with nothing of before', async () => {
    expect(await finishedFolder(place, fill('first'))).toBe(true);
    expect(await pages()).toEqual(['first.html']);
    expect(await finishedFolder(place, fill('second'))).toBe(true);
    expect(await pages()).toEqual(['second.html']);
    expect(await beside()).toEqual(['dist']);
  });

  test('is not touched while another is made, nor where that fails', async () => {
    await finishedFolder(place, fill('first'));
    let during: string[] = [];
    const failed = await finishedFolder(place, async (folder) => {
      await fill('second')(folder);
      during = await pages();
      return false;
    });
    expect([failed, during, await pages(), await beside()]).toEqual([
      false,
      ['first.html'],
      ['first.html'],
      ['dist'],
    ]);
  });

  test('takes the place of what a killed making left', async () => {
    await fill('half')(`${place}.being-made`);
    await fill('old')(`${place}.former`);
    await finishedFolder(place, fill('whole'));
    expect(await pages()).toEqual(['whole.html']);
    expect(await beside()).toEqual(['dist']);
  });

  test('stays as it was where the making throws', async () => {
    await finishedFolder(place, fill('first'));
    await expect(
      finishedFolder(place, () => Promise.reject(new Error('The disk is full.'))),
    ).rejects.toThrow('The disk is full.');
    expect(await readFile(join(place, 'plates', 'first.html'), 'utf8')).toBe('first');
  });
});
