/** What a merge has to tell the technician. */
import { finding, type Finding } from '../../records/finding.ts';
import type { MergeRecord, NamedBracket } from './bracket-record.ts';

/** A marked step that is off by more than this share is told of: a third of a third stop. */
const mostStepError = 0.08;
/** Share of the places below which a frame brings nothing. */
const leastContribution = 1e-4;
/** Shares of the pixels from which a loss in all frames is worth a word. */
const mostClipped = 0.001;
const mostBelow = 0.01;

export function notMerged(plate: string, capture: string, why: string): Finding {
  return finding({
    ...{ level: 'warning', plate, capture, code: 'bracket-not-merged' },
    message: `The bracket "${capture}" was not merged: ${why}. Its frames are shown one by one.`,
    remedy: 'Complete or correct the frames of the bracket in sitting.yaml, then build again.',
  });
}

export function bracketFindings(
  plate: string,
  bracket: NamedBracket,
  merge: MergeRecord,
): Finding[] {
  const about = { plate, capture: bracket.id };
  return [
    ...stepFindings(about, bracket, merge),
    ...idleFrames(about, bracket, merge),
    ...movedFrames(about, bracket, merge),
    ...losses(about, merge),
  ];
}

type About = Pick<Finding, 'plate' | 'capture'>;

function stepFindings(about: About, { files }: NamedBracket, { steps }: MergeRecord): Finding[] {
  return steps.flatMap(({ shorter, longer, marked, measured }) => {
    if (measured === null || Math.abs(measured / marked - 1) <= mostStepError) return [];
    return finding({
      ...{ ...about, level: 'warning', code: 'exposure-time-off', file: files[longer].name },
      message:
        `${files[longer].name} is marked ${marked.toFixed(2)} times as long as ${files[shorter].name}, ` +
        `but holds ${measured.toFixed(2)} times the light. Expected within ${100 * mostStepError} %. The merge used the measured ratio.`,
      remedy:
        'Check the seconds in sitting.yaml and the order of the frames; a lamp that flickers also does this.',
      measured: {
        value: measured,
        unit: '',
        expected: `${marked.toFixed(2)} ± ${100 * mostStepError} %`,
      },
    });
  });
}

function idleFrames(about: About, { files }: NamedBracket, { frames }: MergeRecord): Finding[] {
  return frames.flatMap(({ contribution }, k) => {
    if (contribution >= leastContribution) return [];
    return finding({
      ...{ ...about, level: 'note', code: 'frame-adds-nothing', file: files[k].name },
      message: `${files[k].name} adds nothing to the merge: nowhere does it bring a twentieth of what the other frames know.`,
      remedy: 'Leave it out next time; every exposure is light on the plate.',
    });
  });
}

function movedFrames(about: About, { files }: NamedBracket, { frames }: MergeRecord): Finding[] {
  return frames.flatMap(({ shift, resampled }, k) => {
    if (shift === null) {
      return finding({
        ...{ ...about, level: 'note', code: 'frame-not-aligned', file: files[k].name },
        message: `Whether ${files[k].name} moved against the other frames could not be measured; it was merged as it lies.`,
        remedy: 'Look at edges in the merged picture: they are double where a frame had moved.',
      });
    }
    if (!resampled) return [];
    const pixels = Math.hypot(shift.dx, shift.dy);
    return finding({
      ...{ ...about, level: 'note', code: 'frame-moved', file: files[k].name },
      message: `${files[k].name} had moved by ${pixels.toFixed(2)} px and was shifted back before the merge.`,
      remedy: 'Use a remote release and wait for the stand to come to rest.',
      measured: { value: Number(pixels.toFixed(3)), unit: 'px', expected: 'at most 0.25 px' },
    });
  });
}

function losses(about: About, { clippedEverywhere, belowNoise }: MergeRecord): Finding[] {
  const share = (value: number) => `${(100 * value).toFixed(2)} %`;
  return [
    ...(clippedEverywhere > mostClipped
      ? [
          finding({
            ...{ ...about, level: 'warning', code: 'bracket-clipped' },
            message: `${share(clippedEverywhere)} of the pixels are clipped in every frame of "${about.capture}", more than ${share(mostClipped)}. They are marked, not filled in.`,
            remedy: 'Add a shorter exposure, until only the lamp’s own reflection clips.',
            measured: { value: clippedEverywhere, unit: '', expected: `at most ${mostClipped}` },
          }),
        ]
      : []),
    ...(belowNoise > mostBelow
      ? [
          finding({
            ...{ ...about, level: 'note', code: 'bracket-below-noise' },
            message: `${share(belowNoise)} of the pixels stand above the noise in no frame of "${about.capture}". They are marked, not filled in.`,
            remedy:
              'Add a longer exposure where the darkest parts matter and the dose of light allows it.',
            measured: { value: belowNoise, unit: '', expected: `at most ${mostBelow}` },
          }),
        ]
      : []),
  ];
}
