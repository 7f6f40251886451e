/** A sitting against itself and against the files that are there. */
import { capitalised, fieldWords } from './complaint.ts';
import type { Finding } from './finding.ts';
import { nearestWord } from './nearest-word.ts';
import { findingAt, repeated, type RecordAbout } from './record-about.ts';
import { setupOf, type CaptureRecord, type SittingRecord } from './sitting.ts';
import { placesToWrite } from './to-write.ts';
import { setupKinds } from './vocabulary.ts';

export interface SittingAbout extends RecordAbout {
  /** Everything in `captures/`; null when that folder is not there, which is said elsewhere. */
  readonly files: readonly string[] | null;
}

type Path = readonly PropertyKey[];

/** Every file that a capture names, with the place where it names it. */
export function namedFiles(capture: CaptureRecord, at: Path): { name: string; path: Path }[] {
  const files = [
    { name: capture.file, path: [...at, 'file'] },
    ...(capture.frames ?? []).map(({ file }, k) => ({
      name: file,
      path: [...at, 'frames', k, 'file'],
    })),
    { name: capture.blank, path: [...at, 'blank'] },
    { name: capture.target?.file, path: [...at, 'target', 'file'] },
  ];
  return files.flatMap(({ name, path }) => (name === undefined ? [] : [{ name, path }]));
}

export function sittingFindings(sitting: SittingRecord, about: SittingAbout): Finding[] {
  const { captures, base } = sitting;
  const ids = captures.map((capture) => capture.id);
  const findings = repeated(ids).map((k) =>
    findingAt(about, ['captures', k, 'id'], {
      level: 'error',
      code: 'duplicate-id',
      message: `There are two captures with the id "${ids[k]}".`,
      remedy: 'Give each capture an id of its own.',
    }),
  );
  if (base !== undefined && !ids.includes(base)) {
    const near = nearestWord(base, ids);
    findings.push(
      findingAt(about, ['base'], {
        level: 'error',
        code: 'unknown-base',
        message: `The base is "${base}", but no capture has that id.`,
        remedy: near ? `Did you mean "${near}"?` : `The captures are: ${ids.join(', ')}.`,
      }),
    );
  }
  captures.forEach((capture, k) => {
    const at = ['captures', k];
    findings.push(
      ...unknownSetup(sitting, capture, at, about),
      ...unknownFiles(capture, at, about),
      ...framesFindings(capture, at, about),
    );
  });
  findings.push(...filesUsedTwice(captures, about), ...readingsMissing(captures, about));
  findings.push(...placesToWrite(sitting).map((path) => toWrite(path, about)));
  return findings;
}

function unknownSetup(
  sitting: SittingRecord,
  capture: CaptureRecord,
  at: Path,
  about: RecordAbout,
) {
  if (setupOf(sitting, capture)) return [];
  const known = [...Object.keys(sitting.setups), ...setupKinds];
  const near = nearestWord(capture.setup, known);
  return [
    findingAt(about, [...at, 'setup'], {
      level: 'error',
      capture: capture.id,
      code: 'unknown-setup',
      message: `Capture "${capture.id}" was made with the set-up "${capture.setup}", which is described nowhere.`,
      remedy: near
        ? `Did you mean "${near}"?`
        : `Describe it under "setups", or use one of: ${setupKinds.join(', ')}.`,
    }),
  ];
}

/** The name as the file system has it, where only capitals or accents are written otherwise. */
function writtenOtherwise(name: string, files: readonly string[]): string | undefined {
  const plain = (text: string) => text.normalize('NFC').toLowerCase();
  return files.find((file) => plain(file) === plain(name));
}

function unknownFiles(capture: CaptureRecord, at: Path, about: SittingAbout): Finding[] {
  const { files } = about;
  if (files === null) return [];
  const known = new Set(files);
  return namedFiles(capture, at)
    .filter(({ name }) => !known.has(name))
    .map(({ name, path }) => {
      const other = writtenOtherwise(name, files);
      const near = other ?? nearestWord(name, files.slice(0, 2000));
      return findingAt(about, path, {
        level: 'error',
        capture: capture.id,
        code: other ? 'file-name-case' : 'missing-file',
        message: other
          ? `Capture "${capture.id}" names "${name}", but the file is written "${other}".`
          : `Capture "${capture.id}" names "${name}", but captures/ has no such file.`,
        remedy: other
          ? 'Write it exactly so: another computer may tell capitals apart.'
          : near
            ? `Did you mean "${near}"?`
            : 'Put the file into captures/, or correct the name.',
      });
    });
}

function framesFindings(capture: CaptureRecord, at: Path, about: RecordAbout): Finding[] {
  const { id, kind, frames = [] } = capture;
  const say = (level: Finding['level'], code: string, message: string, remedy: string) => [
    findingAt(about, [...at, 'frames'], { level, capture: id, code, message, remedy }),
  ];
  if (kind === 'lights' && !capture.ball && !capture.ballWithin) {
    const unknown = frames.filter((f) => f.bearing === undefined || f.height === undefined).length;
    if (unknown === 0) return [];
    return say(
      'warning',
      'lamp-unknown',
      `Of the ${frames.length} frames of "${id}" ${unknown} do not say where the lamp was.`,
      'Give each frame a bearing and a height, or the capture the circle of a glossy ball, or "ballWithin: frame" to have it found.',
    );
  }
  if (kind === 'mosaic') {
    const cells = frames.map(({ row, column }) => `${row ?? '?'},${column ?? '?'}`);
    if (cells.some((cell) => cell.includes('?'))) {
      return say(
        'warning',
        'grid-unknown',
        `Not every frame of the mosaic "${id}" says its row and column.`,
        'Give each frame a row and a column, from 0 at the top left.',
      );
    }
    const twice = repeated(cells);
    if (twice.length === 0) return [];
    return say(
      'error',
      'grid-twice',
      `Two frames of the mosaic "${id}" are both in row and column ${cells[twice[0]]}.`,
      'Correct the rows and columns.',
    );
  }
  return [];
}

function filesUsedTwice(captures: readonly CaptureRecord[], about: RecordAbout): Finding[] {
  const first = new Map<string, string>();
  return captures.flatMap((capture, k) =>
    [capture.file, ...(capture.frames ?? []).map((frame) => frame.file)].flatMap((name) => {
      if (name === undefined) return [];
      const other = first.get(name);
      first.set(name, other ?? capture.id);
      if (other === undefined) return [];
      return findingAt(about, ['captures', k], {
        level: 'warning',
        capture: capture.id,
        code: 'file-twice',
        message: `"${name}" is named by "${other}" and again by "${capture.id}".`,
        remedy: 'If one file serves both on purpose, nothing need be done.',
      });
    }),
  );
}

function readingsMissing(captures: readonly CaptureRecord[], about: RecordAbout): Finding[] {
  const readings = new Set(captures.map((capture) => capture.reading));
  return (['positive', 'negative'] as const)
    .filter((reading) => !readings.has(reading))
    .map((reading) =>
      findingAt(about, ['captures'], {
        level: 'note',
        code: `no-${reading}`,
        message: `No capture of this sitting reads ${reading}.`,
        remedy: 'The plate can be turned by the reader only when both readings were photographed.',
      }),
    );
}

/** A place where `npm run new` left a mark. */
export function toWrite(path: Path, about: RecordAbout): Finding {
  return findingAt(about, path, {
    level: 'warning',
    code: 'to-write',
    message: capitalised(`${fieldWords(path, undefined)} is still to be written.`),
    remedy: `Replace the words that begin with "TO WRITE" in ${about.file}.`,
  });
}
