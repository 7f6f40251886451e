/**
 * Plates from a museum's register. A plate that is not there yet gets its `plate.md`; one that is
 * there is compared and never written to: what a person wrote stays. Rows with faults are told
 * of, one by one, and the others come in.
 */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { parse } from 'yaml';
import { findFrontMatter } from '../../records/front-matter.ts';
import { parseCsv } from '../../records/register/csv.ts';
import { columnOf, type RegisterMapping } from '../../records/register/mapping.ts';
import {
  readRegisterRow,
  type RegisterPlate,
  type RowProblem,
} from '../../records/register/register-plate.ts';
import { toWriteMark } from '../../records/to-write.ts';
import { registerPlateText } from './register-text.ts';

export interface Difference {
  readonly field: string;
  readonly register: unknown;
  readonly plate: unknown;
}

export interface RegisterReport {
  readonly rows: number;
  /** Slugs of plates that were made, or would be. */
  readonly made: readonly string[];
  readonly same: readonly string[];
  readonly differing: readonly { slug: string; differences: readonly Difference[] }[];
  /** Rows that gave no plate. */
  readonly refused: readonly number[];
  readonly problems: readonly RowProblem[];
  /** Columns that the mapping says nothing about. */
  readonly unmapped: readonly string[];
  /** Columns that the mapping names and the register does not have. */
  readonly absent: readonly string[];
}

export interface RegisterOptions {
  readonly text: string;
  readonly mapping: RegisterMapping;
  /** Content folder. */
  readonly content: string;
  /** Look and tell; write nothing. */
  readonly dryRun: boolean;
}

export async function importRegister(options: RegisterOptions): Promise<RegisterReport> {
  const { text, mapping, content, dryRun } = options;
  const table = parseCsv(text, mapping.separator);
  const problems: RowProblem[] = table.faults.map(({ line, message }) => {
    return { line, column: '', found: message, expected: 'a row of the table' };
  });
  const refused = new Set(table.faults.map(({ line }) => line));
  const wanted = new Set([
    mapping.slug,
    ...Object.values(mapping.fields).flatMap((from) => (from && columnOf(from)) ?? []),
  ]);
  const made: string[] = [];
  const same: string[] = [];
  const differing: { slug: string; differences: readonly Difference[] }[] = [];
  const lines = new Map<string, number>();
  for (const row of table.rows) {
    const read = readRegisterRow(row, mapping);
    problems.push(...read.problems);
    const earlier = read.ok ? lines.get(read.plate.slug) : undefined;
    if (!read.ok || earlier !== undefined) {
      refused.add(row.line);
      if (read.ok) problems.push(twice(read.plate, earlier!, mapping));
      continue;
    }
    const { plate } = read;
    lines.set(plate.slug, row.line);
    const place = join(content, 'plates', plate.slug, 'plate.md');
    const there = await readFile(place, 'utf8').catch(() => null);
    if (there === null) {
      if (!dryRun) await writeNew(place, registerPlateText(plate.fields));
      made.push(plate.slug);
    } else {
      const differences = differencesOf(plate, there);
      if (differences.length === 0) same.push(plate.slug);
      else differing.push({ slug: plate.slug, differences });
    }
  }
  return {
    rows: table.rows.length + table.faults.length,
    made,
    same,
    differing,
    refused: [...refused].sort((a, b) => a - b),
    problems: problems.sort((a, b) => a.line - b.line),
    unmapped: table.columns.filter(
      (name) => name !== '' && !wanted.has(name) && !mapping.ignore.includes(name),
    ),
    absent: [...wanted].filter((name) => !table.columns.includes(name)),
  };
}

function twice({ line, slug }: RegisterPlate, earlier: number, { slug: column }: RegisterMapping) {
  const expected = `another name than that of line ${earlier}`;
  return { line, column, found: slug, expected };
}

/** With `wx`: what has come there meanwhile is not written over either. */
async function writeNew(place: string, text: string): Promise<void> {
  await mkdir(join(place, '..', 'captures'), { recursive: true });
  await writeFile(place, text, { flag: 'wx' });
}

/** Fields of the register that `plate.md` has otherwise. What is still to be written is not. */
function differencesOf({ fields }: RegisterPlate, text: string): Difference[] {
  const head = findFrontMatter(text);
  let plate: Record<string, unknown> = {};
  try {
    plate = ((head ? parse(text.slice(head.start, head.end)) : null) ?? {}) as typeof plate;
  } catch {
    // A record that cannot be read has findings of its own.
  }
  const flat = (record: Readonly<Record<string, unknown>>): Record<string, unknown> => {
    const { description, ...rest } = record;
    return { ...rest, ...(description ?? {}) };
  };
  const [register, own] = [flat(fields), flat(plate)];
  return Object.entries(register).flatMap(([field, value]) => {
    const here = own[field];
    const open = here === undefined || JSON.stringify(here).includes(toWriteMark);
    if (isDeepStrictEqual(plain(value), plain(here))) return [];
    return [{ field, register: value, plate: open ? null : here }];
  });
}

/** `1852` of YAML and "1852" of a cell are one year; folded lines one line. */
function plain(value: unknown): unknown {
  if (typeof value === 'string' || typeof value === 'number') {
    return String(value).replace(/\s+/g, ' ').trim();
  }
  if (Array.isArray(value)) return value.map(plain);
  if (value === null || typeof value !== 'object') return value;
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, plain(part)]));
}
