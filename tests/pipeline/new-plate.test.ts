import { createHash } from 'node:crypto';
import { execFile } from 'node:child_process';
import { chmod, mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { checkTexts } from '../../src/pipeline/check-texts.ts';
import { readContent } from '../../src/pipeline/content.ts';
import { newPlate } from '../../src/pipeline/new-plate.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import { hasShared, sharedPath } from '../shared.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-new-'));
  await mkdir(join(folder, 'photographs'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

const from = () => join(folder, 'photographs');
const content = () => join(folder, 'content');

/** A small grey picture with what a camera would have written. */
async function photograph(name: string, seconds: number, taken = '2024-03-05T10:15:00') {
  await writePicture(join(from(), name), {
    width: 40,
    height: 30,
    channels: 1,
    depth: 8,
    data: new Uint8Array(1200).fill(90),
    profile: 'srgb',
    format: 'tiff',
    exif: { make: 'Tarnwick Optical', model: 'TW-4', seconds, aperture: 8, iso: 100, taken },
  });
}

/** Name, size, time and digest of everything in a folder. */
async function fingerprint(path: string) {
  const names = (await readdir(path, { recursive: true })).sort();
  return Promise.all(
    names.map(async (name) => {
      const { size, mtimeMs, mode } = await stat(join(path, name));
      const bytes = await readFile(join(path, name)).catch(() => Buffer.alloc(0));
      return [name, size, mtimeMs, mode, createHash('sha256').update(bytes).digest('hex')];
    }),
  );
}

describe('from photographs that are named after their lamps', () => {
  beforeEach(async () => {
    await photograph('normal.tif', 0.25);
    await photograph('axial.tif', 0.125);
    await photograph('raking-left.tif', 0.5);
    await photograph('normal-blank.tif', 0.25);
    for (const [k, time] of [0.01, 0.04, 0.16].entries()) {
      await photograph(`bracket-${k + 1}.tif`, time);
    }
    await writeFile(join(from(), 'notes.txt'), 'Lamp moved once.\n');
  });

  test('comes a plate whose records are read without an error', async () => {
    const before = await fingerprint(from());
    const made = await newPlate({ slug: 'harbour', from: from(), content: content() });
    expect(made.findings.filter(({ level }) => level === 'error')).toEqual([]);
    expect(made.left.map(({ name }) => name)).toEqual(['notes.txt']);
    expect(await fingerprint(from())).toEqual(before);

    const [plate] = (await readContent(content())).plates;
    const [{ record }] = plate.sittings;
    expect(plate.record?.rights).toBe('http://rightsstatements.org/vocab/CNE/1.0/');
    expect(record).toMatchObject({
      date: '2024-03-05',
      base: 'normal',
      camera: { make: 'Tarnwick Optical', model: 'TW-4' },
    });
    expect(
      record.captures.map(({ id, kind, setup, reading }) => [id, kind, setup, reading]),
    ).toEqual([
      ['axial', 'single', 'axial', 'negative'],
      ['bracket', 'bracket', 'other', 'none'],
      ['normal', 'single', 'normal', 'positive'],
      ['raking-left', 'single', 'raking', 'positive'],
    ]);
    expect(record.captures[1].frames?.map(({ file, seconds }) => [file, seconds])).toEqual([
      ['bracket-1.tif', 0.01],
      ['bracket-2.tif', 0.04],
      ['bracket-3.tif', 0.16],
    ]);
    expect(record.captures[2]).toMatchObject({
      blank: 'normal-blank.tif',
      exposure: { seconds: 0.25, aperture: 8, iso: 100 },
    });
  });

  test('the copies are the same bytes, and the plate appears whole', async () => {
    await newPlate({ slug: 'harbour', from: from(), content: content() });
    for (const name of ['normal.tif', 'bracket-3.tif']) {
      const copy = await readFile(join(content(), 'plates', 'harbour', 'captures', name));
      expect(copy.equals(await readFile(join(from(), name)))).toBe(true);
    }
    expect(await readdir(join(content(), 'plates'))).toEqual(['harbour']);
  });

  test('what a person must write is marked in the files and listed', async () => {
    const made = await newPlate({ slug: 'harbour', from: from(), content: content() });
    const marked = made.findings.filter(({ code }) => code === 'to-write');
    expect(marked.map(({ plate, field }) => `${plate} ${field}`)).toEqual([
      ' title',
      ' institution.name',
      'harbour operator',
      'harbour captures.1.note',
      'harbour title',
      'harbour process.text',
      'harbour description.positive',
      'harbour description.negative',
    ]);
    const read = await readContent(content());
    expect((await checkTexts(read)).map(({ code, file }) => `${code} ${file}`)).toEqual([
      'to-write collection.md',
      'to-write plate.md',
    ]);
  });

  test('a plate that is there already is not touched', async () => {
    await newPlate({ slug: 'harbour', from: from(), content: content() });
    const before = await fingerprint(content());
    await expect(newPlate({ slug: 'harbour', from: from(), content: content() })).rejects.toThrow(
      /^The plate "harbour" is there already \(.*\)\. Nothing was changed; choose another name\.$/,
    );
    expect(await fingerprint(content())).toEqual(before);
  });

  test('a collection that is there already keeps its words', async () => {
    await mkdir(content());
    await writeFile(join(content(), 'collection.md'), '---\ntitle: Ours\n---\n');
    const made = await newPlate({ slug: 'harbour', from: from(), content: content() });
    expect(made.madeCollection).toBe(false);
    expect(await readFile(join(content(), 'collection.md'), 'utf8')).toBe(
      '---\ntitle: Ours\n---\n',
    );
  });

  test('a second plate goes beside the first', async () => {
    await newPlate({ slug: 'harbour', from: from(), content: content() });
    await newPlate({ slug: 'alley', from: from(), content: content() });
    const read = await readContent(content());
    expect(read.plates.map(({ slug }) => slug)).toEqual(['alley', 'harbour']);
  });

  test('files that may only be read are copied all the same', async () => {
    await chmod(join(from(), 'normal.tif'), 0o444);
    const made = await newPlate({ slug: 'harbour', from: from(), content: content() });
    expect(made.captures.some(({ id }) => id === 'normal')).toBe(true);
  });

  test('a copy that fails leaves nothing behind', async () => {
    const stop = new Error('the disk is gone');
    const progress = (done: number) => {
      if (done === 2) throw stop;
    };
    await expect(
      newPlate({ slug: 'harbour', from: from(), content: content(), progress }),
    ).rejects.toBe(stop);
    expect(await readdir(join(content(), 'plates'))).toEqual([]);
  });
});

describe('refused with a sentence', () => {
  test('a name that cannot be an address', async () => {
    await expect(newPlate({ slug: '../x', from: from(), content: content() })).rejects.toThrow(
      '"../x" cannot be the name of a plate. Use lower-case letters, digits and single hyphens, such as "harbour" or "fq-1911-14".',
    );
  });

  test('a folder that is not there', async () => {
    await expect(
      newPlate({ slug: 'harbour', from: join(folder, 'nowhere'), content: content() }),
    ).rejects.toThrow(/^There is no folder .*nowhere\.$/);
  });

  test('a folder without photographs, with what was found instead', async () => {
    await writeFile(join(from(), 'letter.doc'), 'Dear colleague');
    await expect(newPlate({ slug: 'harbour', from: from(), content: content() })).rejects.toThrow(
      /^There is no photograph in .*\. Expected TIFF, JPEG, PNG or WebP files\.\n {2}letter\.doc: /,
    );
  });
});

test('the command has help, and ends with 2 when it is used wrongly', async () => {
  const run = promisify(execFile);
  const script = join(import.meta.dirname, '..', '..', 'scripts', 'new.ts');
  const { stdout } = await run(process.execPath, [script, '--help']);
  expect(stdout).toContain('Example: npm run new -- harbour --from ../photographs/harbour');
  const wrong = run(process.execPath, [script, 'harbour']);
  await expect(wrong).rejects.toMatchObject({
    code: 2,
    stderr: expect.stringContaining(
      'Name one plate, and the folder of its photographs with --from.',
    ) as string,
  });
  await photograph('normal.tif', 0.25);
  const done = await run(process.execPath, [
    script,
    'harbour',
    '--from',
    from(),
    '--content',
    content(),
  ]);
  expect(done.stdout).toContain('normal: single, set-up normal, reading positive');
});

test.skipIf(!hasShared('data', 'plates'))(
  'two real photographs of any names become a plate with both of them',
  async () => {
    const source = sharedPath('data', 'plates');
    const made = await newPlate({ slug: 'portrait', from: source, content: content() });
    expect(made.findings.filter(({ level }) => level === 'error')).toEqual([]);
    expect(made.captures.map(({ id }) => id)).toEqual([
      'portrait-daguerreotype-1856',
      'portrait-glass-plate-49mp',
    ]);
    expect(made.left.map(({ name }) => name)).toEqual(['SOURCE.txt']);
  },
);
