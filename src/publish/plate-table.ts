/**
 * The records of all plates as a table, for people who count: `plates.csv` and `plates.json`.
 * One row a plate, one plain value a cell; lists are joined by "; " in the CSV.
 *
 * A spreadsheet takes a text that begins with one of `= + - @` for a formula, and a formula can
 * send the table away. Such a text gets an apostrophe before it in the CSV, which spreadsheets
 * read as "this is text"; the register import takes it off again. The JSON has it as it is.
 *
 * References
 * - RFC 4180, Common Format and MIME Type for Comma-Separated Values (CSV) Files.
 * - OWASP, CSV Injection (the list of signs; from memory).
 */
import { parseEdtf, yearOfDay } from '../records/edtf.ts';
import type { PlateRecord } from '../records/plate.ts';
import { sizeOf } from '../records/plate-sizes.ts';
import type { PlateResult } from '../records/result.ts';

type Cell = string | number | null | readonly string[];
export type PlateRow = Readonly<Record<string, Cell>>;

export interface RowPlace {
  readonly identifier: string;
  /** Address of the plate's page, with a slash at the end. */
  readonly page: string;
  readonly credit: string | null;
}

function year(day: number | null | undefined): number | null {
  return typeof day === 'number' && Number.isFinite(day) ? yearOfDay(day) : null;
}

/** Lengths are millimetres, digits as recorded; a size from a trade name is left out. */
export function plateRow(record: PlateRecord, result: PlateResult, place: RowPlace): PlateRow {
  const { process } = record;
  const date = record.date === undefined ? null : parseEdtf(record.date);
  const size = Array.isArray(record.size) ? sizeOf(record.size) : null;
  return {
    slug: result.slug,
    identifier: place.identifier,
    title: record.title,
    objectNumber: record.objectNumber ?? null,
    process: typeof process === 'string' ? process : (process.text ?? process.name),
    maker: record.maker.map(({ name }) => name),
    date: record.date ?? null,
    firstYear: year(date?.first),
    lastYear: year(date?.last),
    place: record.place ?? null,
    width: size?.[0] ?? null,
    height: size?.[1] ?? null,
    orientation: record.orientation,
    positive: record.description.positive,
    negative: record.description.negative,
    rights: record.rights,
    credit: place.credit,
    advisory: record.advisory ?? null,
    condition: [...new Set(record.condition.map(({ term }) => term))],
    setups: [...new Set(result.views.map(({ setupKind }) => setupKind))],
    pixelsPerMillimetre: result.frame.pixelsPerMillimetre,
    page: place.page,
    manifest: `${place.page}manifest.json`,
  };
}

function csvCell(value: Cell): string {
  const words = value === null ? '' : typeof value === 'object' ? value.join('; ') : String(value);
  const text = typeof value !== 'number' && /^[=+\-@\t\r]/.test(words) ? `'${words}` : words;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Lines end with CR LF and the text begins with a byte order mark, for the sake of spreadsheets. */
export function csvTable(rows: readonly PlateRow[]): string {
  const names = Object.keys(rows[0] ?? {});
  const lines = rows.map((row) => names.map((name) => csvCell(row[name])).join(','));
  return `\uFEFF${[names.join(','), ...lines].map((line) => `${line}\r\n`).join('')}`;
}
