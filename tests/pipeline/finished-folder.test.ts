import { mkdir, mkdtemp, readFile, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
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

  describe('of which parts stay', () => {
    const plate = (root: string, slug: string, text: string) =>
      mkdir(join(root, 'plates', slug), { recursive: true }).then(() =>
        writeFile(join(root, 'plates', slug, 'index.html'), text),
      );
    const text = (slug: string) => readFile(join(place, 'plates', slug, 'index.html'), 'utf8');

    beforeEach(async () => {
      await finishedFolder(place, async (folder) => {
        for (const slug of ['first', 'second', 'third']) await plate(folder, slug, 'old');
        await writeFile(join(folder, 'index.html'), 'old');
        await writeFile(join(folder, 'former.html'), 'old');
        return true;
      });
    });
    const change = async (folder: string) => {
      await plate(folder, 'second', 'new');
      await plate(folder, 'fourth', 'new');
      await writeFile(join(folder, 'index.html'), 'new');
      return ['plates/first'];
    };

    test('takes in what was made, leaves what stays and loses the rest', async () => {
      const { ino } = await stat(join(place, 'plates', 'first', 'index.html'));
      expect(await finishedFolder(place, change)).toBe(true);
      expect(await pages()).toEqual(['first', 'fourth', 'second']);
      expect((await stat(join(place, 'plates', 'first', 'index.html'))).ino).toBe(ino);
      expect(await Promise.all(['first', 'second', 'fourth'].map(text))).toEqual([
        'old',
        'new',
        'new',
      ]);
      expect((await readdir(place)).sort()).toEqual(['index.html', 'plates']);
      expect(await readFile(join(place, 'index.html'), 'utf8')).toBe('new');
      expect(await beside()).toEqual(['dist']);
    });

    test('is completed by the next making where it was cut off', async () => {
      // As a kill leaves it: the list is written, one entry has been moved in and one moved away.
      const made = `${place}.being-made`;
      await change(made);
      const moves = { come: ['plates/fourth', 'plates/second', 'index.html'], go: ['former.html'] };
      await writeFile(`${place}.changes`, JSON.stringify(moves));
      await rename(join(made, 'plates', 'fourth'), join(place, 'plates', 'fourth'));
      await mkdir(join(`${place}.former`, 'plates'), { recursive: true });
      await rename(join(place, 'plates', 'second'), join(`${place}.former`, 'plates', 'second'));
      expect(await finishedFolder(place, () => Promise.resolve(false))).toBe(false);
      expect(await Promise.all(['first', 'second', 'fourth', 'third'].map(text))).toEqual([
        'old',
        'new',
        'new',
        'old',
      ]);
      expect(await readFile(join(place, 'index.html'), 'utf8')).toBe('new');
      expect((await readdir(place)).sort()).toEqual(['index.html', 'plates']);
      expect(await beside()).toEqual(['dist']);
    });

    test('asks before it is touched', async () => {
      let seen: string[] = [];
      await finishedFolder(place, change, async () => {
        seen = await pages();
      });
      expect(seen).toEqual(['first', 'second', 'third']);
    });
  });
});
