/** What a registration says about a capture, as sentences that a technician can act on. */
import type { RegistrationJudgement } from '../imaging/registration/judge.ts';
import { finding, type Finding } from '../records/finding.ts';

export interface About {
  readonly plate: string;
  readonly capture: string;
  readonly file: string;
  readonly base: string;
  /** The reason of a failed registration. */
  readonly reason: string | null;
}

type Sentence = Pick<Finding, 'level' | 'message' | 'remedy'>;

export function registrationFinding(judgement: RegistrationJudgement, about: About): Finding {
  const { measured, quantity, expected, code } = judgement;
  const { plate, capture, file } = about;
  return finding({
    plate,
    capture,
    file,
    code,
    ...sentence(judgement, about),
    measured: { value: round(measured), unit: quantity, expected: expectation(code, expected) },
  });
}

function expectation(code: RegistrationJudgement['code'], expected: number): string {
  if (code === 'lens-changed') return String(expected);
  return code.startsWith('readings') || code === 'tones-unclear'
    ? `towards ${expected}`
    : `at least ${expected}`;
}

function sentence({ code, measured }: RegistrationJudgement, about: About): Sentence {
  const { capture, base, reason } = about;
  const percent = `${Math.round(measured * 100)} %`;
  switch (code) {
    case 'mirrored':
    case 'half-turned':
    case 'mirrored-and-half-turned': {
      const lay = code.replaceAll('-', ' ').replace('half turned', 'upside down');
      return {
        level: 'warning',
        message: `Capture "${capture}" lies ${lay} against the base "${base}"; it is shown the way the base lies.`,
        remedy: `If one of the two files was flipped after the sitting, put the camera's own file back.`,
      };
    }
    case 'another-plate':
      return {
        level: 'warning',
        message: `Nothing in capture "${capture}" was found in the base "${base}" (${percent} of the tiles agree, as by chance); it is shown alone.`,
        remedy:
          'Check that the file shows this plate. If it does, mark four points in both as controlPoints in sitting.yaml.',
      };
    case 'not-registered':
      return {
        level: 'warning',
        message:
          `Capture "${capture}" could not be aligned to the base "${base}" and is shown alone. ${reason ?? ''}`.trim(),
        remedy:
          'Check that the file shows this plate. If it does, mark four points in both captures as controlPoints in sitting.yaml.',
      };
    case 'readings-not-opposite':
      return {
        level: 'warning',
        message: `Captures "${capture}" and "${base}" are recorded as a positive and a negative, but their tones run the same way.`,
        remedy: 'Check the reading of both in sitting.yaml; one of them is probably mislabelled.',
      };
    case 'readings-not-same':
      return {
        level: 'warning',
        message: `Captures "${capture}" and "${base}" are recorded with the same reading, but their tones run opposite.`,
        remedy: 'Check the reading of both in sitting.yaml; one of them is probably mislabelled.',
      };
    case 'lens-changed':
      return {
        level: 'note',
        message: `Between capture "${capture}" and the base "${base}" focus or lens changed: a radial correction of ${measured.toFixed(1)} px at the corners was needed to lay them on each other.`,
        remedy: 'Leave focus, lens and distance alone until a sitting is finished.',
      };
    case 'tones-unclear':
      return {
        level: 'note',
        message: `Whether the tones of capture "${capture}" run opposite to those of "${base}" could not be told.`,
        remedy: 'Look at both; where the plate is mixed, record the reading as "mixed".',
      };
  }
}

function round(value: number): number {
  return Number(value.toPrecision(3));
}
