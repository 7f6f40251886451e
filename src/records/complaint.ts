/**
 * From what a schema refuses to a sentence that a curator can act on. The schemas give the
 * expectation in their messages ("a length in millimetres above 0"); this file says which field
 * it is about, what was found there, and what to do.
 */
import type { z } from 'zod';
import { nearestWord } from './nearest-word.ts';
import { knownFields } from './schema-fields.ts';

export interface Complaint {
  readonly path: readonly PropertyKey[];
  /** True when the place to show is the field's name, not its value. */
  readonly atName: boolean;
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

type Issue = z.core.$ZodIssue;

const typeWords: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'a group of fields',
  record: 'a group of fields',
};

function quoted(values: readonly unknown[]): string {
  const words = values.map((value) => `"${String(value)}"`);
  return words.length === 1 ? words[0] : `one of ${words.join(', ')}`;
}

/** The expectation where a schema gives none of its own; handed to zod as its error map. */
export function expectation(issue: z.core.$ZodRawIssue): string {
  // eslint-disable-next-line @typescript-eslint/switch-exhaustiveness-check -- the default says the rest
  switch (issue.code) {
    case 'invalid_type':
      return typeWords[issue.expected] ?? 'something else';
    case 'invalid_value':
      return quoted(issue.values);
    case 'too_small':
      if (issue.origin === 'number') {
        return `a number ${issue.inclusive ? 'not below' : 'above'} ${issue.minimum}`;
      }
      return issue.origin === 'string' ? 'some text' : `at least ${issue.minimum} entries`;
    case 'too_big':
      if (issue.origin === 'number') {
        return `a number ${issue.inclusive ? 'not above' : 'below'} ${issue.maximum}`;
      }
      return `at most ${issue.maximum} ${issue.origin === 'string' ? 'letters' : 'entries'}`;
    case 'invalid_union':
      return [...new Set(issue.errors.map((branch) => branch[0]?.message ?? ''))].join(', or ');
    default:
      return 'something else';
  }
}

/** What stands in the record, short enough for a sentence. */
export function foundWords(value: unknown): string {
  if (value === null || value === undefined) return 'empty';
  if (typeof value === 'string') {
    const start = value.length > 60 ? `${value.slice(0, 57)}...` : value;
    return value.trim() === '' ? 'empty' : JSON.stringify(start);
  }
  if (typeof value === 'number') return `the number ${value}`;
  if (typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  return 'a group of fields';
}

function at(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (here, step) =>
      typeof here === 'object' && here !== null && Object.hasOwn(here, step)
        ? (here as Record<PropertyKey, unknown>)[step]
        : undefined,
    value,
  );
}

function label(entry: unknown): string {
  const name = ['id', 'name', 'title'].map((key) => at(entry, [key])).find((v) => v !== undefined);
  return typeof name === 'string' ? ` (${JSON.stringify(name.slice(0, 40))})` : '';
}

/** A field as a reader would name it: `"seconds" in entry 3 ("raking") of "captures"`. */
export function fieldWords(path: readonly PropertyKey[], root: unknown): string {
  const words: string[] = [];
  for (let end = path.length; end > 0; end--) {
    const step = path[end - 1];
    if (typeof step === 'number' && end > 1) {
      words.push(
        `entry ${step + 1}${label(at(root, path.slice(0, end)))} of "${String(path[end - 2])}"`,
      );
      end--;
    } else {
      words.push(`"${String(step)}"`);
    }
  }
  return words.length === 0 ? 'The record' : words.join(' in ');
}

/** With a capital, where it begins with a word of ours and not with a field's name. */
export function capitalised(text: string): string {
  return text[0].toUpperCase() + text.slice(1);
}

/** How much a branch of a union explains: one that only says "wrong type" explains nothing. */
function explains(branch: readonly Issue[]): boolean {
  return branch.every((issue) => issue.path.length > 0 || issue.code !== 'invalid_type');
}

function unknownKeys(issue: Issue & { keys: string[] }, schema: z.ZodType, root: unknown) {
  return issue.keys.map((key): Complaint => {
    const known = knownFields(schema, issue.path);
    const near = nearestWord(key, known);
    const path = [...issue.path, key];
    return {
      path,
      atName: true,
      code: 'unknown-key',
      message: `${fieldWords(path, root)} is not a known field.`,
      remedy: near ? `Did you mean "${near}"?` : `Fields known here: ${known.join(', ')}.`,
    };
  });
}

function remedyFor(issue: Issue, value: unknown, source: string | null): string {
  if (issue.code === 'invalid_value' && typeof value === 'string') {
    const near = nearestWord(value, issue.values.map(String));
    if (near) return `Did you mean "${near}"?`;
  }
  const bare = typeof value === 'number' || typeof value === 'boolean';
  if (bare && issue.code === 'invalid_type' && issue.expected === 'string') {
    return `If this is meant, put it in quotes: "${source ?? String(value)}".`;
  }
  return 'Correct it, or take the field out if it may be left out.';
}

/**
 * The sentences for one issue of a schema.
 *
 * @param root The whole value that was checked.
 * @param sourceOf The text that stands in the file at a path, as written.
 */
export function complaints(
  issue: Issue,
  schema: z.ZodType,
  root: unknown,
  sourceOf: (path: readonly PropertyKey[]) => string | null,
): Complaint[] {
  if (issue.code === 'unrecognized_keys') return unknownKeys(issue, schema, root);
  if (issue.code === 'invalid_union') {
    const branch = issue.errors.find(explains);
    if (branch) {
      return branch.flatMap((inner) =>
        complaints({ ...inner, path: [...issue.path, ...inner.path] }, schema, root, sourceOf),
      );
    }
  }
  const expected = issue.code === 'invalid_key' ? issue.issues[0].message : issue.message;
  const field = fieldWords(issue.path, root);
  const value = at(root, issue.path);
  if (issue.code === 'invalid_key') {
    const message = `The name ${field} cannot be used. Expected ${expected}.`;
    const remedy = 'Give it a name in that form.';
    return [{ path: issue.path, atName: true, code: 'bad-name', message, remedy }];
  }
  if (value === undefined && issue.path.length > 0) {
    const message = capitalised(`${field} is missing. Expected ${expected}.`);
    return [{ path: issue.path, atName: false, code: 'missing', message, remedy: 'Add it.' }];
  }
  const message = capitalised(`${field} is ${foundWords(value)}. Expected ${expected}.`);
  const remedy = remedyFor(issue, value, sourceOf(issue.path));
  return [{ path: issue.path, atName: false, code: 'bad-value', message, remedy }];
}
