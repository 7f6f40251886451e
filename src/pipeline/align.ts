/**
 * Stage *align*: every capture into the plate's frame, the pixels of the base capture of the
 * first sitting. What cannot be aligned is shown alone with the reason; nothing is laid over
 * something else on trust.
 */
import { join } from 'node:path';
import { z } from 'zod';
import type { RegistrationOutcome } from '../imaging/registration/estimate.ts';
import { judgeRegistration, type RegistrationJudgement } from '../imaging/registration/judge.ts';
import { register } from '../imaging/registration/register.ts';
import type { Plane16 } from '../imaging/plane.ts';
import { loadLuminance } from '../raster/load-plane.ts';
import type { Finding } from '../records/finding.ts';
import { registrationSchema, type FileResult, type Registration } from '../records/result.ts';
import type { CaptureRecord } from '../records/sitting.ts';
import type { ContentSitting } from './content.ts';
import type { InspectedPlate } from './inspect.ts';
import { keyOf } from './key.ts';
import { plateScale } from './plate-scale.ts';
import { pictureFiles } from './read.ts';
import { registrationFinding } from './registration-finding.ts';
import type { StageContext } from './stage-context.ts';
import { keepJson } from './store.ts';

/** Raised when the same captures would be aligned otherwise. */
export const alignVersion = 6;

export interface AlignedPlate extends InspectedPlate {
  /** Size of the plate's frame, pixels. */
  readonly frame: { readonly width: number; readonly height: number };
  /** By `<sitting>/<capture>`. */
  readonly registrations: ReadonlyMap<string, Registration>;
}

/** The capture that defines the plate's frame: named, else the first single one, else the first. */
export function baseCapture(sitting: ContentSitting): CaptureRecord {
  const { base, captures } = sitting.record;
  const named = captures.find((c) => c.id === base);
  return named ?? captures.find((c) => c.kind === 'single') ?? captures[0];
}

/**
 * The file that stands for a capture in the frame: its one picture, or the middle frame of a set
 * that was taken without moving anything. A mosaic's close-ups each have a place of their own.
 */
function standingFile(capture: CaptureRecord): string | null {
  if (capture.kind === 'mosaic') return null;
  const names = pictureFiles(capture);
  return names[Math.floor((names.length - 1) / 2)];
}

export async function alignPlate(
  inspected: InspectedPlate,
  context: StageContext,
): Promise<AlignedPlate> {
  const { plate, files } = inspected;
  const first = plate.sittings[0];
  const base = baseCapture(first);
  const baseFile = fileOf(files, standingFile(base) ?? pictureFiles(base)[0]);
  const frame: Frame = {
    plate: plate.slug,
    folder: join(plate.folder, 'captures'),
    base,
    file: baseFile,
    pixelsPerMillimetre: plateScale(plate.record, first.record, inspected.scale)
      .pixelsPerMillimetre,
    plane: once(() => loadPlane(join(plate.folder, 'captures', baseFile.name), context)),
  };
  const registrations = new Map<string, Registration>();
  const findings: Finding[] = [...inspected.findings];
  for (const sitting of plate.sittings) {
    for (const capture of sitting.record.captures) {
      const name = standingFile(capture);
      const aligned = isBase(capture, sitting)
        ? { registration: { state: 'base' } as const, findings: [] }
        : name === null
          ? { registration: mosaicRegistration, findings: [] }
          : await alignCapture(frame, capture, fileOf(files, name), context);
      registrations.set(`${sitting.id}/${capture.id}`, aligned.registration);
      findings.push(...aligned.findings);
    }
  }
  return { ...inspected, findings, frame: { ...sizeOf(baseFile) }, registrations };

  function isBase(capture: CaptureRecord, sitting: ContentSitting): boolean {
    return sitting === first && capture === base;
  }
}

const mosaicRegistration: Registration = {
  state: 'not-measured',
  reason: 'Close-ups of a mosaic each have a place of their own.',
};

interface Frame {
  readonly plate: string;
  readonly folder: string;
  readonly base: CaptureRecord;
  readonly file: FileResult;
  readonly pixelsPerMillimetre: number | null;
  /** The base in linear luminance, loaded when the first capture needs it. */
  readonly plane: () => Promise<Plane16>;
}

const keptSchema = z.strictObject({
  registration: registrationSchema,
  judgements: z.array(z.custom<RegistrationJudgement>((value) => typeof value === 'object')),
});
type Kept = z.output<typeof keptSchema>;

async function alignCapture(
  frame: Frame,
  capture: CaptureRecord,
  file: FileResult,
  context: StageContext,
): Promise<{ registration: Registration; findings: readonly Finding[] }> {
  const points = capture.controlPoints?.map(({ here, base }) => ({ here, base }));
  const readings = { base: frame.base.reading, moving: capture.reading };
  const { pixelsPerMillimetre } = frame;
  const parts = {
    version: alignVersion,
    base: frame.file.sha256,
    moving: file.sha256,
    points: points ?? null,
    readings,
  };
  const kept = await keepJson(
    context.store,
    'align',
    keyOf(parts),
    (value) => keptSchema.parse(value),
    async () => {
      context.progress(`${frame.plate}: aligning ${capture.id}`);
      const moving = await loadPlane(join(frame.folder, file.name), context);
      const outcome = register(await frame.plane(), moving, { controlPoints: points });
      return keptFrom(outcome, judgeRegistration(outcome, readings));
    },
    context.tally,
  );
  const reason = kept.registration.state === 'failed' ? kept.registration.reason : null;
  const about = {
    plate: frame.plate,
    capture: capture.id,
    file: `captures/${file.name}`,
    base: frame.base.id,
    reason,
  };
  const findings = kept.judgements.map((judgement) => registrationFinding(judgement, about));
  return { registration: inMicrometres(kept.registration, pixelsPerMillimetre), findings };
}

/** A corrected scale changes the length of a bound, not the alignment that is kept. */
function inMicrometres(
  registration: Registration,
  pixelsPerMillimetre: number | null,
): Registration {
  if (registration.state !== 'registered' || pixelsPerMillimetre === null) return registration;
  const boundMicrometres = (1000 * registration.boundPixels) / pixelsPerMillimetre;
  return { ...registration, boundMicrometres };
}

function keptFrom(
  outcome: RegistrationOutcome,
  judgements: readonly RegistrationJudgement[],
): Kept {
  if (!outcome.ok) {
    const registration = { state: 'failed' as const, reason: outcome.reason };
    return { registration, judgements: [...judgements] };
  }
  const { value } = outcome;
  return {
    registration: {
      state: 'registered',
      homography: [...value.homography],
      radial: value.radial && { ...value.radial, centre: [...value.radial.centre] },
      boundPixels: value.boundPixels,
      boundMicrometres: value.boundMicrometres,
      lay: value.lay,
      polarity: value.polarity,
      method: value.method,
      tilesAgreed: value.tilesAgreed,
      tilesTried: value.tilesTried,
      residual: { ...value.residual, pixels: [...value.residual.pixels] },
    },
    judgements: [...judgements],
  };
}

function loadPlane(path: string, { store }: StageContext): Promise<Plane16> {
  return loadLuminance(path, { scratch: store.scratch });
}

function fileOf(files: ReadonlyMap<string, FileResult>, name: string): FileResult {
  const file = files.get(name);
  if (!file) throw new Error(`${name} was not read`);
  return file;
}

function sizeOf({ width, height }: FileResult) {
  return { width, height };
}

function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | undefined;
  return () => (made ??= make());
}
