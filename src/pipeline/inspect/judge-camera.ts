/**
 * What the camera wrote down: in one sitting it must not have changed, and it must be what the
 * sitting says. A changed aperture or focal length moves the image under the captures that are
 * laid over each other later.
 */
import { isSameExposure, stopsBetween } from '../../imaging/inspect/bracket-steps.ts';
import type { Finding } from '../../records/finding.ts';
import type { CameraExif } from '../../records/result.ts';
import { limit } from '../../records/tolerances.ts';
import {
  about,
  kept,
  said,
  type InspectedCapture,
  type InspectedSitting,
  type Judge,
} from './inspected-sitting.ts';
import { judgeBracket } from './judge-bracket.ts';
import { secondsWords } from './seconds-words.ts';

export const judgeCamera: Judge = (sitting) => {
  const silent = judgeSilence(sitting);
  const changed = fields.flatMap((field) => judgeField(sitting, field));
  const said = new Set([...silent, ...changed].map((f) => f.capture));
  const exposures = sitting.captures
    .filter((c) => !said.has(c.record.id))
    .flatMap((capture) => judgeExposure(sitting, capture));
  return [...silent, ...changed, ...exposures];
};

interface Field {
  readonly key: 'aperture' | 'focalLength' | 'iso' | 'model' | 'lens';
  readonly code: string;
  readonly what: string;
  readonly show: (value: number | string) => string;
  readonly remedy: string;
}

const fields: readonly Field[] = [
  {
    key: 'aperture',
    code: 'aperture-changed',
    what: 'The aperture',
    show: (value) => `f/${value}`,
    remedy:
      'Change only the shutter within a sitting: another aperture moves the image and its sharpness. Photograph it again with the others’ aperture.',
  },
  {
    key: 'focalLength',
    code: 'focal-length-changed',
    what: 'The focal length',
    show: (value) => `${value} mm`,
    remedy: 'Leave zoom and focus alone within a sitting; otherwise begin a sitting of its own.',
  },
  {
    key: 'iso',
    code: 'iso-changed',
    what: 'The ISO setting',
    show: (value) => `ISO ${value}`,
    remedy: 'Change only the shutter within a sitting, so that noise and exposure compare.',
  },
  {
    key: 'model',
    code: 'camera-changed',
    what: 'The camera',
    show: String,
    remedy: 'Captures of another camera belong into a sitting of their own.',
  },
  {
    key: 'lens',
    code: 'lens-changed',
    what: 'The lens',
    show: String,
    remedy: 'Captures through another lens belong into a sitting of their own.',
  },
];

/** The sitting's own value is the one that most files have; the others are named. */
function judgeField(sitting: InspectedSitting, field: Field): Finding[] {
  const files = sitting.captures.flatMap(({ frames }) => frames);
  const usual = mostFrequent(files.flatMap(({ exif }) => exif[field.key] ?? []));
  if (usual === null) return [];
  return sitting.captures.flatMap(({ record, frames }) => {
    const other = frames.find(({ exif }) => differs(exif, field.key, usual));
    if (!other) return [];
    const value = other.exif[field.key] ?? '';
    return [
      about(sitting, record.id, other.name, {
        level: 'warning',
        code: field.code,
        message: `${field.what} was ${field.show(value)} here, but ${field.show(usual)} in the rest of the sitting.`,
        remedy: field.remedy,
        measured:
          typeof value === 'number'
            ? { value, unit: unitOf[field.key] ?? '', expected: String(usual) }
            : null,
      }),
    ];
  });
}

const unitOf: Readonly<Record<string, string>> = {
  aperture: 'f-number',
  focalLength: 'mm',
  iso: 'ISO',
};

function differs(exif: CameraExif, key: Field['key'], usual: number | string): boolean {
  const value = exif[key];
  if (value === null) return false;
  if (typeof value === 'number' && typeof usual === 'number') {
    // Files write rounded fractions: a per mille is no change.
    return Math.abs(value / usual - 1) > 0.001;
  }
  return value !== usual;
}

function mostFrequent<T>(values: readonly T[]): T | null {
  const counts = new Map<T, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  let best: T | null = null;
  for (const [value, count] of counts) {
    if (best === null || count > (counts.get(best) ?? 0)) best = value;
  }
  return best;
}

/** A file that says nothing of its exposure, where the sitting does not say it either. */
function judgeSilence(sitting: InspectedSitting): Finding[] {
  return sitting.captures.flatMap(({ record, setupKind, frames }) => {
    if (setupKind === 'scan') return [];
    const silent = frames.filter(({ exif }) => exif.seconds === null && exif.aperture === null);
    if (silent.length === 0) return [];
    const stated = (record.exposure?.aperture ?? sitting.record.camera.aperture) !== undefined;
    const timed = record.exposure?.seconds !== undefined || record.frames?.every((f) => f.seconds);
    const known = stated && timed === true;
    const which =
      frames.length === 1 ? 'It has' : `${silent.length} of its ${frames.length} files have`;
    return [
      about(sitting, record.id, silent[0].name, {
        level: known ? 'note' : 'warning',
        code: 'missing-exif',
        message: `${which} no record of exposure time and aperture by the camera${known ? '; the figures are the sitting’s alone' : ', and the sitting does not state them'}.`,
        remedy: known
          ? 'Export with metadata next time; what the sitting states is shown.'
          : 'Export the file again with its metadata, or write the exposure into sitting.yaml.',
      }),
    ];
  });
}

function judgeExposure(sitting: InspectedSitting, capture: InspectedCapture): Finding[] {
  switch (capture.record.kind) {
    case 'single':
      return judgeStated(sitting, capture);
    case 'bracket':
      return judgeBracket(sitting, capture);
    case 'lights':
    case 'mosaic':
      return judgeConstant(sitting, capture);
  }
}

function judgeStated(sitting: InspectedSitting, { record, frames }: InspectedCapture): Finding[] {
  const stated = record.exposure?.seconds;
  const written = frames[0]?.exif.seconds ?? null;
  const most = limit(sitting.tolerances, 'bracket-step').value;
  if (stated === undefined || written === null || isSameExposure(stated, written, most)) return [];
  return [
    about(sitting, record.id, frames[0].name, {
      level: 'warning',
      code: 'exposure-differs',
      message: `The sitting states ${secondsWords(stated)}, the camera wrote ${secondsWords(written)}: ${said(Math.abs(stopsBetween(stated, written)))} stops apart.`,
      remedy: 'Check that this is the file that was meant, then correct sitting.yaml.',
      measured: { value: kept(written), unit: 's', expected: secondsWords(stated) },
    }),
  ];
}

/** Set made of frames that are compared with each other: one exposure for all. */
function judgeConstant(sitting: InspectedSitting, { record, frames }: InspectedCapture): Finding[] {
  const usual = mostFrequent(frames.flatMap(({ exif }) => exif.seconds ?? []));
  if (usual === null) return [];
  const most = limit(sitting.tolerances, 'bracket-step').value;
  const other = frames.filter(
    ({ exif }) => exif.seconds !== null && !isSameExposure(usual, exif.seconds, most),
  );
  if (other.length === 0) return [];
  const { name, exif } = other[0];
  return [
    about(sitting, record.id, name, {
      level: 'warning',
      code: 'exposure-changed',
      message: `${other.length} of the ${frames.length} frames were exposed otherwise: ${name} for ${secondsWords(exif.seconds ?? NaN)} instead of ${secondsWords(usual)}.`,
      remedy: 'All frames of such a set need one exposure. Photograph these again.',
      measured: { value: kept(exif.seconds ?? NaN), unit: 's', expected: secondsWords(usual) },
    }),
  ];
}
