/**
 * Oracle: the npm package `edtf` 4.11.1. Its known faults are left out by name: it takes
 * 1851-02-29 for 1 March, it refuses a qualifier after an X (`185X~`), and open and unknown ends of intervals are compared separately.
 */
import edtf from 'edtf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareEdtf, parseEdtf, timeValue, yearOfDay } from '../../src/records/edtf.ts';

const millisecondsPerDay = 86_400_000;
const iso = (day: number | null) =>
  day === null || !Number.isFinite(day)
    ? String(day)
    : new Date(day * millisecondsPerDay).toISOString().slice(0, 10);

const two = (value: number) => String(value).padStart(2, '0');
const mark = fc.constantFrom('', '~', '?', '%');
const year = fc.integer({ min: 1000, max: 2100 }).map(String);
const plainDate = fc.oneof(
  year,
  year.map((y) => `${y.slice(0, 3)}X`),
  year.map((y) => `${y.slice(0, 2)}XX`),
  fc.tuple(year, fc.integer({ min: 1, max: 12 })).map(([y, m]) => `${y}-${two(m)}`),
  fc
    .tuple(year, fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 }))
    .map(([y, m, d]) => `${y}-${two(m)}-${two(d)}`),
);
const oneDate = fc.tuple(plainDate, mark).map(([d, q]) => (d.endsWith('X') ? d : d + q));

describe('parseEdtf', () => {
  test('gives the same first and last day as the edtf package for dates it writes itself', () => {
    fc.assert(
      fc.property(oneDate, (text) => {
        const ours = parseEdtf(text);
        const theirs = edtf(text);
        expect(ours).not.toBeNull();
        expect(iso(ours!.first)).toBe(new Date(theirs.min).toISOString().slice(0, 10));
        expect(iso(ours!.last)).toBe(new Date(theirs.max).toISOString().slice(0, 10));
      }),
      { numRuns: 500 },
    );
  });

  test('gives the same first and last day as the edtf package for intervals', () => {
    fc.assert(
      fc.property(oneDate, oneDate, (a, b) => {
        const ours = parseEdtf(`${a}/${b}`);
        fc.pre(ours !== null);
        const theirs = [edtf(a), edtf(b)];
        expect(iso(ours.first)).toBe(new Date(theirs[0].min).toISOString().slice(0, 10));
        expect(iso(ours.last)).toBe(new Date(theirs[1].max).toISOString().slice(0, 10));
      }),
      { numRuns: 300 },
    );
  });

  test('refuses an interval exactly when its last day is before its first', () => {
    fc.assert(
      fc.property(oneDate, oneDate, (a, b) => {
        expect(parseEdtf(`${a}/${b}`) !== null).toBe(edtf(a).min <= edtf(b).max);
      }),
      { numRuns: 300 },
    );
  });

  // Level 0 and level 1 examples printed in the Library of Congress specification (2019).
  test.each([
    ['1985-04-12', '1985-04-12', '1985-04-12'],
    ['1985-04', '1985-04-01', '1985-04-30'],
    ['1985', '1985-01-01', '1985-12-31'],
    ['1964/2008', '1964-01-01', '2008-12-31'],
    ['2004-06/2006-08', '2004-06-01', '2006-08-31'],
    ['2004-02-01/2005', '2004-02-01', '2005-12-31'],
    ['1984?', '1984-01-01', '1984-12-31'],
    ['2004-06~', '2004-06-01', '2004-06-30'],
    ['2004-06-11%', '2004-06-11', '2004-06-11'],
    ['201X', '2010-01-01', '2019-12-31'],
    ['20XX', '2000-01-01', '2099-12-31'],
    ['2004-XX', '2004-01-01', '2004-12-31'],
    ['1985-04-XX', '1985-04-01', '1985-04-30'],
    ['1985-XX-XX', '1985-01-01', '1985-12-31'],
    ['1985-04-12/..', '1985-04-12', 'Infinity'],
    ['1985-04/..', '1985-04-01', 'Infinity'],
    ['../1985', '-Infinity', '1985-12-31'],
    ['1985-04-12/', '1985-04-12', 'null'],
    ['/1985', 'null', '1985-12-31'],
    ['1984~/2004-06', '1984-01-01', '2004-06-30'],
  ])('reads %s as %s to %s', (text, first, last) => {
    const date = parseEdtf(text);
    expect([iso(date!.first), iso(date!.last)]).toEqual([first, last]);
  });

  test('keeps the leap day of 1852 and refuses that of 1851, which the package takes', () => {
    expect(iso(parseEdtf('1852-02')!.last)).toBe('1852-02-29');
    expect(parseEdtf('1852-02-29')).not.toBeNull();
    expect(parseEdtf('1851-02-29')).toBeNull();
    expect(() => edtf('1851-02-29')).not.toThrow();
  });

  test.each([
    '',
    'about 1852',
    'c. 1852',
    '1852-13',
    '1852-3',
    '18X2',
    '185X-03',
    '1852-XX-03',
    '1855/1850',
    '../..',
    '/',
    '/..',
    '1850/1851/1852',
    '1852-21',
    'Y12000',
    '-0500',
    '185',
    '1852 ',
    '..',
  ])('refuses %j', (text) => {
    expect(parseEdtf(text)).toBeNull();
  });

  test('answers any text at all with a date or null', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0128X-/.~?%Y ') }), (text) => {
        const date = parseEdtf(text);
        if (date) expect(date.text).toBe(text);
      }),
      { numRuns: 2000 },
    );
  });

  test('counts days over the years 0 to 99 without moving them to 1900', () => {
    expect(yearOfDay(parseEdtf('0042')!.first!)).toBe(42);
  });
});

describe('compareEdtf', () => {
  test('puts open starts first, then by first day, then the shorter span', () => {
    const texts = ['1855', '185X', '1850-03', '../1870', '1850', '/1852', '1850/..', '1849~'];
    const dates = texts.map((text) => parseEdtf(text)!);
    expect(dates.sort(compareEdtf).map((date) => date.text)).toEqual([
      '../1870',
      '1849~',
      '1850',
      '185X',
      '1850/..',
      '1850-03',
      '/1852',
      '1855',
    ]);
  });

  test('is an order: the opposite way round gives the opposite sign', () => {
    fc.assert(
      fc.property(oneDate, oneDate, (a, b) => {
        const x = parseEdtf(a)!;
        const y = parseEdtf(b)!;
        expect(Math.sign(compareEdtf(x, y))).toBe(-Math.sign(compareEdtf(y, x)) + 0);
      }),
      { numRuns: 300 },
    );
  });
});

test('gives the values that HTML allows in a time element, and none for decades', () => {
  const value = (text: string) => {
    const { from } = parseEdtf(text)!;
    return typeof from === 'string' ? from : timeValue(from);
  };
  expect(['1852~', '1852-03?', '1852-03-01', '185X', '18XX'].map(value)).toEqual([
    '1852',
    '1852-03',
    '1852-03-01',
    null,
    null,
  ]);
});
