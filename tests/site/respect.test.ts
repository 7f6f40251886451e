/**
 * A museum of three plates, built as a museum would: one with a capture that is withheld, one that
 * is covered, one whose base and whose sets are withheld, and captures in which a camera wrote
 * where it was, whose it is and its number. Nothing of this may be anywhere in the finished
 * folder or in a deposit.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cp, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { digestFile } from '../../src/pipeline/file-digests.ts';
import { folderFiles } from '../pipeline/folder-files.ts';
import { blobs, writeCapture, writeSmallContent } from '../pipeline/small-content.ts';
import { htmlOf } from './pages.ts';

const exiftool = '/usr/bin/exiftool';
const project = join(import.meta.dirname, '..', '..');
/** The beginning of all withheld names; no page has it by itself. */
const secret = 'veiled-';
const withheldCaptures = ['base', 'bracket', 'lights', 'mosaic'].map((one) => secret + one);
const personal = ['Ottoline Quillfeather', 'SN-7781-QUILL', 'Quillfeather Archive'];

let folder: string;
let content: string;
let dist: string;
let bags: string;
let secretFiles: string[];

function run(script: string, ...args: string[]): void {
  const env = {
    ...process.env,
    MIRRORLEAF_BASE: '/',
    MIRRORLEAF_CACHE: join(folder, 'cache'),
    MIRRORLEAF_OUT: dist,
  };
  const path = join(project, 'scripts', script);
  const child = spawnSync(process.execPath, [path, ...args, '--content', content], {
    env,
    encoding: 'utf8',
  });
  if (child.status !== 0) throw new Error(`${script}: ${child.stdout}${child.stderr}`);
}

async function change(file: string, from: string, to: string): Promise<void> {
  const path = join(content, 'plates', file);
  const text = await readFile(path, 'utf8');
  expect(text).toContain(from);
  await writeFile(path, text.replace(from, to));
}

/** A plate of which one capture is open: its base, a bracket, lights and a mosaic are withheld. */
async function writeVeiled(plate: string): Promise<string[]> {
  await cp(join(content, 'plates', 'second'), plate, { recursive: true });
  const captures = join(plate, 'captures');
  const sets = [
    ['base', 1, () => ''],
    ['bracket', 3, (k: number) => `, seconds: ${2 ** k}`],
    ['lights', 5, (k: number) => `, bearing: ${72 * k}, height: 40`],
    ['mosaic', 2, (k: number) => `, row: 0, column: ${k}`],
  ] as const;
  const files: string[] = [];
  const entries: string[] = [];
  for (const [kind, count, more] of sets) {
    const names = Array.from({ length: count }, (_, k) => `${secret}${kind}-${k}.tif`);
    for (const [k, name] of names.entries()) {
      files.push(join(captures, name));
      // The same picture, a little darker in each frame, as sets of one plate are.
      await writeCapture(
        files[files.length - 1],
        blobs(2).map((code) => code - files.length),
      );
      if (k === 0) {
        const given =
          count === 1
            ? `file: ${name}`
            : `kind: ${kind}, frames: [${names.map((file, n) => `{ file: ${file}${more(n)} }`).join(', ')}]`;
        entries.push(`  - { id: ${secret}${kind}, setup: normal, reading: positive, ${given} }`);
      }
    }
  }
  await rename(join(captures, 'normal.tif'), join(captures, 'open.tif'));
  await writeFile(
    join(plate, 'sitting.yaml'),
    `date: 2026-05-05\nbase: ${secret}base\nscale: { pixelsPerMillimetre: 12 }\ncaptures:\n` +
      `${entries.join('\n')}\n  - { id: open, file: open.tif, setup: normal, reading: positive }\n`,
  );
  const words = (await readFile(join(plate, 'plate.md'), 'utf8')).replace('second', 'third');
  const list = `withheld: [${withheldCaptures.join(', ')}]\nprocess:`;
  await writeFile(join(plate, 'plate.md'), words.replace('process:', list));
  return files;
}

describe.skipIf(!existsSync(exiftool))('what is withheld, covered or personal', () => {
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-respect-'));
    content = join(folder, 'content');
    dist = join(folder, 'dist');
    await writeSmallContent(content);
    const collection = join(content, 'collection.md');
    const about = await readFile(collection, 'utf8');
    const contact = 'contact: plates@museum.example\nlanguages:';
    await writeFile(collection, about.replace('languages:', contact));
    const first = join(content, 'plates', 'first');
    const raking = join(first, 'captures', `${secret}raking.tif`);
    await writeCapture(raking, blobs(77));
    secretFiles = [raking, ...(await writeVeiled(join(content, 'plates', 'third')))];
    await change(
      'first/sitting.yaml',
      'captures:\n',
      `captures:\n  - { id: ${secret}raking, file: ${secret}raking.tif, setup: raking, reading: mixed }\n`,
    );
    await change(
      'first/sitting.yaml',
      'captures:\n',
      `# ${secret}raking shows the sitter's face\ncaptures:\n`,
    );
    await change('first/plate.md', 'process:', `withheld: [${secret}raking]\nprocess:`);
    await change(
      'second/plate.md',
      'process:',
      'advisory: A person after death.\ndescribedBy: { name: Plates curator, date: 2024-03 }\n' +
        'communityLabels:\n' +
        '  - { name: Asked first, text: Ask the family before use., page: https://families.example/ }\n' +
        'wording:\n  - { original: A specimen., source: Register of 1911 }\nprocess:',
    );
    await change('second/plate.md', 'Light blobs on dark', 'Light zugzwang on dark');
    for (const name of ['normal.tif', `${secret}raking.tif`]) {
      execFileSync(exiftool, [
        '-overwrite_original',
        '-GPSLatitude=54.123456',
        '-GPSLatitudeRef=N',
        '-GPSLongitude=7.654321',
        '-GPSLongitudeRef=W',
        `-OwnerName=${personal[0]}`,
        `-SerialNumber=${personal[1]}`,
        `-XMP:SerialNumber=${personal[1]}`,
        `-Artist=${personal[0]}`,
        `-XMP-xmpRights:Owner=${personal[2]}`,
        join(first, 'captures', name),
      ]);
    }
    run('build.ts');
    bags = join(folder, 'bags');
    run('deposit.ts', 'first', 'third', '--to', bags, '--tiles');
  }, 400_000);
  afterAll(() => rm(folder, { recursive: true, force: true }));

  /** Path and bytes of every file; packed ones of the index of words unpacked. */
  async function everything(root: string): Promise<[string, Buffer][]> {
    const packed = (bytes: Buffer) => bytes[0] === 0x1f && bytes[1] === 0x8b;
    return (await folderFiles(root)).map(([path, bytes]) => [
      path,
      packed(bytes) ? gunzipSync(bytes) : bytes,
    ]);
  }

  /** Bytes in the middle of each withheld file, which no other file has, and its digest. */
  const marks = () =>
    Promise.all(
      secretFiles.map(async (path) => ({
        bytes: (await readFile(path)).subarray(20_000, 20_064),
        digest: await digestFile(path),
      })),
    );

  test('withheld captures are in no file of the exhibit, by name, by digest or by bytes', async () => {
    const files = await everything(dist);
    const hidden = await marks();
    expect(hidden.length).toBe(12);
    expect(files.length).toBeGreaterThan(50);
    for (const [name, data] of files) {
      expect(name).not.toContain(secret);
      expect(data.includes(secret), name).toBe(false);
      for (const { bytes, digest } of hidden) {
        expect(data.includes(digest), name).toBe(false);
        expect(data.includes(bytes), name).toBe(false);
      }
    }
  });

  test('nor in its deposit, where a comment names one too', async () => {
    const files = await everything(bags);
    const hidden = await marks();
    for (const [name, data] of files) {
      expect(name).not.toContain(secret);
      expect(data.includes(secret), name).toBe(false);
      for (const { bytes } of hidden) expect(data.includes(bytes), name).toBe(false);
    }
    const names = files.map(([name]) => name);
    expect(names).toContain('/first/data/captures/normal.tif');
    expect(names).toContain('/third/data/captures/open.tif');
  });

  test('of a plate whose base is withheld, what is open lies in its frame, and the page says so', async () => {
    const manifest = JSON.parse(
      await readFile(join(dist, 'plates/third/manifest.json'), 'utf8'),
    ) as { items: { items: { items: { body: { label: object } }[] }[] }[] };
    expect(manifest.items.length).toBe(1);
    expect(JSON.stringify(manifest)).toContain('/views/open/');
    expect(htmlOf(dist, 'plates/third/captures/')).toMatch(
      /kept by the museum and not published\.\s+One of them defines the frame/,
    );
    expect(await readdir(join(dist, 'plates/third/views'))).toEqual(['open']);
  });

  test('a covered plate is in no preview, feed, list of words or picture of another page', async () => {
    const files = await everything(dist);
    const own = /^\/plates\/second\//;
    for (const [name, data] of files) {
      if (own.test(name)) continue;
      expect(data.includes('plates/second/views/'), name).toBe(false);
      expect(data.includes('plates/second/preview'), name).toBe(false);
      // Tables and manifests are records for other programs, and say the advisory.
      if (/^\/(plates\.(csv|json)|collection\.json)$/.test(name)) continue;
      expect(data.includes('zugzwang'), name).toBe(false);
    }
    expect(files.some(([name]) => name === '/plates/second/preview.jpg')).toBe(false);
    expect(htmlOf(dist, 'plates/second/')).toContain('<details class="cover"');
  });

  test('place, owner and numbers that a camera wrote are nowhere in the exhibit', async () => {
    for (const [name, data] of await everything(dist)) {
      for (const words of personal) expect(data.includes(words), name).toBe(false);
    }
    // Ends with 2 where no file answers to the condition, which is what is hoped for.
    const condition = '$GPSLatitude or $SerialNumber or $OwnerName or $Artist';
    const looked = spawnSync(
      exiftool,
      ['-r', '-n', '-q', '-if', condition, '-p', '$FilePath', dist],
      {
        encoding: 'utf8',
      },
    );
    expect(looked.status).toBe(2);
    expect(looked.stdout.trim()).toBe('');
  });

  test('rights and the text alternative are in the whole pictures', () => {
    const said = JSON.parse(
      execFileSync(
        exiftool,
        ['-json', '-r', '-XMP:all', '-ext', 'jpg', join(dist, 'plates/first/views/normal/full')],
        {
          encoding: 'utf8',
        },
      ),
    ) as Record<string, string>[];
    expect(said.length).toBeGreaterThan(0);
    for (const picture of said) {
      expect(picture['WebStatement']).toContain('rightsstatements.org/vocab/NKC');
      expect(picture['AltTextAccessibility']).toBe('Light blobs on dark.');
    }
  });

  test('community labels, words of another time, who described it and a way to report stand on the page', () => {
    const html = htmlOf(dist, 'plates/second/');
    expect(html).toContain('Ask the family before use.');
    expect(html).toContain('href="https://families.example/"');
    expect(html).toMatch(/<blockquote[^>]*>A specimen\.<\/blockquote>/);
    expect(html).toContain('Kept as they were written');
    expect(html).toContain('Plates curator, March 2024');
    expect(html).toMatch(/href="mailto:plates@museum\.example\?subject=[^"]*The%20second%20plate/);
  });

  test('without a description of both readings a plate is not published', async () => {
    const copy = join(folder, 'undescribed');
    await cp(content, copy, { recursive: true });
    const path = join(copy, 'plates', 'second', 'plate.md');
    const text = await readFile(path, 'utf8');
    await writeFile(path, text.replace(/\n {2}negative: .*/, ''));
    const { readContent } = await import('../../src/pipeline/content.ts');
    const plate = (await readContent(copy)).plates.find(({ slug }) => slug === 'second');
    expect(plate?.record).toBeNull();
    expect(plate?.findings.map(({ message }) => message).join(' ')).toContain(
      '"negative" in "description" is missing',
    );
  });
});
