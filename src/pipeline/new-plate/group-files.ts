/**
 * Files that make one picture together: a bracket, many lights, a mosaic. Told by numbers at the
 * end of their names and by the exposure times that the camera wrote.
 */
import type { CameraExif } from '../../records/result.ts';
import { guessFromName, type NameGuess } from './name-words.ts';

export interface FoundFile {
  /** Relative to the folder, with forward slashes. */
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly exif: CameraExif;
}

export interface CaptureGuess extends NameGuess {
  readonly id: string;
  readonly kind: 'single' | 'bracket' | 'lights' | 'mosaic';
  readonly files: readonly FoundFile[];
}

/** Frames of the same exposure that are taken for many lights without being named so. */
const manyLights = 8;
/** Frames of rising or falling exposure that are taken for a bracket without being named so. */
const leastBracket = 3;

/** A name without its number at the end: `bracket-03.tif` is `bracket`. */
function stem(name: string): string {
  return name.replace(/\.[^.]*$/, '').replace(/[-_ ]*\d+$/, '');
}

/** A name without the two numbers of a row and a column. */
function gridStem(name: string): { stem: string; row: number; column: number } | null {
  const match = /^(.*?)[-_ ]?[rR]?(\d{1,3})[-_ ][cC]?(\d{1,3})\.[^.]*$/.exec(name);
  return match && { stem: match[1], row: Number(match[2]), column: Number(match[3]) };
}

/** Row and column of a frame of a mosaic, where its name says them. */
export function gridPlace(name: string): { row: number; column: number } | null {
  const found = gridStem(name);
  return found && { row: found.row, column: found.column };
}

function seconds(files: readonly FoundFile[]): number[] {
  return files.flatMap(({ exif }) => exif.seconds ?? []);
}

function monotone(values: readonly number[]): boolean {
  const steps = values.slice(1).map((value, k) => value - values[k]);
  return steps.every((step) => step > 0) || steps.every((step) => step < 0);
}

function sameSize(files: readonly FoundFile[]): boolean {
  return files.every(({ width, height }) => width === files[0].width && height === files[0].height);
}

/** What kind of set files of one stem are, or null when they are captures of their own. */
function setKind(files: readonly FoundFile[], guess: NameGuess): CaptureGuess['kind'] | null {
  if (files.length < 2 || guess.aid !== null) return null;
  if (guess.set === 'mosaic') return 'mosaic';
  if (!sameSize(files)) return null;
  if (guess.set !== null) return guess.set;
  const times = seconds(files);
  if (times.length < files.length) return null;
  if (files.length >= leastBracket && monotone(times)) return 'bracket';
  const equal = times.every((time) => time === times[0]);
  return equal && files.length >= manyLights ? 'lights' : null;
}

function idOf(words: string, taken: Set<string>): string {
  const plain = words
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .replace(/-+$/, '');
  const base = plain === '' ? 'capture' : plain;
  let id = base;
  for (let n = 2; taken.has(id); n++) id = `${base}-${n}`;
  taken.add(id);
  return id;
}

/** Captures from files, in the order of their names. */
export function groupFiles(files: readonly FoundFile[]): CaptureGuess[] {
  const stems = new Map<string, FoundFile[]>();
  for (const file of files) {
    const grid = guessFromName(file.name).set === 'mosaic' ? gridStem(file.name) : null;
    const key = grid?.stem ?? stem(file.name);
    stems.set(key, [...(stems.get(key) ?? []), file]);
  }
  const taken = new Set<string>();
  return [...stems].flatMap(([key, members]): CaptureGuess[] => {
    const guess = guessFromName(members[0].name);
    const kind = setKind(members, guess);
    if (kind !== null && kind !== 'single') {
      return [{ ...guess, id: idOf(key, taken), kind, files: members }];
    }
    return members.map((file) => {
      const id = idOf(file.name.replace(/\.[^.]*$/, ''), taken);
      return { ...guessFromName(file.name), id, kind: 'single', files: [file] };
    });
  });
}
