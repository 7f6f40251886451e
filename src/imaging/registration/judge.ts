/**
 * What a registration says about the file and the sitting record: findings as codes and numbers.
 * The stage that knows the plate and the capture turns them into sentences.
 */
import type { RegistrationOutcome } from './estimate.ts';
import { oppositeFrom } from './polarity.ts';
import { gate } from './tile-check.ts';

export type RegistrationCode =
  /** The file is a mirror image of the base. */
  | 'mirrored'
  /** The file is upside down. */
  | 'half-turned'
  | 'mirrored-and-half-turned'
  /** Nothing in the capture lies on the base: probably another plate. */
  | 'another-plate'
  /** Something agrees, yet not enough: shown alone. */
  | 'not-registered'
  /** A pair recorded as positive and negative has the same tones. */
  | 'readings-not-opposite'
  /** Two captures recorded with the same reading have opposite tones. */
  | 'readings-not-same'
  /** The tones of a recorded pair cannot be told apart. */
  | 'tones-unclear'
  /** A radial term was needed: focus or lens changed between the captures. */
  | 'lens-changed';

export interface RegistrationJudgement {
  readonly code: RegistrationCode;
  /** The figure that the code rests on. */
  readonly measured: number;
  /** What that figure is, with its unit. */
  readonly quantity: string;
  /** The figure that would have given no finding. */
  readonly expected: number;
}

/** What the sitting record says about the tones of the two captures. */
export interface RecordedReadings {
  readonly base: string;
  readonly moving: string;
}

/**
 * Agreement that is chance. A tile of another plate has its highest peak anywhere within 8
 * pixels, so within 1.5 pixels in pi * 1.5^2 / 17^2 = 2.4 % of all cases, taken twice here; and
 * the eight parameters of a map can be chosen so that four tiles agree whatever they show.
 */
const chance = { share: 0.05, tiles: 4 };

export function judgeRegistration(
  outcome: RegistrationOutcome,
  readings: RecordedReadings,
): readonly RegistrationJudgement[] {
  if (!outcome.ok) return [judgeFailure(outcome.check)];
  const { value } = outcome;
  const found: RegistrationJudgement[] = [];
  if (value.lay !== 'as-is') {
    found.push({
      code: value.lay === 'mirrored and half-turned' ? 'mirrored-and-half-turned' : value.lay,
      measured: value.tilesAgreed / value.tilesTried,
      quantity: 'share of tiles that agree in this lay',
      expected: gate.leastShare,
    });
  }
  if (value.radial) {
    found.push({
      code: 'lens-changed',
      measured: Math.abs(value.radial.coefficient * value.radial.radius),
      quantity: 'px at the corners of the frame',
      expected: 0,
    });
  }
  const tones = judgeTones(value.polarity, value.tones.oppositeShare, readings);
  return tones ? [...found, tones] : found;
}

function judgeFailure(check: { tilesAgreed: number; tilesTried: number } | null) {
  const share = check && check.tilesTried > 0 ? check.tilesAgreed / check.tilesTried : 0;
  const most = check ? chance.tiles + chance.share * check.tilesTried : 0;
  const code = check && check.tilesAgreed <= most ? 'another-plate' : 'not-registered';
  const quantity = 'share of tiles that agree';
  return { code, measured: share, quantity, expected: gate.leastShare } as const;
}

function judgeTones(
  polarity: 'same' | 'opposite' | 'unclear',
  measured: number,
  { base, moving }: RecordedReadings,
): RegistrationJudgement | null {
  const clear = (reading: string) => reading === 'positive' || reading === 'negative';
  if (!clear(base) || !clear(moving)) return null;
  const quantity = 'share of blocks with clearly opposite tones';
  const expected = base === moving ? 0 : oppositeFrom;
  if (base !== moving && polarity === 'same') {
    return { code: 'readings-not-opposite', measured, quantity, expected };
  }
  if (base === moving && polarity === 'opposite') {
    return { code: 'readings-not-same', measured, quantity, expected };
  }
  if (base !== moving && polarity === 'unclear') {
    return { code: 'tones-unclear', measured, quantity, expected };
  }
  return null;
}
