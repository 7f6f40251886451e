import { cp, mkdtemp, readFile, rm, symlink, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readContent } from '../../src/pipeline/content.ts';
import { filePrint, folderPrint } from '../../src/pipeline/file-print.ts';
import { openReadings, readAhead } from '../../src/pipeline/kept-readings.ts';
import { findPlaces, type Places } from '../../src/pipeline/places.ts';
import { writeSmallContent } from './small-content.ts';

let folder: string;
let places: Places;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-readings-'));
  places = findPlaces({ content: join(folder, 'content'), cache: join(folder, 'cache') }, {});
  await writeSmallContent(places.content);
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const words = () => join(places.content, 'plates/first/plate.md');
/** Times cannot be set back: a change of them is a change. So a print needs two quiet seconds. */
const settle = () => new Promise((resolve) => setTimeout(resolve, 2_050));

async function read() {
  const readings = await openReadings(places);
  const content = await readContent(places.content, readings);
  await readings.save();
  return content;
}

describe('kept readings', () => {
  test('give what reading the files again gives, and notice every change', async () => {
    await settle();
    expect(await read()).toEqual(await readContent(places.content));
    // From what was kept, and the same.
    expect(await read()).toEqual(await readContent(places.content));

    const before = await readFile(words(), 'utf8');
    await writeFile(words(), before.replace('The first plate', 'A quay'));
    expect(await read()).toEqual(await readContent(places.content));
    await settle();
    expect(await read()).toEqual(await readContent(places.content));

    await rm(join(places.content, 'plates/second'), { recursive: true });
    await writeFile(join(places.content, 'plates/first/captures/new.tif'), 'not a picture');
    const last = await read();
    expect(last).toEqual(await readContent(places.content));
    expect(last.plates.map(({ slug }) => slug)).toEqual(['first']);
  }, 20_000);

  test('read ahead of time are those of now: what another process wrote since is seen', async () => {
    const other = await openReadings(places);
    const keep = (name: string, print: string) =>
      other.of('text', name, print, () => Promise.resolve(print));
    await keep('one', 'before');
    await keep('two', 'before');
    await other.save();
    await readAhead(places);
    await keep('one', 'after');
    await other.save();
    const now = await openReadings(places);
    expect(now.printOf('text', 'one')).toBe('after');
    expect(now.printOf('text', 'two')).toBe('before');
  });

  test('are not asked for a file that may yet change within the same moment', async () => {
    let times = 0;
    const count = async (print: string | null) => {
      const readings = await openReadings(places);
      await readings.of('text', 'one', print, () => Promise.resolve((times += 1)));
      await readings.save();
    };
    await count(null);
    await count(null);
    expect(times).toBe(2);
    await count('same');
    await count('same');
    expect(times).toBe(3);
    await count('other');
    expect(times).toBe(4);
  });
});

describe('a print of files', () => {
  test('is none for a moment after a change, nor for a link', async () => {
    expect(filePrint(words())).toBeNull();
    await settle();
    const first = filePrint(words());
    expect(first).not.toBeNull();
    const plate = join(places.content, 'plates/first');
    const whole = folderPrint(plate);
    expect(whole).not.toBeNull();
    // A file that is copied over with the times of the former one has another inode.
    await cp(words(), `${words()}.copy`, { preserveTimestamps: true });
    await utimes(words(), new Date(2020, 0), new Date(2020, 0));
    expect(filePrint(words())).not.toBe(first);
    expect(folderPrint(plate)).not.toBe(whole);
    await rm(`${words()}.copy`);
    await settle();
    expect(folderPrint(plate)).not.toBeNull();
    await symlink(words(), join(plate, 'link.md'));
    expect(filePrint(join(plate, 'link.md'))).toBeNull();
    await settle();
    expect(folderPrint(plate)).toBeNull();
  }, 20_000);
});
