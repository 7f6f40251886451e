import { spawnSync } from 'node:child_process';
import { appendFile, mkdir, mkdtemp, readFile, rm, unlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readContent } from '../../../src/pipeline/content.ts';
import { checkBag } from '../../../src/pipeline/deposit/check-bag.ts';
import { depositPlate } from '../../../src/pipeline/deposit/deposit-plate.ts';
import { inspectPlates } from '../../../src/pipeline/inspect/inspect-plates.ts';
import { findPlaces, type Places } from '../../../src/pipeline/places.ts';
import { createReporter } from '../../../src/pipeline/reporter.ts';
import { runPlates } from '../../../src/pipeline/run.ts';
import { folderFiles } from '../folder-files.ts';
import { writeSmallContent } from '../small-content.ts';

const reporter = createReporter(process.stderr, { quiet: true });
const python = '/usr/bin/python3';
let folder: string;
let places: Places;
let bag: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-deposit-'));
  const content = join(folder, 'content');
  await writeSmallContent(content);
  const plate = join(content, 'plates', 'first');
  const words = await readFile(join(plate, 'plate.md'), 'utf8');
  await writeFile(
    join(plate, 'plate.md'),
    words.replace(
      '\nprocess:',
      '\nwithheld: [axial]\nspots:\n  - { id: glare, region: "0,0,9,9", title: A glare, view: axial }\n' +
        '  - { id: grain, region: "0,0,9,9", title: The grain }\nprocess:',
    ),
  );
  await writeFile(
    join(plate, 'plate.fr.md'),
    '---\ntitle: La plaque\nspots:\n  - { id: glare, title: Un éclat }\n' +
      '  - { id: grain, title: Le grain }\n---\n\nComme axial le montre.\n',
  );
  const collection = join(content, 'collection.md');
  const about = await readFile(collection, 'utf8');
  await writeFile(collection, about.replace('[en]', '[en, fr]'));
  await writeFile(join(content, 'collection.fr.md'), '---\ntitle: Deux plaques\n---\n');
  places = findPlaces({ content, cache: join(folder, 'cache'), out: join(folder, 'dist') }, {});
  await runPlates({ places, reporter });
  // What the pages look like does not matter here; tests/site has a whole exhibit.
  const page = join(places.out, 'plates', 'first');
  await mkdir(join(page, 'views', 'normal', '0,0,512,512', '512,512', '0'), { recursive: true });
  await writeFile(join(page, 'index.html'), '<title>The first plate</title>');
  await writeFile(join(page, 'views/normal/0,0,512,512/512,512/0/default.jpg'), 'tile');
  await writeFile(join(page, 'views/normal/50%.txt'), 'a name to be escaped');
  const french = join(places.out, 'fr', 'plates', 'first');
  await mkdir(french, { recursive: true });
  await writeFile(join(french, 'index.html'), '<title>La plaque</title>');
}, 60_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

async function deposit(name: string, withheld = false): Promise<string> {
  const content = await readContent(places.content);
  const plate = content.plates.find(({ slug }) => slug === 'first')!;
  const to = join(folder, name);
  await mkdir(to, { recursive: true });
  const about = { places, content, to, date: '2026-03-02', withheld, tiles: false };
  const made = await depositPlate(plate, about);
  if (!made.ok) throw new Error(made.reason);
  return made.folder;
}

const independent = (path: string) =>
  spawnSync(python, [join('scripts', 'reference', 'bag.py'), path], { encoding: 'utf8' });

describe('a deposit', () => {
  beforeAll(async () => {
    bag = await deposit('archive');
  });

  test('is a valid bag to this program and to one that knows nothing of it', async () => {
    expect((await checkBag(bag)).errors).toEqual([]);
    const said = independent(bag);
    expect(said.stdout.trim()).toBe('valid');
  });

  test('holds masters, records, events and pages, and no tiles unless asked', async () => {
    const names = (await folderFiles(join(bag, 'data'))).map(([name]) => name).sort();
    expect(names).toEqual([
      '/captures/normal.tif',
      '/records/collection.fr.md',
      '/records/collection.md',
      '/records/plate.fr.md',
      '/records/plate.md',
      '/records/premis.xml',
      '/records/record.json',
      '/records/sitting.yaml',
      '/site/fr/plates/first/index.html',
      '/site/plates/first/index.html',
      '/site/plates/first/views/normal/50%.txt',
    ]);
    const manifest = await readFile(join(bag, 'manifest-sha512.txt'), 'utf8');
    expect(manifest).toContain('views/normal/50%25.txt');
    const premis = await readFile(join(bag, 'data', 'records', 'premis.xml'), 'utf8');
    expect(premis).toContain('<messageDigestAlgorithm>SHA-512</messageDigestAlgorithm>');
    expect(premis).toContain('Photographed as capture normal');
  });

  test('does not hold or name what is withheld, unless asked', async () => {
    const secret = await readFile(join(places.content, 'plates/first/captures/axial.png'));
    for (const [name, bytes] of await folderFiles(bag)) {
      expect(name).not.toContain('axial');
      expect(bytes.includes('axial'), name).toBe(false);
      expect(bytes.includes(secret.subarray(100, 200)), name).toBe(false);
    }
    expect(await readFile(join(bag, 'bag-info.txt'), 'utf8')).toContain('Left-Out: 1 captures');
    const french = (from: string) => readFile(join(from, 'data/records/plate.fr.md'), 'utf8');
    expect(await french(bag)).toContain('Le grain');
    expect(await french(bag)).not.toContain('Un éclat');
    const whole = await deposit('whole', true);
    expect(await french(whole)).toContain('Un éclat');
    expect((await folderFiles(whole)).map(([name]) => name)).toContain('/data/captures/axial.png');
  });

  test('is never written over', async () => {
    await expect(deposit('archive')).rejects.toThrow('is there already');
  });

  test('a changed byte, a missing and an extra file are each found, by both programs', async () => {
    const changed = await deposit('changed');
    const master = join(changed, 'data', 'captures', 'normal.tif');
    const bytes = await readFile(master);
    bytes[bytes.length >> 1] ^= 1;
    await writeFile(master, bytes);
    expect((await checkBag(changed)).errors.join(' ')).toContain(
      '"data/captures/normal.tif" has changed',
    );
    expect(independent(changed).stdout).toContain('data/captures/normal.tif has another digest');

    const missing = await deposit('missing');
    await unlink(join(missing, 'data', 'records', 'plate.md'));
    expect((await checkBag(missing)).errors.join(' ')).toContain(
      '"data/records/plate.md" is in manifest-sha256.txt, but not in the bag',
    );
    expect(independent(missing).status).toBe(1);

    const extra = await deposit('extra');
    await writeFile(join(extra, 'data', 'more.txt'), 'more');
    expect((await checkBag(extra)).errors.join(' ')).toContain('"data/more.txt" is in the bag');
    expect(independent(extra).stdout).toContain('data/more.txt is in the bag and not listed');

    const tag = await deposit('tag');
    await appendFile(join(tag, 'bag-info.txt'), 'Contact-Name: Somebody else\n');
    expect((await checkBag(tag)).errors.join(' ')).toContain('"bag-info.txt" has changed');
  });

  // Last: it changes the content that the other tests deposit.
  test('is refused, and inspection tells it, when a master is not that of the last build', async () => {
    const master = join(places.content, 'plates', 'second', 'captures', 'normal.tif');
    const bytes = await readFile(master);
    bytes[bytes.length - 200] ^= 1;
    await writeFile(master, bytes);
    const { plates } = await inspectPlates({ places, reporter, slugs: ['first', 'second'] });
    const told = plates.map(({ slug, findings }) => [
      slug,
      findings.filter(({ code }) => code === 'master-changed').map(({ file }) => file),
    ]);
    expect(told).toEqual([
      ['first', []],
      ['second', ['captures/normal.tif']],
    ]);
    const content = await readContent(places.content);
    const plate = content.plates.find(({ slug }) => slug === 'second')!;
    await mkdir(join(places.out, 'plates', 'second'), { recursive: true });
    await writeFile(join(places.out, 'plates', 'second', 'index.html'), 'page');
    const about = { places, content, to: folder, date: '2026-03-02', withheld: false };
    const made = await depositPlate(plate, { ...about, tiles: false });
    expect(made).toMatchObject({ ok: false });
    expect(made.ok ? '' : made.reason).toContain('is not the file of the last build');
  });
});
