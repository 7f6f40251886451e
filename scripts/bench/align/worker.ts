/**
 * One share of the pairs: `worker.ts SEED PAIRS FOREIGN PART PARTS` writes a JSON line per pair.
 * In its own process, so that CPU time is that of the alignment alone.
 */
import { cornerDistance } from '../../../src/imaging/registration/homography.ts';
import { register } from '../../../src/imaging/registration/register.ts';
import { alignCase, kindOf, type Kind } from './cases.ts';

export interface PairResult {
  readonly index: number;
  readonly kind: Kind;
  readonly accepted: boolean;
  /** Mean corner error in base pixels, null where nothing was accepted or there is no truth. */
  readonly error: number | null;
  readonly bound: number | null;
  readonly layRight: boolean | null;
  /** Whether the file was mirrored or half-turned. */
  readonly flipped: boolean;
  readonly polarity: string | null;
  readonly method: string | null;
  readonly cpuSeconds: number;
  readonly note: string;
}

function measure(seed: number, index: number, kind: Kind): PairResult {
  const { base, moving, truth, lay } = alignCase(seed, index, kind);
  const before = process.cpuUsage();
  const outcome = register(base, moving);
  const { user, system } = process.cpuUsage(before);
  const common = { index, kind, flipped: lay !== 'as-is', cpuSeconds: (user + system) / 1e6 };
  if (!outcome.ok) {
    const nothing = { error: null, bound: null, layRight: null, polarity: null, method: null };
    return { ...common, ...nothing, accepted: false, note: outcome.reason };
  }
  const { homography, boundPixels, method, polarity, tilesAgreed, tilesTried } = outcome.value;
  return {
    ...common,
    accepted: true,
    error: truth && cornerDistance(homography, truth, base.width, base.height),
    bound: boundPixels,
    layRight: outcome.value.lay === lay,
    polarity,
    method,
    note: `${tilesAgreed} of ${tilesTried}`,
  };
}

const [seed, pairs, foreign, part, parts] = process.argv.slice(2).map(Number);
for (let index = part; index < pairs + foreign; index += parts) {
  console.log(JSON.stringify(measure(seed, index, kindOf(index, pairs))));
}
