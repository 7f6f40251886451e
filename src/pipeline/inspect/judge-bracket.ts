/**
 * The steps of a bracket: the marked times, what the camera wrote, and what the pixels say must
 * agree, since the merge divides by the marked times.
 */
import { isSameExposure, stopsBetween } from '../../imaging/inspect/bracket-steps.ts';
import type { Finding } from '../../records/finding.ts';
import type { FileResult } from '../../records/result.ts';
import { limit } from '../../records/tolerances.ts';
import {
  about,
  kept,
  said,
  type InspectedCapture,
  type InspectedSitting,
} from './inspected-sitting.ts';
import { secondsWords } from './seconds-words.ts';

export function judgeBracket(sitting: InspectedSitting, capture: InspectedCapture): Finding[] {
  const { record, frames, measures } = capture;
  const most = limit(sitting.tolerances, 'bracket-step').value;
  const marked = frames.map((file) => markedSeconds(record, file));
  const wrong = frames.findIndex(({ exif }, k) => {
    const stated = marked[k];
    return stated !== null && exif.seconds !== null && !isSameExposure(stated, exif.seconds, most);
  });
  if (wrong >= 0) {
    const written = frames[wrong].exif.seconds ?? NaN;
    return [stepFinding(sitting, record.id, frames[wrong], marked[wrong] ?? NaN, written)];
  }
  return judgeMeasuredSteps(sitting, capture, marked, measures?.steps ?? []);
}

function markedSeconds(record: InspectedCapture['record'], file: FileResult): number | null {
  return record.frames?.find((f) => f.file === file.name)?.seconds ?? file.exif.seconds;
}

function stepFinding(
  sitting: InspectedSitting,
  id: string,
  file: FileResult,
  stated: number,
  written: number,
): Finding {
  return about(sitting, id, file.name, {
    level: 'warning',
    code: 'bracket-step',
    message: `The sitting marks ${file.name} as ${secondsWords(stated)}, the camera wrote ${secondsWords(written)}: ${said(Math.abs(stopsBetween(stated, written)))} stops apart.`,
    remedy: 'Correct the seconds in sitting.yaml; the merge divides by them.',
    measured: { value: kept(written), unit: 's', expected: secondsWords(stated) },
  });
}

/** What the pixels say: catches frames in the wrong order and a lamp that was changed. */
function judgeMeasuredSteps(
  sitting: InspectedSitting,
  { record, frames }: InspectedCapture,
  marked: readonly (number | null)[],
  steps: readonly (number | null)[],
): Finding[] {
  const most = limit(sitting.tolerances, 'bracket-measured-step').value;
  for (const [k, measured] of steps.entries()) {
    const [first, second] = [marked[k], marked[k + 1]];
    if (measured === null || first === null || second === null) continue;
    const wanted = stopsBetween(first, second);
    if (Math.abs(measured - wanted) <= most) continue;
    return [
      about(sitting, record.id, frames[k + 1].name, {
        level: 'warning',
        code: 'bracket-step',
        message: `From ${frames[k].name} to ${frames[k + 1].name} the light grows by ${said(measured)} stops, but the marked times differ by ${said(wanted)}. Expected to agree within ${most}.`,
        remedy:
          'Check the order of the frames and that lamp and aperture stayed the same; the merge divides by the marked times.',
        measured: { value: kept(measured), unit: 'EV', expected: `${said(wanted)} ± ${most}` },
      }),
    ];
  }
  return [];
}
