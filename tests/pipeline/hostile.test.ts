/**
 * A content folder made to do harm, through a whole build: what a browser's parser sees in the
 * pages runs nothing, what lies outside of the folder is in no file, and the build says why.
 */
import { mkdir, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { parse, type DefaultTreeAdapterTypes as Tree } from 'parse5';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parseCsv } from '../../src/records/register/csv.ts';
import { canServe, runHere, runThere } from '../fixtures/network-folder/run-there.ts';
import { folderDigests } from './folder-digests.ts';
import { folderFiles } from './folder-files.ts';
import { formula, outsideWords, writeHostileContent, writtenInFile } from './hostile-content.ts';

const script = join(import.meta.dirname, '../../scripts/build.ts');
let folder: string;
let said: string;
let code: number | null;
let files: [path: string, bytes: Buffer][];
let outside: Record<string, string>;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-hostile-'));
  const content = join(folder, 'content');
  await writeHostileContent(content, join(folder, 'outside'));
  outside = await folderDigests(join(folder, 'outside'));
  const before = await folderDigests(join(content, 'plates'));
  // On a disk of its own where one can be mounted: an exhibit may lie on another one than the project.
  const [served, at] = [join(folder, 'served'), join(folder, 'at')];
  await mkdir(served);
  await mkdir(at);
  const env = {
    MIRRORLEAF_CONTENT: content,
    MIRRORLEAF_CACHE: join(folder, 'cache'),
    MIRRORLEAF_OUT: join(canServe ? at : served, 'dist'),
  };
  const command = [process.execPath, script];
  const ended = canServe ? runThere({ folder: served, at, env }, command) : runHere(command, env);
  ({ code, said } = await ended);
  files = await folderFiles(join(served, 'dist'));
  expect(await folderDigests(join(content, 'plates'))).toEqual(before);
}, 180_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const ofKind = (...endings: string[]) => files.filter(([path]) => endings.includes(extname(path)));

/** Every element of a page, as a browser's parser finds them. */
function elements(node: Tree.Node): Tree.Element[] {
  const below = 'childNodes' in node ? node.childNodes.flatMap(elements) : [];
  const inside = 'content' in node ? elements(node.content) : [];
  return 'tagName' in node ? [node, ...inside, ...below] : below;
}

const textOf = (element: Tree.Element) =>
  element.childNodes.map((node) => ('value' in node ? node.value : '')).join('');

describe('content made to do harm', () => {
  test('gives an exhibit of what is sound, and a sentence for what is not', () => {
    expect(code).toBe(1);
    expect(files.map(([path]) => path)).toContain('/plates/first/index.html');
    for (const sentence of [
      'theme.css is a link that leads out of the content folder.',
      'lessons/secret.md is a link that leads out of the content folder.',
      'about.md is a link that leads out of the content folder.',
      'captures/secret.tif is a link that leads out of the content folder.',
      'plates/elsewhere is a link that leads out of the content folder.',
      'References ("*name") to other references multiply this record beyond reading.',
    ]) {
      expect(said.replace(/\s+/g, ' ')).toContain(sentence);
    }
    expect(said).toContain('The folder plates/␛]0;7112␇␛[2J cannot be an address.');
    expect(said).not.toMatch(/[^\P{Cc}\n\t]/u);
    expect(said).toContain('The logo logo.svg holds a script.');
    expect(said).not.toMatch(/fault of the program|\n {4}at /);
  });

  test('runs nothing on any page', () => {
    const pages = ofKind('.html').map(([path, bytes]) => [path, String(bytes)] as const);
    expect(pages.length).toBeGreaterThan(10);
    expect(pages.filter(([, html]) => html.includes('7101')).length).toBeGreaterThan(5);
    // Make and model of the camera are shown, and nothing else that the file says.
    const shown = pages.filter(([, html]) => html.includes(writtenInFile)).map(([path]) => path);
    expect(shown).toEqual(['/plates/first/captures/index.html']);
    for (const [path, html] of pages) {
      const all = elements(parse(html));
      expect(all.some(({ attrs }) => attrs.some(({ value }) => /script-src/.test(value)))).toBe(
        true,
      );
      for (const element of all) {
        const about = `${path} <${element.tagName}>`;
        for (const { name, value } of element.attrs) {
          expect(name, about).not.toMatch(/^on|^srcdoc$/);
          if (/^(href|src|action|formaction|data|xlink:href)$/.test(name)) {
            expect(value, about).not.toMatch(/^\s*(javascript|data:text|vbscript)|elsewhere/i);
          }
        }
        if (element.tagName === 'img')
          expect(element.attrs.find((a) => a.name === 'src')?.value).not.toBe('x');
        if (element.tagName === 'script' || element.tagName === 'style') {
          const kind = element.attrs.find(({ name }) => name === 'type')?.value ?? '';
          // Data for our own scripts may hold the words, whole, as JSON.
          if (/json/.test(kind)) JSON.parse(textOf(element));
          else expect(textOf(element), about).not.toMatch(/71\d\d/);
        }
      }
    }
  });

  test('is text in feeds and in documents for other programs too', () => {
    for (const [path, bytes] of ofKind('.xml', '.svg')) {
      expect(String(bytes), path).not.toMatch(/<(script|img)\b|<svg onload/);
    }
    for (const [path, bytes] of ofKind('.json', '.jsonld')) {
      expect(() => JSON.parse(String(bytes)) as unknown, path).not.toThrow();
    }
  });

  test('brings nothing of what lies outside, nor of what was written into the captures', async () => {
    const secret = await readFile(join(folder, 'outside', 'secret.tif'));
    const middle = secret.subarray(20_000, 20_064);
    for (const [path, bytes] of files) {
      expect(bytes.includes(outsideWords), path).toBe(false);
      expect(bytes.includes(middle), path).toBe(false);
      expect(bytes.includes(outside['/secret.tif']), path).toBe(false);
      expect(path).not.toMatch(/secret|elsewhere|bomb|71\d\d/);
      // What camera and lens were is text of a page; of pictures it is no part.
      if (/\.(jpg|webp|png)$/.test(path)) expect(bytes.includes(writtenInFile), path).toBe(false);
    }
  });

  test('makes no formula of a cell, and the table is read back as it was', () => {
    const [[, table]] = files.filter(([path]) => path === '/plates.csv');
    const [row] = parseCsv(String(table)).rows;
    for (const cell of Object.values(row.cells)) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
    expect(row.cells['objectNumber']).toBe(`'${formula}`);
  });
});
