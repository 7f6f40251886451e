/**
 * The pairs of the alignment bench: rendered plates whose map is known without remainder.
 *
 * Every third pair is weak: a faded, tarnished plate, a soft and noisy negative in an uneven
 * field. The others are ordinary: some glare, scratches that only the negative shows. Lays go
 * round all four. A number of further pairs are captures of two different plates.
 */
import type { Homography } from '../../../src/imaging/conventions.ts';
import type { Plane16 } from '../../../src/imaging/plane.ts';
import { lays, type Lay } from '../../../src/imaging/registration/lay.ts';
import { numbersFrom, seedOf } from '../../../src/imaging/render/seeded.ts';
import { renderPair, type PairOptions } from '../../../src/imaging/render/test-pair.ts';

export type Kind = 'ordinary' | 'weak' | 'foreign';

export interface AlignCase {
  readonly kind: Kind;
  readonly lay: Lay;
  readonly base: Plane16;
  readonly moving: Plane16;
  /** From moving to base; null where the two show different plates. */
  readonly truth: Homography | null;
}

/** Size of the rendered captures, pixels. */
export const caseSize = { width: 1000, height: 750 };

export function kindOf(index: number, ordinaryAndWeak: number): Kind {
  if (index >= ordinaryAndWeak) return 'foreign';
  return index % 3 === 2 ? 'weak' : 'ordinary';
}

/** Pair number `index` of a series. The same seed and index give the same samples. */
export function alignCase(seed: number, index: number, kind: Kind): AlignCase {
  const next = numbersFrom(seedOf(`align ${kind}`, seed * 100_003 + index));
  const between = (low: number, high: number) => low + (high - low) * next();
  const lay = lays[Math.floor(4 * next())];
  const plate = Math.floor(next() * 2 ** 31);
  const options: PairOptions = {
    ...caseSize,
    ...(kind === 'weak'
      ? {
          noise: 2,
          blur: between(0.8, 1.6),
          tarnish: between(60, 120),
          density: between(0.25, 0.45),
          glare: between(0.2, 0.7),
        }
      : {
          noise: 1,
          blur: between(0.5, 0.9),
          tarnish: between(0, 60),
          density: between(0.5, 0.8),
          glare: between(0, 0.6),
        }),
    newScratches: Math.floor(between(0, 25)),
    lay,
    move: { shift: 1.5, turn: 2.5, tilt: 1, scale: 0.015 },
  };
  const pair = renderPair(plate, options);
  const foreign = kind === 'foreign';
  const other = foreign ? renderPair((plate ^ 0x5bd1e995) >>> 1, options) : pair;
  return {
    kind,
    lay,
    base: pair.positive,
    moving: other.negative,
    truth: foreign ? null : pair.homography,
  };
}
