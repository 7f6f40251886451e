/** A first sitting.yaml, from what the names and the camera say. */
import { Document } from 'yaml';
import type { CameraExif } from '../../records/result.ts';
import { toWriteMark } from '../../records/to-write.ts';
import { gridPlace, type CaptureGuess, type FoundFile } from './group-files.ts';

/** The value that all files agree on, or undefined. */
function shared<K extends keyof CameraExif>(files: readonly FoundFile[], key: K) {
  const values = new Set(files.map(({ exif }) => exif[key]));
  const [value] = values;
  return values.size === 1 && value !== null ? value : undefined;
}

/** Camera times have more digits than they are good for. */
function round(value: number | null | undefined): number | undefined {
  return value === null || value === undefined || value <= 0
    ? undefined
    : Number(value.toPrecision(6));
}

function frameOf(capture: CaptureGuess, { name, exif }: FoundFile) {
  if (capture.kind === 'bracket') return { file: name, seconds: round(exif.seconds) };
  if (capture.kind === 'mosaic') return { file: name, ...(gridPlace(name) ?? {}) };
  return { file: name };
}

function noteOf(capture: CaptureGuess): string | undefined {
  if (capture.setup === null) {
    return `${toWriteMark}: how the plate was lit and which way it reads; correct "setup" and "reading" above.`;
  }
  if (capture.kind === 'lights') {
    return `${toWriteMark}: bearing and height of the lamp for each frame, or a glossy ball: its circle, or "ballWithin: frame".`;
  }
  return undefined;
}

function captureEntry(capture: CaptureGuess, aids: readonly CaptureGuess[]) {
  const { id, kind, files, setup } = capture;
  const aid = (name: CaptureGuess['aid']) =>
    aids.find((a) => a.aid === name && (a.setup === setup || a.setup === null))?.files[0].name;
  const [target, scale] = [aid('target'), aid('scale')];
  return {
    id,
    ...(kind === 'single' ? { file: files[0].name } : { kind }),
    setup: setup ?? 'other',
    reading: capture.reading ?? 'none',
    exposure: {
      seconds: kind === 'bracket' ? undefined : round(shared(files, 'seconds')),
      aperture: round(shared(files, 'aperture')),
      iso: round(shared(files, 'iso')),
    },
    blank: aid('blank'),
    target: target
      ? { file: target, kind: '24-patch' }
      : scale
        ? { file: scale, kind: 'scale' }
        : undefined,
    note: noteOf(capture),
    ...(kind === 'single' ? {} : { frames: files.map((file) => frameOf(capture, file)) }),
  };
}

/** Without fields of which nothing is known. */
function filled(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(filled);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value)
    .map(([key, inner]) => [key, filled(inner)] as const)
    .filter(([, inner]) => inner !== undefined && !isEmptyGroup(inner));
  return Object.fromEntries(entries);
}

function isEmptyGroup(value: unknown): boolean {
  return typeof value === 'object' && value !== null && Object.keys(value).length === 0;
}

/** The day that the camera's clock gives for the first frame, where it gives one. */
export function firstDay(files: readonly FoundFile[]): string | undefined {
  const days = files.flatMap(({ exif }) => exif.taken?.slice(0, 10) ?? []).sort();
  return days.find((day) => /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/.test(day));
}

const head = ` What was photographed, and how. Filled in from the names of the files and from what the camera
 wrote; read it through, and replace everything that begins with "${toWriteMark}".
 Set-ups: normal, raking, axial, transmitted, ultraviolet, infrared, scan, other.
 Readings: positive, negative, mixed, none.`;

const scaleHint = ` Pixels per millimetre, from a scale in the picture or from the plate's edges:
 scale: { pixelsPerMillimetre: 40, from: target }
 Lamps: bearing clockwise from the plate's top edge, height above the plate, in degrees:
 setups:
   side-lamp: { kind: normal, surround: dark, lamps: [{ bearing: 315, height: 45, distance: 600 }] }`;

/** The captures that a sitting lists: aids are named by the others, unless there is nothing else. */
export function sittingText(captures: readonly CaptureGuess[]): string {
  const pictures = captures.filter((capture) => capture.aid === null);
  const listed = pictures.length > 0 ? pictures : captures;
  const aids = pictures.length > 0 ? captures.filter((capture) => capture.aid !== null) : [];
  const files = captures.flatMap((capture) => capture.files);
  const base =
    listed.find((c) => c.kind === 'single' && c.reading === 'positive') ??
    listed.find((c) => c.kind === 'single') ??
    listed[0];
  const record = {
    date: firstDay(files),
    operator: `${toWriteMark}: role or name of whoever photographed`,
    camera: {
      make: shared(files, 'make'),
      model: shared(files, 'model'),
      lens: shared(files, 'lens'),
      focalLength: round(shared(files, 'focalLength')),
    },
    base: base.id,
    captures: listed.map((capture) => captureEntry(capture, aids)),
  };
  const document = new Document(filled(record));
  document.commentBefore = head;
  document.comment = scaleHint;
  return document.toString({ lineWidth: 100 });
}
