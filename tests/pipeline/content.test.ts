import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { cp, mkdir, mkdtemp, rm, symlink, unlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { checkTexts } from '../../src/pipeline/check-texts.ts';
import { readContent } from '../../src/pipeline/content.ts';
import { findingText } from '../../src/records/finding-text.ts';
import type { Finding } from '../../src/records/finding.ts';

const fixtures = join(import.meta.dirname, '..', 'fixtures');
const said = (findings: readonly Finding[]) => findings.map((f) => `${f.level}: ${findingText(f)}`);

describe('a content folder that is right', () => {
  test('comes out whole and sorted, with nothing to say', async () => {
    const content = await readContent(join(fixtures, 'content-good'));
    expect(said(content.findings)).toEqual([]);
    expect(content.collection?.title).toBe('Plates');
    expect(content.plates.map(({ slug, findings }) => [slug, said(findings)])).toEqual([
      ['alley', []],
      ['basin', []],
    ]);
    expect(content.plates[0].sittings.map(({ id, file }) => [id, file])).toEqual([
      ['2016-05-24', 'sittings/2016-05-24.yaml'],
      ['2024-03-05', 'sittings/2024-03-05.yaml'],
    ]);
    expect(content.plates[0].captureFiles).toEqual([
      '2016-05-24/axial.tif',
      '2016-05-24/normal.tif',
      '2024-03-05/axial.tif',
      '2024-03-05/normal.tif',
    ]);
    expect(content.plates[1]).toMatchObject({ body: '\nThe text.\n', bodyLine: 14 });
    expect(content.pages.map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'technique raking',
      'lesson left-is-right',
      'page glossary',
    ]);
    expect(said(await checkTexts(content))).toEqual([]);
  });

  test('can be handed to another thread', async () => {
    const content = await readContent(join(fixtures, 'content-good'));
    expect(structuredClone(content.plates)).toEqual(content.plates);
  });
});

describe('each fault of the fixture folder content-faults', () => {
  // UPDATE=1 writes the file anew; a missing file or a missing plate in it fails.
  const file = join(fixtures, 'content-faults', 'expected.json');

  test('is said in the words of expected.json, and the other plates go on', async () => {
    const content = await readContent(join(fixtures, 'content-faults'));
    const found = {
      collection: said(content.findings),
      ...Object.fromEntries(content.plates.map(({ slug, findings }) => [slug, said(findings)])),
    };
    if (process.env['UPDATE']) writeFileSync(file, `${JSON.stringify(found, null, 2)}\n`);
    expect(existsSync(file)).toBe(true);
    expect(found).toEqual(JSON.parse(readFileSync(file, 'utf8')));
    const sound = content.plates.filter((p) => p.findings.every((f) => f.level !== 'error'));
    expect(sound.map(({ slug }) => slug)).toContain('harbour');
    expect(sound.every(({ record, sittings }) => record !== null && sittings.length > 0)).toBe(
      true,
    );
  });
});

describe('hostile folders', () => {
  let folder = '';
  const plate = () => join(folder, 'content', 'plates', 'basin');

  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-content-'));
    await cp(join(fixtures, 'content-good'), join(folder, 'content'), { recursive: true });
    await writeFile(join(folder, 'secret.txt'), 'not for publication\n');
  });
  afterEach(async () => {
    await rm(folder, { recursive: true, force: true });
  });

  async function basin() {
    const content = await readContent(join(folder, 'content'));
    const found = content.plates.find(({ slug }) => slug === 'basin');
    const others = content.plates.filter(({ slug }) => slug !== 'basin');
    expect(others.flatMap(({ findings }) => said(findings))).toEqual([]);
    return {
      plate: found,
      findings: said(found?.findings ?? []),
      collection: said(content.findings),
    };
  }

  test('a capture that is a link out of the folder is refused and not listed', async () => {
    await unlink(join(plate(), 'captures', 'axial.tif'));
    await symlink(join(folder, 'secret.txt'), join(plate(), 'captures', 'axial.tif'));
    const found = await basin();
    expect(found.plate?.captureFiles).toEqual(['normal.tif']);
    expect(found.findings[0]).toBe(
      'error: plate "basin", captures/axial.tif: captures/axial.tif is a link that leads out of the content folder. Put the file itself there.',
    );
  });

  test('so is a record, a folder of captures and a whole plate', async () => {
    await unlink(join(plate(), 'plate.md'));
    await symlink(join(folder, 'secret.txt'), join(plate(), 'plate.md'));
    await mkdir(join(folder, 'elsewhere'));
    await symlink(join(folder, 'elsewhere'), join(folder, 'content', 'plates', 'linked'));
    await rm(join(plate(), 'captures'), { recursive: true });
    await symlink(join(folder, 'elsewhere'), join(plate(), 'captures'));
    const found = await basin();
    expect(found.plate?.record).toBeNull();
    expect(found.findings.join('\n')).toContain('plate.md is a link that leads out');
    expect(found.findings.join('\n')).toContain('captures is a link that leads out');
    expect(found.collection).toEqual([
      'error: plates/linked: plates/linked is a link that leads out of the content folder. Put the file itself there.',
    ]);
  });

  test('a link within the folder is followed', async () => {
    await unlink(join(plate(), 'captures', 'axial.tif'));
    await symlink('normal.tif', join(plate(), 'captures', 'axial.tif'));
    const found = await basin();
    expect(found.plate?.captureFiles).toEqual(['axial.tif', 'normal.tif']);
    expect(found.findings).toEqual([]);
  });

  test('a link in a circle and a link to nothing are said', async () => {
    await symlink('loop.tif', join(plate(), 'captures', 'loop.tif'));
    await symlink('nothing.tif', join(plate(), 'captures', 'none.tif'));
    await symlink('.', join(plate(), 'captures', 'again'));
    const found = await basin();
    expect(found.findings.filter((line) => line.startsWith('error'))).toContain(
      'error: plate "basin", captures/loop.tif: captures/loop.tif is a link to something that is not there. Put the file itself there.',
    );
  });

  test('a named pipe does not stop the reading', async () => {
    await unlink(join(plate(), 'plate.md'));
    execFileSync('mkfifo', [join(plate(), 'plate.md'), join(plate(), 'captures', 'pipe.tif')]);
    const found = await basin();
    expect(found.findings).toContain(
      'error: plate "basin", plate.md: plate.md is not a file. Put a text file of that name there.',
    );
    expect(found.findings).toContain(
      'error: plate "basin", captures/pipe.tif: captures/pipe.tif is neither a file nor a folder. Take it out.',
    );
  });

  test('text in an old encoding is said with its line', async () => {
    const text = readFileSync(join(plate(), 'plate.md'), 'latin1').replace(
      'Boats.',
      'Bateaux à quai.',
    );
    await writeFile(join(plate(), 'plate.md'), text, 'latin1');
    expect((await basin()).findings).toEqual([
      'error: plate "basin", plate.md line 5: plate.md is not text in UTF-8: line 5 has bytes that mean nothing in it. Save it as UTF-8 in your editor.',
    ]);
  });

  test('text in UTF-16, an empty record and a folder in its place are said', async () => {
    const file = join(plate(), 'plate.md');
    await writeFile(file, Buffer.from('\uFEFF---\ntitle: x\n---\n', 'utf16le'));
    expect((await basin()).findings[0]).toContain('plate.md is not text in UTF-8: line 1');
    await writeFile(file, '');
    expect((await basin()).findings[0]).toContain('does not begin with fields');
    await unlink(file);
    await mkdir(file);
    expect((await basin()).findings[0]).toContain('plate.md is not a file.');
  });

  test('a record of many megabytes is not read', async () => {
    await writeFile(join(plate(), 'plate.md'), Buffer.alloc(3_000_000, 32));
    expect((await basin()).findings[0]).toContain(
      'plate.md has 3000000 bytes; a text may have 2000000.',
    );
  });

  test('files that systems leave behind are not mentioned', async () => {
    for (const name of ['.DS_Store', 'Thumbs.db', '._normal.tif']) {
      await writeFile(join(plate(), 'captures', name), '');
    }
    expect((await basin()).findings).toEqual([]);
  });

  test('a content folder that is itself a link works', async () => {
    await symlink(join(folder, 'content'), join(folder, 'alias'));
    const content = await readContent(join(folder, 'alias'));
    expect(content.plates).toHaveLength(2);
    expect(said(content.findings)).toEqual([]);
  });

  test('a folder that is not there, is a file or is empty has a sentence', async () => {
    const nowhere = await readContent(join(folder, 'nowhere'));
    expect(nowhere.findings.map(({ code }) => code)).toEqual(['no-content']);
    const file = await readContent(join(folder, 'secret.txt'));
    expect(file.findings.map(({ code }) => code)).toEqual(['no-content']);
    await mkdir(join(folder, 'empty'));
    const empty = await readContent(join(folder, 'empty'));
    expect(empty.findings.map(({ code }) => code)).toEqual(['no-file', 'no-plates']);
  });
});
