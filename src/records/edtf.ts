/**
 * Dates that are honest about what is not known: `1852`, `1852~` (about), `185X` (the
 * fifties), `1849/1855` (from, to), `../1860` (until).
 *
 * Taken are the dates and intervals of EDTF level 0 and, of level 1, the qualifiers `~ ? %`,
 * unspecified digits at the end, and intervals with an open (`..`) or unknown (empty) end.
 * Not taken, because no plate needs them: times of day, seasons, years of more than four
 * digits, years before 0. A day that is not in the calendar, such as 1851-02-29, is no date.
 *
 * References
 * - Library of Congress. Extended Date/Time Format (EDTF) Specification, 4 February 2019,
 *   levels 0 and 1; the same as ISO 8601-2:2019, annex A.
 */

export type EdtfPrecision = 'day' | 'month' | 'year' | 'decade' | 'century';

/** One date, or one end of an interval. Days are counted from 1970-01-01, proleptic Gregorian. */
export interface EdtfPart {
  /** As written: `1852`, `185X` or `18XX`. */
  readonly year: string;
  /** 1 to 12, or null when not said. */
  readonly month: number | null;
  /** 1 to 31, or null when not said. */
  readonly day: number | null;
  readonly precision: EdtfPrecision;
  /** `~` or `%`: about that time. */
  readonly approximate: boolean;
  /** `?` or `%`: the source is in doubt. */
  readonly uncertain: boolean;
  /** First day that it can mean, whatever its qualifiers. */
  readonly first: number;
  /** Last day that it can mean, whatever its qualifiers. */
  readonly last: number;
}

/** `open` is the `..` of an interval without bound, `unknown` the empty end. */
export type EdtfEnd = EdtfPart | 'open' | 'unknown';

export interface EdtfDate {
  readonly text: string;
  readonly interval: boolean;
  /** The two ends; the same part twice for a date that is no interval. */
  readonly from: EdtfEnd;
  readonly to: EdtfEnd;
  /** First day, `-Infinity` when the start is open, null when it is unknown. */
  readonly first: number | null;
  /** Last day, `Infinity` when the end is open, null when it is unknown. */
  readonly last: number | null;
}

const partPattern =
  /^(\d{4}|\d{3}X|\d{2}XX)(?:-(0[1-9]|1[0-2]|XX)(?:-(0[1-9]|[12]\d|3[01]|XX))?)?([~?%])?$/;
const millisecondsPerDay = 86_400_000;

/** Days since 1970-01-01 of a calendar day; `Date.UTC` would read the years 0 to 99 as 1900 on. */
function dayNumber(year: number, month: number, day: number): number {
  return new Date(0).setUTCFullYear(year, month - 1, day) / millisecondsPerDay;
}

function numberOrNull(digits: string | undefined): number | null {
  return digits === undefined || digits === 'XX' ? null : Number(digits);
}

function precisionOf(year: string, month: number | null, day: number | null): EdtfPrecision {
  if (year.endsWith('XX')) return 'century';
  if (year.endsWith('X')) return 'decade';
  if (month === null) return 'year';
  return day === null ? 'month' : 'day';
}

function parsePart(text: string): EdtfPart | null {
  const match = partPattern.exec(text);
  if (!match) return null;
  const year = match[1];
  const month = numberOrNull(match[2]);
  const day = numberOrNull(match[3]);
  const digitsMissing = year.includes('X');
  if (digitsMissing && match[2] !== undefined) return null;
  if (month === null && day !== null) return null;
  const firstYear = Number(year.replaceAll('X', '0'));
  const lastYear = Number(year.replaceAll('X', '9'));
  const first = dayNumber(firstYear, month ?? 1, day ?? 1);
  if (day !== null && new Date(first * millisecondsPerDay).getUTCDate() !== day) return null;
  // Month 13 and day 0 are what `Date` takes for "the day before the first of the next".
  const last = day === null ? dayNumber(lastYear, (month ?? 12) + 1, 0) : first;
  return {
    year,
    month,
    day,
    precision: precisionOf(year, month, day),
    approximate: match[4] === '~' || match[4] === '%',
    uncertain: match[4] === '?' || match[4] === '%',
    first,
    last,
  };
}

function parseEnd(text: string): EdtfEnd | null {
  if (text === '..') return 'open';
  if (text === '') return 'unknown';
  return parsePart(text);
}

function boundOf(end: EdtfEnd, side: 'first' | 'last'): number | null {
  if (end === 'unknown') return null;
  if (end === 'open') return side === 'first' ? -Infinity : Infinity;
  return end[side];
}

/**
 * Read a date or interval.
 *
 * @returns null for anything else: also for an interval that ends before it begins and for
 *   one with no date at either end.
 */
export function parseEdtf(text: string): EdtfDate | null {
  const sides = text.split('/');
  if (sides.length > 2) return null;
  const interval = sides.length === 2;
  const from = interval ? parseEnd(sides[0]) : parsePart(sides[0]);
  const to = interval ? parseEnd(sides[1]) : from;
  if (from === null || to === null) return null;
  if (typeof from === 'string' && typeof to === 'string') return null;
  const first = boundOf(from, 'first');
  const last = boundOf(to, 'last');
  if (first !== null && last !== null && first > last) return null;
  return { text, interval, from, to, first, last };
}

/** Where a date stands in a list: by its first day, or by its last where the start is unknown. */
function place(date: EdtfDate): number {
  return date.first ?? date.last ?? 0;
}

/** Sort order: earlier first day, then earlier last day, then the text, so that it never varies. */
export function compareEdtf(a: EdtfDate, b: EdtfDate): number {
  if (place(a) !== place(b)) return place(a) < place(b) ? -1 : 1;
  const lastA = a.last ?? Infinity;
  const lastB = b.last ?? Infinity;
  if (lastA !== lastB) return lastA < lastB ? -1 : 1;
  return a.text < b.text ? -1 : Number(a.text > b.text);
}

/** The value for an HTML `<time datetime>`, or null where HTML has none (decades, centuries). */
export function timeValue(part: EdtfPart): string | null {
  if (part.year.includes('X') || part.year === '0000') return null;
  const two = (value: number) => String(value).padStart(2, '0');
  const month = part.month === null ? '' : `-${two(part.month)}`;
  return part.year + month + (part.day === null ? '' : `-${two(part.day)}`);
}

/** Calendar year of a day counted from 1970-01-01. */
export function yearOfDay(day: number): number {
  return new Date(day * millisecondsPerDay).getUTCFullYear();
}
