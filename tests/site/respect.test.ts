/**
 * A museum of two plates, built as a museum would: one with a capture that is withheld, one that
 * is covered, and captures in which a camera wrote where it was, whose it is and its number.
 * Nothing of this may be anywhere in the finished folder or in a deposit.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { digestFile } from '../../src/pipeline/file-digests.ts';
import { blobs, writeCapture, writeSmallContent } from '../pipeline/small-content.ts';
import { htmlOf } from './pages.ts';

const exiftool = '/usr/bin/exiftool';
const project = join(import.meta.dirname, '..', '..');
/** A name that no page has by itself. */
const secret = 'veiled-raking';
const personal = ['Ottoline Quillfeather', 'SN-7781-QUILL', 'Quillfeather Archive'];

let folder: string;
let content: string;
let dist: string;
let bag: string;
let secretFile: string;

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

describe.skipIf(!existsSync(exiftool))('what is withheld, covered or personal', () => {
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-respect-'));
    content = join(folder, 'content');
    dist = join(folder, 'dist');
    await writeSmallContent(content);
    const first = join(content, 'plates', 'first');
    secretFile = join(first, 'captures', `${secret}.tif`);
    await writeCapture(secretFile, blobs(77));
    await writeCapture(join(first, 'captures', 'left.tif'), blobs(78));
    await change(
      'first/sitting.yaml',
      'captures:\n',
      `captures:\n  - { id: ${secret}, file: ${secret}.tif, setup: raking, reading: mixed }\n`,
    );
    await change(
      'first/sitting.yaml',
      'captures:\n',
      `# ${secret} shows the sitter's face\ncaptures:\n`,
    );
    await change('first/plate.md', 'process:', `withheld: [${secret}]\nprocess:`);
    await change(
      'second/plate.md',
      'process:',
      'advisory: A person after death.\ncommunityLabels:\n' +
        '  - { name: Asked first, text: Ask the family before use., page: https://families.example/ }\n' +
        'wording:\n  - { original: A specimen., source: Register of 1911 }\nprocess:',
    );
    await change('second/plate.md', 'Light blobs on dark', 'Light zugzwang on dark');
    await rm(join(first, 'captures', 'left.tif'));
    for (const name of ['normal.tif', `${secret}.tif`]) {
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
    run('deposit.ts', 'first', '--to', join(folder, 'bags'), '--tiles');
    bag = join(folder, 'bags', 'first');
  }, 400_000);
  afterAll(() => rm(folder, { recursive: true, force: true }));

  /** Path and bytes of every file; packed ones of the index of words unpacked. */
  async function everything(root: string): Promise<[string, Buffer][]> {
    const entries = await readdir(root, { recursive: true, withFileTypes: true });
    return Promise.all(
      entries
        .filter((entry) => entry.isFile())
        .map(async ({ parentPath, name }): Promise<[string, Buffer]> => {
          const path = join(parentPath, name);
          const bytes = await readFile(path);
          const packed = bytes[0] === 0x1f && bytes[1] === 0x8b;
          return [path.slice(root.length), packed ? gunzipSync(bytes) : bytes];
        }),
    );
  }

  test('a withheld capture is in no file of the exhibit, by name, by digest or by bytes', async () => {
    const bytes = await readFile(secretFile);
    const digest = await digestFile(secretFile);
    const files = await everything(dist);
    expect(files.length).toBeGreaterThan(50);
    for (const [name, data] of files) {
      expect(name).not.toContain(secret);
      expect(data.includes(secret), name).toBe(false);
      expect(data.includes(digest), name).toBe(false);
      expect(data.includes(bytes.subarray(20_000, 20_064)), name).toBe(false);
    }
  });

  test('nor in its deposit, where a comment names it too', async () => {
    const bytes = await readFile(secretFile);
    const files = await everything(bag);
    for (const [name, data] of files) {
      expect(name).not.toContain(secret);
      expect(data.includes(secret), name).toBe(false);
      expect(data.includes(bytes.subarray(20_000, 20_064)), name).toBe(false);
    }
    expect(files.map(([name]) => name)).toContain('/data/captures/normal.tif');
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

  test('community labels, words of another time and a way to report stand on the page', () => {
    const html = htmlOf(dist, 'plates/second/');
    expect(html).toContain('Ask the family before use.');
    expect(html).toContain('href="https://families.example/"');
    expect(html).toMatch(/<blockquote[^>]*>A specimen\.<\/blockquote>/);
    expect(html).toContain('Kept as they were written');
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
