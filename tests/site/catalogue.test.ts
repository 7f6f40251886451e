/**
 * The printed catalogue, as a stranger makes it: by the command, with a browser of the machine.
 * What is on its pages is read by Poppler, which knows nothing of this project.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { namedPages } from '../../src/pipeline/catalogue/named-pages.ts';
import { browserPath } from './browser.ts';
import { pageOfEachKind } from './pages.ts';

const site = inject('siteFolder');
const covered = pageOfEachKind(site)['covered'].split('/')[1];
const poppler = existsSync('/usr/bin/pdftoppm');

let folder: string;
let pdf: string;

function catalogue(env: NodeJS.ProcessEnv, ...args: string[]) {
  return spawnSync(process.execPath, ['scripts/catalogue.ts', '--site', site, ...args], {
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-catalogue-'));
  pdf = join(folder, 'catalogue.pdf');
  const made = catalogue(
    { MIRRORLEAF_BROWSER: browserPath },
    ...['shells-and-drapery', covered, 'inner-basin', '--date', '2026-03-02', '--to', pdf],
  );
  if (made.status !== 0) throw new Error(made.stderr);
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const text = (...args: string[]) =>
  execFileSync('pdftotext', ['-layout', ...args, pdf, '-'], { encoding: 'utf8' });

/** A page as grey codes: `grey[y * width + x]`. */
function drawn(page: number, dotsPerInch: number) {
  const image = execFileSync(
    'pdftoppm',
    ['-r', String(dotsPerInch), '-f', String(page), '-l', String(page), '-gray', pdf],
    { maxBuffer: 1 << 28 },
  );
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(image.subarray(0, 40).toString('latin1'))!;
  return { width: Number(head[1]), height: Number(head[2]), grey: image.subarray(head[0].length) };
}

/** Length of the longest run of dark pixels along a row. */
function longestRun({ width, height, grey }: ReturnType<typeof drawn>, y: number): number {
  let [longest, run] = [0, 0];
  for (let x = 0; x < width && y < height; x += 1) {
    run = grey[y * width + x] < 40 ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}

describe.skipIf(!poppler)('the catalogue', () => {
  test('is tagged, on A4, and has a title and an outline', async () => {
    const info = execFileSync('pdfinfo', [pdf], { encoding: 'utf8' });
    expect(info).toMatch(/Tagged:\s+yes/);
    expect(info).toMatch(/Page size:\s+59[45]\.\d+ x 84[12]\.\d+ pts \(A4\)/);
    expect(info).toMatch(/Title:\s+Catalogue for printing/);
    expect((await readFile(pdf)).includes('/Outlines')).toBe(true);
  });

  test('lists its plates with the pages on which they are, as Poppler finds them', async () => {
    const { places: ours, count } = namedPages(await readFile(pdf));
    expect(execFileSync('pdfinfo', [pdf], { encoding: 'utf8' })).toMatch(
      new RegExp(`Pages:\\s+${count}\\n`),
    );
    const theirs = execFileSync('pdfinfo', ['-dests', pdf], { encoding: 'utf8' });
    for (const slug of ['shells-and-drapery', covered, 'inner-basin']) {
      const page = Number(new RegExp(`^\\s*(\\d+) .*"plate-${slug}"`, 'm').exec(theirs)?.[1]);
      expect(ours[`plate-${slug}`], slug).toBe(page);
    }
    const contents = text('-f', '1', '-l', String(ours['plate-inner-basin'] - 1));
    expect(contents).toMatch(
      new RegExp(`The inner basin at low water\\s*\\n.*\\s${ours['plate-inner-basin']}$`, 'm'),
    );
    expect(contents).not.toContain("The shipwright's bench");
  });

  test('prints both readings of a plate at true size, within 0.5 mm', async () => {
    const page = namedPages(await readFile(pdf)).places['plate-shells-and-drapery'];
    // Where Poppler finds the pictures: pixels of the file over pixels to the inch on the page.
    const list = execFileSync(
      'pdfimages',
      ['-list', '-f', String(page), '-l', String(page + 1), pdf],
      { encoding: 'utf8' },
    );
    const placed = list
      .split('\n')
      .slice(2)
      .map((line) => line.trim().split(/\s+/))
      .filter((cells) => cells[2] === 'image' && Number(cells[3]) > 500)
      .map((cells) => ({
        width: (Number(cells[3]) / Number(cells[12])) * 25.4,
        height: (Number(cells[4]) / Number(cells[13])) * 25.4,
      }));
    const record = JSON.parse(
      await readFile(join(site, 'plates/shells-and-drapery/manifest.json'), 'utf8'),
    ) as {
      items: { width: number; height: number; service: { physicalScale: number }[] }[];
    };
    const [{ width, height, service }] = record.items;
    const scale = service[0].physicalScale;
    expect(placed.length).toBeGreaterThanOrEqual(2);
    for (const picture of placed.slice(0, 2)) {
      expect(Math.abs(picture.width - width * scale)).toBeLessThan(0.5);
      expect(Math.abs(picture.height - height * scale)).toBeLessThan(0.5);
    }
  });

  test('draws the bar of 50 mm beneath them 50 mm long', async () => {
    const page = namedPages(await readFile(pdf)).places['plate-shells-and-drapery'];
    expect(text('-f', String(page), '-l', String(page))).toMatch(/50\smm on the plate/);
    const dots = 600;
    const sheet = drawn(page, dots);
    const runs = Array.from({ length: sheet.height }, (_, y) => longestRun(sheet, y));
    // Some 38 rows of the same length are the bar, 1.6 mm high; the pictures have no such edge.
    const bar = runs.filter((run) => Math.abs((run / dots) * 25.4 - 50) < 0.5);
    expect(bar.length).toBeGreaterThan(30);
    expect(bar.length).toBeLessThan(50);
  });

  test('leaves a covered plate covered', async () => {
    const { places: pages } = namedPages(await readFile(pdf));
    const from = pages[`plate-${covered}`];
    const next = Math.min(...Object.values(pages).filter((page) => page > from));
    const list = execFileSync(
      'pdfimages',
      ['-list', '-f', String(from), '-l', String(next - 1), pdf],
      { encoding: 'utf8' },
    );
    expect(list.trim().split('\n').length).toBe(2);
    expect(text('-f', String(from), '-l', String(from))).toContain('Covered, and left covered');
  });

  test('says when it was made and that it must be printed at 100 %', () => {
    expect(text().replace(/\s+/g, ' ')).toMatch(/printed at 100 %.*2 March 2026/);
  });
});

test('the command says what is missing: a browser, an exhibit, a plate', () => {
  const none = { MIRRORLEAF_BROWSER: '', PATH: '/nowhere' };
  const without = catalogue(none);
  expect(without.status).toBe(1);
  expect(without.stderr).toContain('none was found');
  const wrong = catalogue({ MIRRORLEAF_BROWSER: browserPath }, 'no-such-plate', '--to', pdf);
  expect(wrong.stderr).toContain('The exhibit has no plate no-such-plate.');
  const empty = spawnSync(process.execPath, ['scripts/catalogue.ts', '--site', folder], {
    encoding: 'utf8',
    env: { ...process.env, MIRRORLEAF_BROWSER: browserPath },
  });
  expect(empty.stderr).toContain('Build it first: npm run build');
});
