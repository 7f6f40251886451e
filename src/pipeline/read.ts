/**
 * Stage *read*: every pixel of every capture decoded once, so that a file that is broken is
 * heard of now and not by a reader. What was found is kept under the file's digest.
 */
import { join } from 'node:path';
import { readCapture } from '../raster/read-capture.ts';
import { finding, type Finding } from '../records/finding.ts';
import { fileSchema, type FileResult } from '../records/result.ts';
import type { PlateRecord } from '../records/plate.ts';
import type { CaptureRecord } from '../records/sitting.ts';
import type { ContentPlate } from './content.ts';
import { digestFile } from './file-digests.ts';
import type { StageContext } from './stage-context.ts';
import { systemCode } from './plate-faults.ts';
import { keepJson } from './store.ts';

/** Raised when this stage would find something else in the same file. */
export const readVersion = 1;

/** A plate whose own record could be read; the stages need one. */
export interface SoundPlate extends ContentPlate {
  readonly record: PlateRecord;
}

export interface ReadPlate {
  readonly plate: SoundPlate;
  /** What is known of each file, by its name in `captures/`. */
  readonly files: ReadonlyMap<string, FileResult>;
  readonly findings: readonly Finding[];
}

/** The files that a capture is made of; blank fields and targets are not part of its picture. */
export function pictureFiles(capture: CaptureRecord): readonly string[] {
  return capture.file !== undefined ? [capture.file] : (capture.frames ?? []).map((f) => f.file);
}

/** All files of a capture, with its blank field and target. */
export function allFiles(capture: CaptureRecord): readonly string[] {
  const extra = [capture.blank, capture.target?.file].filter((f) => f !== undefined);
  return [...pictureFiles(capture), ...extra];
}

export async function readPlate(plate: SoundPlate, context: StageContext): Promise<ReadPlate> {
  const files = new Map<string, FileResult>();
  const findings: Finding[] = [...plate.findings];
  for (const sitting of plate.sittings) {
    for (const capture of sitting.record.captures) {
      for (const name of allFiles(capture)) {
        if (files.has(name)) continue;
        const read = await readFile(plate, capture, name, context);
        if (read.ok) files.set(name, read.value);
        else findings.push(read.finding);
      }
    }
  }
  return { plate, files, findings };
}

async function readFile(
  plate: ContentPlate,
  capture: CaptureRecord,
  name: string,
  context: StageContext,
): Promise<{ ok: true; value: FileResult } | { ok: false; finding: Finding }> {
  const path = join(plate.folder, 'captures', name);
  const about = { plate: plate.slug, capture: capture.id, file: `captures/${name}` };
  // What stops the store is about no capture, and is thrown on.
  const asked = <T>(answer: Promise<T>): Promise<T> =>
    answer.catch((error: unknown) => {
      throw new CaptureRefused(unreadable(name, error as Error));
    });
  const look = () => asked(readCapture(path, { scratch: context.store.scratch }));
  try {
    const sha256 = await asked(context.digests.of(path));
    const value = await keepJson(
      context.store,
      'read',
      `${sha256}-${readVersion}`,
      (kept) => fileSchema.parse(kept),
      async () => {
        let read = await look();
        if (!read.ok && read.code !== 'disk-full') {
          // A disk that fails, or a network folder, looks like a damaged file: ask once more.
          if ((await asked(digestFile(path))) !== sha256)
            throw new CaptureRefused(changedWhileRead);
          read = await look();
        }
        if (!read.ok) throw new CaptureRefused(read);
        if (read.value.sha256 !== sha256) throw new CaptureRefused(changedWhileRead);
        return { ...read.value, name };
      },
      context.tally,
    );
    return { ok: true, value: { ...value, name } };
  } catch (error) {
    if (!(error instanceof CaptureRefused)) throw error;
    return { ok: false, finding: finding({ level: 'error', ...about, ...error.refusal }) };
  }
}

interface Refusal {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

const unreadable = (name: string, error: Error): Refusal => ({
  code: 'unreadable',
  message: `${name} could not be read (${systemCode(error) || error.message}).`,
  remedy: 'Check that the file is there, that it may be read and that its disk is sound.',
});

const changedWhileRead: Refusal = {
  code: 'changed-while-read',
  message: 'The file changed while it was being read.',
  remedy: 'Wait until the camera or the copy has finished, then build again.',
};

/** Leaves `keepJson` without a result: a refusal is not worth keeping, the file may be mended. */
class CaptureRefused extends Error {
  readonly refusal: Refusal;
  constructor({ code, message, remedy }: Refusal) {
    super(message);
    this.refusal = { code, message, remedy };
  }
}
