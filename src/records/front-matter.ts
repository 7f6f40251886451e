/** A Markdown file with fields at its top, between two lines of three dashes. */

export interface FrontMatter {
  /** Offsets of the fields in the file. */
  readonly start: number;
  readonly end: number;
  /** Offset of the first character of the body. */
  readonly body: number;
  /** Line of that character, from 1. */
  readonly bodyLine: number;
}

/** A byte order mark, which some editors put first and nobody sees. */
const byteOrderMark = '\uFEFF';

/** Where the fields stand, or null when the file does not begin with three dashes and close them. */
export function findFrontMatter(text: string): FrontMatter | null {
  const open = /^\uFEFF?---[ \t]*\r?\n/.exec(text);
  if (!open) return null;
  const start = open[0].length;
  const close = /^---[ \t]*(?:\r?\n|$)/m.exec(text.slice(start));
  if (!close) return null;
  const end = start + close.index;
  const body = end + close[0].length;
  return { start, end, body, bodyLine: text.slice(0, body).split('\n').length };
}

/** The text without a byte order mark. */
export function withoutMark(text: string): string {
  return text.startsWith(byteOrderMark) ? text.slice(1) : text;
}
