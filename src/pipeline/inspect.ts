/**
 * Stage *inspect*: what is wrong with the captures, heard while the plate is still on the
 * stand. Measurements are kept under the digests of the files; the findings are drawn from
 * them anew each time, since limits and records change without the pictures.
 */
import { join } from 'node:path';
import type { Finding } from '../records/finding.ts';
import type { Inspection } from '../records/inspection.ts';
import { setupOf, type CaptureRecord } from '../records/sitting.ts';
import { tolerances as ownTolerances, type Tolerances } from '../records/tolerances.ts';
import { baseCapture } from './align.ts';
import type { ContentSitting } from './content.ts';
import type { InspectedCapture, InspectedSitting, Judge } from './inspect/inspected-sitting.ts';
import { compareSharpness } from './inspect/compare-sharpness.ts';
import { inspectionOf } from './inspect/inspection-record.ts';
import { judgeCamera } from './inspect/judge-camera.ts';
import { judgeClipping } from './inspect/judge-clipping.ts';
import { judgeColour } from './inspect/judge-colour.ts';
import { judgeEvenness } from './inspect/judge-evenness.ts';
import { judgeFrames } from './inspect/judge-frames.ts';
import { judgeReadings } from './inspect/judge-readings.ts';
import { judgeResolution } from './inspect/judge-resolution.ts';
import { judgeSetUp } from './inspect/judge-set-up.ts';
import { judgeSharpness } from './inspect/judge-sharpness.ts';
import { measureBackground } from './inspect/measure-background.ts';
import { measureCapture, type CaptureFiles } from './inspect/measure-capture.ts';
import { measureGhosts } from './inspect/measure-ghost.ts';
import { measuresSchema, type Measures } from './inspect/measures.ts';
import { bestScale } from './inspect/plate-size.ts';
import { keyOf, type KeyPart } from './key.ts';
import { pictureFiles, type ReadPlate } from './read.ts';
import type { StageContext } from './stage-context.ts';
import { keepJson } from './store.ts';

/** Raised when the same captures would be measured or judged otherwise. */
export const inspectVersion = 3;

export interface InspectedPlate extends ReadPlate {
  /** By `<sitting>/<capture>`; null where no file could be read. */
  readonly inspections: ReadonlyMap<string, Inspection | null>;
  /** Scale of the first sitting's base: as stated, else from the plate's edges. */
  readonly scale: ReturnType<typeof bestScale>;
}

const judges: readonly Judge[] = [
  judgeFrames,
  judgeCamera,
  judgeClipping,
  judgeEvenness,
  judgeSharpness,
  judgeColour,
  judgeResolution,
  judgeSetUp,
  judgeReadings,
];

export async function inspectStage(
  read: ReadPlate,
  context: StageContext,
  tolerances: Tolerances = ownTolerances,
): Promise<InspectedPlate> {
  const findings: Finding[] = [...read.findings];
  const inspections = new Map<string, Inspection | null>();
  let scale: InspectedPlate['scale'] = null;
  for (const content of read.plate.sittings) {
    const sitting = await inspectSitting(read, content, context, tolerances);
    if (content === read.plate.sittings[0]) scale = bestScale(sitting);
    findings.push(...judges.flatMap((judge) => judge(sitting)));
    for (const capture of sitting.captures) {
      inspections.set(`${content.id}/${capture.record.id}`, inspectionOf(sitting, capture));
    }
  }
  return { ...read, findings, inspections, scale };
}

async function inspectSitting(
  read: ReadPlate,
  content: ContentSitting,
  context: StageContext,
  tolerances: Tolerances,
): Promise<InspectedSitting> {
  const { record } = content;
  const base = baseCapture(content).id;
  const captures: InspectedCapture[] = [];
  for (const [k, capture] of record.captures.entries()) {
    context.progress(`${read.plate.slug}: inspecting ${k + 1}/${record.captures.length}`);
    const files = filesOf(read, capture);
    captures.push({
      record: capture,
      setupKind: setupOf(record, capture)?.kind ?? 'other',
      frames: files.frames,
      measures: files.frames.length === 0 ? null : await keptMeasures(files, context),
    });
  }
  return {
    slug: read.plate.slug,
    plate: read.plate.record,
    id: content.id,
    record,
    base,
    captures,
    background: await measureBackground(read, captures, context),
    softness: await compareSharpness(
      captures,
      base,
      (name) => join(read.plate.folder, 'captures', name),
      context,
    ),
    ghosts: await measureGhosts(read.plate.folder, record, captures, context),
    tolerances,
  };
}

function filesOf(read: ReadPlate, record: CaptureRecord): CaptureFiles {
  const known = (name: string | undefined) =>
    name === undefined ? null : (read.files.get(name) ?? null);
  return {
    record,
    frames: pictureFiles(record).flatMap((name) => known(name) ?? []),
    blank: known(record.blank),
    target: known(record.target?.file),
    pathOf: (name) => join(read.plate.folder, 'captures', name),
  };
}

function keptMeasures(files: CaptureFiles, context: StageContext): Promise<Measures> {
  const { record, frames, blank, target } = files;
  const key = keyOf({
    version: inspectVersion,
    kind: record.kind,
    frames: frames.map(({ name, sha256 }) => [name, sha256]),
    blank: blank && [blank.name, blank.sha256],
    target: target && [target.name, target.sha256],
    wanted: record.target as unknown as KeyPart,
    blankWanted: record.blank,
  });
  return keepJson(
    context.store,
    'inspect',
    key,
    (value) => measuresSchema.parse(value),
    () => measureCapture(files, { scratch: context.store.scratch }),
    context.tally,
  );
}
