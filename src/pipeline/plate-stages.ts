/** All stages of one plate, in the only order that their types allow. */
import type { Finding } from '../records/finding.ts';
import type { PlateResult } from '../records/result.ts';
import { alignPlate } from './align.ts';
import { combinePlate } from './combine.ts';
import type { ContentPlate } from './content.ts';
import { inspectStage } from './inspect.ts';
import { readPlate, type SoundPlate } from './read.ts';
import { recordPlate } from './record.ts';
import type { StageContext } from './stage-context.ts';
import { tilePlate } from './tile.ts';
import { tiltStills } from './tilt-stills.ts';

export type PlateOutcome =
  | { readonly ok: true; readonly result: PlateResult }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Findings of level error stop the plate before anything of it is published. */
export async function runStages(
  plate: ContentPlate,
  key: string,
  context: StageContext,
): Promise<PlateOutcome> {
  if (!isSound(plate)) return { ok: false, findings: plate.findings };
  context.progress(`${plate.slug}: reading`);
  const read = await readPlate(plate, context);
  if (hasError(read.findings)) return { ok: false, findings: read.findings };
  context.progress(`${plate.slug}: inspecting`);
  const inspected = await inspectStage(read, context);
  context.progress(`${plate.slug}: aligning`);
  const aligned = await alignPlate(inspected, context);
  if (hasError(aligned.findings)) return { ok: false, findings: aligned.findings };
  context.progress(`${plate.slug}: combining`);
  const tiled = await tilePlate(await combinePlate(aligned, context), context);
  const stills = await tiltStills(tiled, context);
  return { ok: true, result: recordPlate(tiled, stills, key) };
}

/** `readContent` says why where a plate has no record or no sitting. */
function isSound(plate: ContentPlate): plate is SoundPlate {
  return plate.record !== null && plate.sittings.length > 0 && !hasError(plate.findings);
}

function hasError(findings: readonly Finding[]): boolean {
  return findings.some((f) => f.level === 'error');
}
