import { cp, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { checkTexts } from '../../../src/pipeline/check-texts.ts';
import { readContent } from '../../../src/pipeline/content.ts';
import { findingText } from '../../../src/records/finding-text.ts';

const good = join(import.meta.dirname, '..', '..', 'fixtures', 'content-good');
let folder = '';

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-overlays-'));
  await cp(good, folder, { recursive: true });
  await listed('[en, fr, de]');
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

const write = (file: string, text: string) => writeFile(join(folder, file), text);
const listed = (languages: string) =>
  write('collection.md', `---\ntitle: Plates\ninstitution: { name: M }\nlanguages: ${languages}\n---\n`);
const both = 'description: { positive: Des bateaux., negative: Inversés. }';
const plate = (fields: string, body = 'Le texte.') => `---\n${fields}\n---\n\n${body}\n`;
async function read() {
  const content = await readContent(folder);
  const { overlays, findings } = content;
  return {
    content,
    overlays,
    codes: findings.map(({ level, code, plate: slug, file }) => [level, code, slug, file]),
    texts: findings.map(findingText),
  };
}

describe('translations beside their originals', () => {
  test('are read as such and as no plates or pages of their own', async () => {
    const before = (await read()).content;
    await write('plates/basin/plate.fr.md', plate(`title: Un port\n${both}`));
    await write('collection.de.md', plate('title: Platten', 'Willkommen.'));
    await write('techniques/raking.fr.md', plate('title: Lumière rasante'));
    await write('glossary.de.md', plate('title: Wörter'));
    const { content, overlays, texts } = await read();
    expect(texts).toEqual([]);
    expect(content.pages).toEqual(before.pages);
    expect(content.plates).toEqual(before.plates);
    expect(
      overlays.map((one) => [one.plate, one.file, one.language, one.original, one.record.title]),
    ).toEqual([
      ['', 'collection.de.md', 'de', 'collection.md', 'Platten'],
      ['', 'glossary.de.md', 'de', 'glossary.md', 'Wörter'],
      ['', 'techniques/raking.fr.md', 'fr', 'techniques/raking.md', 'Lumière rasante'],
      ['basin', 'plate.fr.md', 'fr', 'plate.md', 'Un port'],
    ]);
    expect(overlays[3]).toMatchObject({ body: '\nLe texte.\n', bodyLine: 5 });
  });

  test('go through the Markdown check under their own names', async () => {
    await write('plates/basin/plate.fr.md', plate(both, '[Là](/lessons/nowhere/)'));
    const { content } = await read();
    const [fault, ...rest] = await checkTexts(content);
    expect(rest).toEqual([]);
    expect(fault).toMatchObject({ plate: 'basin', file: 'plate.fr.md', line: 5 });
  });
});

describe('a translation with a fault', () => {
  test('in a language that is not listed, or that of the original, is left out', async () => {
    await write('plates/basin/plate.es.md', plate(both));
    await write('plates/basin/plate.en.md', plate(both));
    const { overlays, texts, codes } = await read();
    expect(overlays).toEqual([]);
    expect(codes).toEqual([
      ['warning', 'original-language', 'basin', 'plate.en.md'],
      ['warning', 'unlisted-language', 'basin', 'plate.es.md'],
    ]);
    expect(texts[1]).toContain('does not list the language "es"; it lists "en", "fr", "de"');
  });

  test('of nothing is left out, and the name that was meant is offered', async () => {
    await write('lessons/left-is-rigth.fr.md', plate('title: La gauche'));
    const { overlays, texts, codes } = await read();
    expect(overlays).toEqual([]);
    expect(codes).toEqual([['warning', 'no-original', '', 'lessons/left-is-rigth.fr.md']]);
    expect(texts[0]).toContain('Did you mean "left-is-right.fr.md"?');
  });

  test('with a field that cannot be translated is left out, and its plate is published', async () => {
    await write('plates/basin/plate.fr.md', plate(`${both}\ndate: "1853"`));
    const { overlays, content, texts, codes } = await read();
    expect(overlays).toEqual([]);
    expect(codes).toEqual([['warning', 'unknown-key', 'basin', 'plate.fr.md']]);
    expect(texts[0]).toContain('Until then the original is shown in its place.');
    expect(content.plates.find(({ slug }) => slug === 'basin')?.findings).toEqual([]);
  });

  test('that leads out of the folder is left out', async () => {
    await symlink('/etc/hostname', join(folder, 'plates/basin/plate.fr.md'));
    const { overlays, codes } = await read();
    expect(overlays).toEqual([]);
    expect(codes).toEqual([['warning', 'leads-out', 'basin', 'plate.fr.md']]);
  });

  test('of a spot that the plate does not have is shown without it', async () => {
    const spots = 'spots:\n  - { id: keel, title: Quille }';
    await write('plates/basin/plate.fr.md', plate(`${both}\n${spots}`));
    const { overlays, texts, codes } = await read();
    expect(overlays).toHaveLength(1);
    expect(codes).toEqual([['warning', 'nothing-to-translate', 'basin', 'plate.fr.md']]);
    expect(texts[0]).toContain('"spots.0" ("keel") translates something that the original does not have');
  });

  test('without a text alternative is shown, and each missing one is told', async () => {
    await write('plates/basin/plate.fr.md', plate('description: { negative: Inversés. }'));
    const { overlays, texts, codes } = await read();
    expect(overlays).toHaveLength(1);
    expect(codes).toEqual([['warning', 'alternative-not-translated', 'basin', 'plate.fr.md']]);
    expect(texts[0]).toContain('The text alternative of the positive reading is not translated');
  });
});

test('a listed language without words of the interface is told', async () => {
  await listed('[en, pt-BR, fr-CA]');
  const { texts, codes } = await read();
  expect(codes).toEqual([['warning', 'unspoken-language', '', 'collection.md']]);
  expect(texts[0]).toContain('There are no words of the interface for the language "pt-BR"');
});
