/**
 * A table of comma-separated values, as registers are exported: quotes, line ends inside
 * quotes, a byte order mark, and one of four signs between the cells. What is wrong with a line
 * is kept with its number, and the others are read.
 *
 * References
 * - RFC 4180, Common Format and MIME Type for Comma-Separated Values (CSV) Files.
 */

export interface CsvRow {
  /** Line of the file on which the row begins, from 1. */
  readonly line: number;
  readonly cells: Readonly<Record<string, string>>;
}

export interface CsvFault {
  readonly line: number;
  readonly message: string;
}

export interface CsvTable {
  readonly columns: readonly string[];
  readonly rows: readonly CsvRow[];
  readonly faults: readonly CsvFault[];
}

const separators = [',', ';', '\t', '|'];

/** The sign that the first line has most of, outside of quotes. */
export function separatorOf(text: string): string {
  const head = /^(?:"(?:[^"]|"")*"|[^\r\n"])*/.exec(text)?.[0].replace(/"(?:[^"]|"")*"/g, '') ?? '';
  const count = (sign: string) => head.split(sign).length;
  return [...separators].sort((a, b) => count(b) - count(a))[0];
}

interface RawRow {
  readonly line: number;
  readonly cells: string[];
  readonly fault: string | null;
}

/** A cell in quotes and where it ends; null where no quote closes it before a cell or row ends. */
function quotedCell(
  text: string,
  from: number,
  separator: string,
): { cell: string; end: number } | null {
  let cell = '';
  let at = from + 1;
  for (;;) {
    const close = text.indexOf('"', at);
    if (close < 0) return null;
    cell += text.slice(at, close);
    at = close + 1;
    if (text[at] !== '"') break;
    cell += '"';
    at += 1;
  }
  const end = text.startsWith('\r\n', at) ? at + 1 : at;
  const next = text[end];
  return next === undefined || next === separator || next === '\n' ? { cell, end } : null;
}

function* rawRows(text: string, separator: string): Generator<RawRow> {
  let at = 0;
  let line = 1;
  while (at < text.length) {
    const start = line;
    const cells: string[] = [];
    let fault: string | null = null;
    for (;;) {
      let cell = '';
      if (text[at] === '"') {
        const quoted = quotedCell(text, at, separator);
        if (quoted === null) {
          // Without its end the quote would swallow the rows after it: this line alone is lost.
          fault = 'A quote is opened and not closed, or stands inside a quoted cell.';
          const stop = text.indexOf('\n', at);
          at = stop < 0 ? text.length : stop;
        } else {
          cell = quoted.cell;
          at = quoted.end;
        }
      } else {
        const start = at;
        while (at < text.length && text[at] !== separator && text[at] !== '\n') at += 1;
        cell = text.slice(start, at).replace(/\r$/, '');
      }
      cells.push(cell);
      line += cell.split('\n').length - 1;
      if (fault !== null || text[at] !== separator) break;
      at += 1;
    }
    at += 1;
    line += 1;
    yield { line: start, cells, fault };
  }
}

export function parseCsv(source: string, separator?: string): CsvTable {
  const text = source.replace(/^\uFEFF/, '');
  const faults: CsvFault[] = [];
  const rows: CsvRow[] = [];
  let columns: string[] | null = null;
  for (const { line, cells, fault } of rawRows(text, separator ?? separatorOf(text))) {
    if (fault === null && cells.every((cell) => cell.trim() === '')) continue;
    if (fault !== null) {
      faults.push({ line, message: fault });
      continue;
    }
    if (columns === null) {
      columns = cells.map((cell) => cell.trim());
      const twice = columns.filter((name, k) => name !== '' && columns?.indexOf(name) !== k);
      for (const name of new Set(twice)) {
        faults.push({ line, message: `There are two columns "${name}"; the first is read.` });
      }
      continue;
    }
    if (cells.length > columns.length && cells.slice(columns.length).some((c) => c.trim() !== '')) {
      const message = `The row has ${cells.length} cells, and there are ${columns.length} columns.`;
      faults.push({ line, message });
      continue;
    }
    const pairs = columns.map((name, k): [string, string] => [name, (cells[k] ?? '').trim()]);
    // From the right, so that of two columns with one name the first stands.
    rows.push({ line, cells: Object.fromEntries(pairs.reverse()) });
  }
  return { columns: columns ?? [], rows, faults };
}
