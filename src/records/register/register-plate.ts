/**
 * One row of a register as fields of `plate.md`. A value that cannot be understood is left out
 * and told of; nothing is guessed.
 */
import type { z } from 'zod';
import { expectation } from '../complaint.ts';
import { plateSchema } from '../plate.ts';
import type { CsvRow } from './csv.ts';
import { columnOf, type FieldSource, type RegisterField, type RegisterMapping } from './mapping.ts';

export interface RowProblem {
  readonly line: number;
  readonly column: string;
  readonly found: string;
  readonly expected: string;
}

export interface RegisterPlate {
  readonly line: number;
  readonly slug: string;
  /** Fields as `plate.md` writes them, each one that the schema takes. */
  readonly fields: Readonly<Record<string, unknown>>;
}

export type RowRead =
  | { readonly ok: true; readonly plate: RegisterPlate; readonly problems: readonly RowProblem[] }
  | { readonly ok: false; readonly problems: readonly RowProblem[] };

/** `FQ 1911.14 (a)` to `fq-1911-14-a`; accents are taken off. */
export function slugOf(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 100)
    .replace(/-$/, '');
}

/** Without the apostrophe by which a table says that this is no formula. */
const asText = (cell: string) => cell.replace(/^'(?=[=+\-@\t\r])/, '');

function cellOf(row: CsvRow, from: FieldSource): string {
  if (typeof from === 'string') return asText(row.cells[from] ?? '');
  if ('value' in from) return from.value;
  const cell = asText(row.cells[from.column] ?? '');
  const known = Object.entries(from.words).find(
    ([word]) => word.toLowerCase() === cell.toLowerCase(),
  );
  return known ? known[1] : cell;
}

/** `139,7 mm` and `139.7` are one length; anything else is no number. */
function lengthOf(cell: string): number | null {
  const found = /^(\d+(?:[.,]\d+)?)\s*(?:mm)?$/i.exec(cell);
  return found ? Number(found[1].replace(',', '.')) : null;
}

const expectedLength = 'a length in millimetres, such as 139.7';

export function readRegisterRow(row: CsvRow, mapping: RegisterMapping): RowRead {
  const problems: RowProblem[] = [];
  const tell = (column: string, found: string, expected: string) => {
    problems.push({ line: row.line, column, found, expected });
  };
  const written = row.cells[mapping.slug] ?? '';
  const slug = slugOf(written);
  if (slug === '') {
    tell(mapping.slug, written, 'a number or name that gives the plate its address');
    return { ok: false, problems };
  }
  const values = valuesOf(row, mapping, tell);
  const fields: Record<string, unknown> = {};
  for (const [name, { value, column, cell }] of Object.entries(values)) {
    const expected = refusal(name, value);
    if (expected === null) fields[name] = value;
    else tell(column, cell, expected);
  }
  if (fields['title'] === undefined) {
    const column = columnOf(mapping.fields.title ?? 'title') ?? 'title';
    if (!problems.some((one) => one.column === column)) tell(column, '', 'a title');
    return { ok: false, problems };
  }
  return { ok: true, plate: { line: row.line, slug, fields }, problems };
}

interface Found {
  readonly value: unknown;
  readonly column: string;
  readonly cell: string;
}

function valuesOf(
  row: CsvRow,
  { fields }: RegisterMapping,
  tell: (column: string, found: string, expected: string) => void,
): Record<string, Found> {
  const found: Record<string, Found> = {};
  const sides: Partial<Record<'width' | 'height', number>> = {};
  const description: Record<string, string> = {};
  for (const [name, from] of Object.entries(fields) as [RegisterField, FieldSource | undefined][]) {
    if (from === undefined) continue;
    const column = columnOf(from) ?? name;
    const cell = cellOf(row, from);
    if (cell === '') continue;
    if (name === 'width' || name === 'height') {
      const length = lengthOf(cell);
      if (length === null || length === 0) tell(column, cell, expectedLength);
      else sides[name] = length;
    } else if (name === 'positive' || name === 'negative') {
      description[name] = cell;
    } else if (name === 'maker') {
      const separator = typeof from === 'object' && 'column' in from ? from.separator : undefined;
      const makers = separator === undefined ? [cell] : cell.split(separator);
      const value = makers.map((one) => ({ name: one.trim() })).filter((one) => one.name !== '');
      found[name] = { value, column, cell };
    } else {
      found[name] = { value: cell, column, cell };
    }
  }
  const { width, height } = sides;
  if (width !== undefined && height !== undefined) {
    found['size'] = { value: [width, height], column: 'size', cell: `${width} × ${height}` };
  } else if (width !== undefined || height !== undefined) {
    tell('size', String(width ?? height), 'both sides');
  }
  if (Object.keys(description).length > 0) {
    found['description'] = { value: description, column: 'description', cell: '' };
  }
  return found;
}

/** What the schema expects of one field, or null where it takes the value. */
function refusal(name: string, value: unknown): string | null {
  // Half a description is kept: the other half is marked to be written.
  if (name === 'description') return null;
  const shape: Readonly<Record<string, z.ZodType>> = plateSchema.shape;
  const parsed = shape[name].safeParse(value, { error: expectation });
  return parsed.success ? null : (parsed.error.issues[0]?.message ?? 'another value');
}
