/**
 * The history of ownership as a timeline. A section headed "Provenance" has a list whose items
 * begin with a date; what lies between them without a record is said as a gap, for a gap that is
 * closed up is a claim that nobody made.
 */
import type { Heading, List, ListItem, Root, RootContent, Text } from 'mdast';
import { toString } from 'mdast-util-to-string';
import { parseEdtf, yearOfDay, type EdtfDate } from '../records/edtf.ts';

/** The heading in the languages that the dates are said in. */
const headings = ['provenance', 'provenienz', 'procedencia', 'ownership'];

export interface Gap {
  /** First and last calendar year without record. */
  readonly from: number;
  readonly to: number;
}

export interface ProvenanceItem {
  /** Null for an item that does not begin with a date. */
  readonly date: EdtfDate | null;
  /** What follows the date, as plain text. */
  readonly text: string;
  readonly gapBefore: Gap | null;
  readonly node: ListItem;
}

export interface ProvenanceList {
  readonly list: List;
  readonly items: readonly ProvenanceItem[];
}

/** The date that an item begins with, and how many letters it and what follows it take. */
export function leadingDate(text: string): { date: EdtfDate; length: number } | null {
  const match = /^\s*([0-9X.~?%/-]+?)(?:\s*[:,;–—]\s*|\s+|$)/.exec(text);
  if (!match) return null;
  const date = parseEdtf(match[1]);
  return date && { date, length: match[0].length };
}

/** Last day that a date accounts for; an unknown end accounts for its beginning alone. */
function accountedUntil(date: EdtfDate): number {
  if (date.last !== null) return date.last;
  return typeof date.from === 'string' ? -Infinity : date.from.last;
}

/** First day that it accounts for; an unknown start for its end alone. */
function accountedFrom(date: EdtfDate): number {
  if (date.first !== null) return date.first;
  return typeof date.to === 'string' ? Infinity : date.to.first;
}

/** Whole calendar years between one day and another that no record covers. */
function gapBetween(until: number, from: number): Gap | null {
  if (!Number.isFinite(until) || !Number.isFinite(from)) return null;
  const gap = { from: yearOfDay(until) + 1, to: yearOfDay(from) - 1 };
  return gap.from <= gap.to ? gap : null;
}

function firstText(item: ListItem): Text | null {
  const paragraph = item.children[0];
  if (paragraph?.type !== 'paragraph') return null;
  const text = paragraph.children[0];
  return text?.type === 'text' ? text : null;
}

function readList(list: List): ProvenanceItem[] {
  let until: number | null = null;
  return list.children.map((node) => {
    const first = firstText(node);
    const lead = first && leadingDate(first.value);
    const whole = toString(node);
    if (!lead) return { date: null, text: whole, gapBefore: null, node };
    const { date, length } = lead;
    const gapBefore = until === null ? null : gapBetween(until, accountedFrom(date));
    until = Math.max(until ?? -Infinity, accountedUntil(date));
    return { date, text: whole.slice(length).trim(), gapBefore, node };
  });
}

function isProvenance(node: RootContent): node is Heading {
  return node.type === 'heading' && headings.includes(toString(node).trim().toLowerCase());
}

/** All lists of the provenance section that have at least one dated item. */
export function provenanceLists(tree: Root): ProvenanceList[] {
  const start = tree.children.findIndex(isProvenance);
  if (start < 0) return [];
  const { depth } = tree.children[start] as Heading;
  const rest = tree.children.slice(start + 1);
  const end = rest.findIndex((node) => node.type === 'heading' && node.depth <= depth);
  return (end < 0 ? rest : rest.slice(0, end))
    .filter((node) => node.type === 'list')
    .map((list) => ({ list, items: readList(list) }))
    .filter(({ items }) => items.some((item) => item.date !== null));
}

/** The latest day on which what a date says can have begun. */
function latestStart(date: EdtfDate): number {
  if (date.from === 'open') return -Infinity;
  if (date.from !== 'unknown') return date.from.last;
  return typeof date.to === 'string' ? Infinity : date.to.last;
}

/**
 * Places of the items that can only have begun before the item above them: "1848" after
 * "1848-05" may be right.
 */
export function outOfOrder(items: readonly ProvenanceItem[]): number[] {
  const dated = items.flatMap(({ date }, k) => (date ? [{ date, k }] : []));
  return dated.flatMap(({ date, k }, n) =>
    n > 0 && latestStart(date) < accountedFrom(dated[n - 1].date) ? [k] : [],
  );
}
