/**
 * How steady the lamp of a set was from frame to frame, from its highlight on the ball: a
 * mirroring sphere throws the light of a far lamp evenly all round, so the sum of the highlight
 * goes with the lamp's strength wherever it stands. Glass mirrors a lamp at 15 degrees above the
 * plate a tenth better than one overhead (Fresnel); a ball's material is not known, so that is in
 * the figure.
 *
 * References
 * - Hecht, E. Optics, chapter on geometrical optics: a small sphere in a parallel beam reflects
 *   the flux of its cross-section evenly into all directions (from memory).
 */
import { median, robustDeviation } from '../inspect/quantile.ts';
import type { Estimate } from '../plane.ts';
import type { Highlight } from './ball-highlight.ts';

export interface Strengths {
  /** Of each frame against the median; null where it is not told. */
  readonly strengths: readonly (number | null)[];
  /** Standard deviation from the median absolute deviation, per cent of the median. */
  readonly spreadPercent: number;
  readonly clipped: number;
}

export interface BallLamp {
  /** Null where no highlight was found. */
  readonly highlight: Highlight | null;
  /** From ball to lamp over from plate's centre to lamp; 1 where it is not known. */
  readonly farther: number;
}

/** Fewer pixels than this do not tell a sum of light to some per cent. Own choice. */
const fewestPixels = 12;
/** Frames that must tell. */
const share = 0.5;

export function lampStrengths(lamps: readonly BallLamp[]): Estimate<Strengths> {
  const clipped = lamps.filter(({ highlight }) => highlight?.clipped).length;
  const lights = lamps.map(({ highlight, farther }) =>
    highlight && !highlight.clipped && highlight.pixels >= fewestPixels
      ? highlight.light * farther ** 2
      : null,
  );
  const told = lights.filter((light) => light !== null);
  if (told.length < share * lamps.length) {
    const small = lamps.length - told.length - clipped;
    const reason =
      `its highlight is clipped in ${clipped} of ${lamps.length} frames` +
      (small > 0 ? ` and too small, or absent, in ${small}` : '');
    return { ok: false, reason };
  }
  const middle = median(told);
  const strengths = lights.map((light) => (light === null ? null : light / middle));
  const spreadPercent = (100 * robustDeviation(told)) / middle;
  return { ok: true, value: { strengths, spreadPercent, clipped } };
}
