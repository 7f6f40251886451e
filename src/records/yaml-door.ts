/**
 * The one door through which records come in: YAML, or the front matter of a Markdown file,
 * read once, checked against its schema, every fault with its place. The parser keeps the tree,
 * so a sentence can name the line that it is about.
 *
 * References
 * - YAML Ain't Markup Language, version 1.2.2 (2021). A bare 1852 is a number in it, a bare
 *   1852-03-01 is text.
 */
import { isMap, isNode, isScalar, LineCounter, parseDocument, type Document } from 'yaml';
import type { z } from 'zod';
import { complaints, expectation } from './complaint.ts';
import { finding, type Finding } from './finding.ts';
import { findFrontMatter } from './front-matter.ts';
import { deepest, tooDeepLine } from './text-depth.ts';
import { aliasFault, syntaxFault, type SyntaxFault } from './yaml-syntax.ts';

export interface YamlSource {
  /** Slug of the plate; empty for a file of the collection. */
  readonly plate: string;
  /** Name of the file, relative to the plate's or the content folder. */
  readonly file: string;
  readonly text: string;
}

export interface Place {
  /** From 1. */
  readonly line: number;
  /** From 1. */
  readonly column: number;
}

export type PlaceOf = (path: readonly PropertyKey[]) => Place;

export type YamlResult<T> =
  | { readonly ok: true; readonly value: T; readonly placeOf: PlaceOf }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Characters; the longest record that was thought of, 200 frames of a mosaic, has 20,000. */
const longestRecord = 500_000;
/** Times that a reference may be followed before a record is called a trap. */
const mostAliases = 100;
/** Further faults of syntax are mostly consequences of the first ones. */
const mostSyntaxFaults = 5;

function nodeAt(doc: Document.Parsed, path: readonly PropertyKey[]): unknown {
  return path.length === 0 ? doc.contents : doc.getIn(path, true);
}

/** Offset of the name of a field, null where there is none. */
function nameOffset(doc: Document.Parsed, path: readonly PropertyKey[]): number | null {
  const parent = nodeAt(doc, path.slice(0, -1));
  if (!isMap(parent)) return null;
  const key = parent.items
    .map((pair) => pair.key)
    .find((k) => isScalar(k) && String(k.value) === String(path.at(-1)));
  return isNode(key) && key.range ? key.range[0] : null;
}

/** Offset of the value at a path; of the nearest group around it when it is missing. */
function valueOffset(doc: Document.Parsed, path: readonly PropertyKey[]): number {
  for (let length = path.length; length >= 0; length--) {
    const node = nodeAt(doc, path.slice(0, length));
    if (isNode(node) && node.range) return node.range[0];
  }
  return 0;
}

function sourceAt(doc: Document.Parsed, path: readonly PropertyKey[]): string | null {
  const node = nodeAt(doc, path);
  return isScalar(node) ? (node.source ?? null) : null;
}

/**
 * Read fields and check them.
 *
 * @param range Offsets of the fields when they are a part of the text; what stands around them
 *   is ignored, and places are still those of the whole file.
 */
export function readYaml<S extends z.ZodType>(
  source: YamlSource,
  schema: S,
  range: { readonly start: number; readonly end: number } = { start: 0, end: source.text.length },
): YamlResult<z.output<S>> {
  const { plate, file } = source;
  const fault = (parts: SyntaxFault, place?: Place, path?: readonly PropertyKey[]): Finding =>
    finding({
      level: 'error',
      plate,
      file,
      code: parts.code,
      message: parts.message,
      remedy: parts.remedy,
      ...(place ? { line: place.line, column: place.column } : {}),
      ...(path?.length ? { field: path.map(String).join('.') } : {}),
    });
  if (range.end - range.start > longestRecord) {
    const message = `The record has ${range.end - range.start} characters; ${longestRecord} are the limit.`;
    const remedy = 'Move long text into the body of plate.md.';
    return { ok: false, findings: [fault({ code: 'too-long', message, remedy })] };
  }
  const lines = new LineCounter();
  const place = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  const padded =
    source.text.slice(0, range.start).replace(/[^\r\n]/g, ' ') +
    source.text.slice(range.start, range.end);
  const doc = parseDocument(padded, {
    lineCounter: lines,
    logLevel: 'error',
    prettyErrors: false,
    uniqueKeys: true,
  });
  const errors = [...doc.errors, ...doc.warnings].sort((a, b) => a.pos[0] - b.pos[0]);
  if (errors.length > 0) {
    const exhausted = errors.filter((error) => error.code === 'RESOURCE_EXHAUSTION');
    const shown = (exhausted.length > 0 ? exhausted.slice(0, 1) : errors).map((error) =>
      fault(syntaxFault(error, padded), place(error.pos[0])),
    );
    const onePerLine = shown.filter((f, k) => k === 0 || f.line !== shown[k - 1].line);
    return { ok: false, findings: onePerLine.slice(0, mostSyntaxFaults) };
  }
  let value: unknown;
  try {
    value = doc.toJS({ maxAliasCount: mostAliases });
  } catch (error) {
    const parts = aliasFault(error as Error);
    return { ok: false, findings: [fault(parts, place(valueOffset(doc, [])))] };
  }
  const checked = schema.safeParse(value ?? {}, { error: expectation });
  if (checked.success) {
    return { ok: true, value: checked.data, placeOf: (path) => place(valueOffset(doc, path)) };
  }
  const sourceOf = (path: readonly PropertyKey[]) => sourceAt(doc, path);
  const findings = checked.error.issues
    .flatMap((issue) => complaints(issue, schema, value ?? {}, sourceOf))
    .map((said) => {
      const offset =
        (said.atName ? nameOffset(doc, said.path) : null) ?? valueOffset(doc, said.path);
      return fault(said, place(offset), said.path);
    });
  return { ok: false, findings };
}

export type MarkdownResult<T> =
  | {
      readonly ok: true;
      readonly value: T;
      readonly placeOf: PlaceOf;
      readonly body: string;
      /** Line of the file on which the body begins, from 1. */
      readonly bodyLine: number;
    }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Read a Markdown file with fields at its top. */
export function readFrontMatter<S extends z.ZodType>(
  source: YamlSource,
  schema: S,
): MarkdownResult<z.output<S>> {
  const where = findFrontMatter(source.text);
  if (!where) {
    const absent = finding({
      level: 'error',
      plate: source.plate,
      file: source.file,
      line: 1,
      code: 'no-front-matter',
      message: 'The file does not begin with fields between two lines of three dashes.',
      remedy: 'Begin it with a line "---", then the fields, then a line "---", then the text.',
    });
    return { ok: false, findings: [absent] };
  }
  const read = readYaml(source, schema, where);
  if (!read.ok) return read;
  const body = source.text.slice(where.body);
  const deep = tooDeepLine(body);
  if (deep === null) return { ...read, body, bodyLine: where.bodyLine };
  const nested = finding({
    level: 'error',
    plate: source.plate,
    file: source.file,
    line: where.bodyLine + deep - 1,
    code: 'too-deep',
    message: `Quotations, lists or directives are nested in one another more than ${deepest} times.`,
    remedy: 'Write the text with fewer levels, or close the directives (":::") that are open.',
  });
  return { ok: false, findings: [nested] };
}
