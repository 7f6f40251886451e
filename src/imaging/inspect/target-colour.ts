/**
 * What the read patches of a colour target say about a capture: colour, tone, grey balance and
 * noise, in CIE L*a*b* under D50, where the target's own values are given.
 *
 * References
 * - L*a*b* and CIEDE2000: see ../colour/lab.ts and ../colour/ciede2000.ts.
 */
import { ciede2000 } from '../colour/ciede2000.ts';
import { xyzToLab, type Lab } from '../colour/lab.ts';
import { apply3, invert3, type Vector3 } from '../colour/matrix3.ts';
import { connectionToSrgb, iccWhite } from '../colour/rgb-primaries.ts';
import { quadOf, type Quad } from './quad.ts';
import type { Samples } from './samples.ts';
import { greyPatches, readPatches, target24, type TargetEdition } from './target24.ts';

export interface TargetColour {
  /** Mean and largest CIEDE2000 over the 24 patches. */
  readonly mean: number;
  readonly max: number;
  /** Patch with the largest, from 1. */
  readonly worstPatch: number;
  /** Largest difference of L* over the grey patches. */
  readonly tone: number;
  /** Largest distance in the a*b* plane over the grey patches. */
  readonly whiteBalance: number;
  /** Largest standard deviation of L* within a grey patch. */
  readonly noise: number;
}

const srgbToConnection = invert3(connectionToSrgb);
const epsilon = 216 / 24389;
const kappa = 24389 / 27;

/** CIE L*a*b* (D50) of linear sRGB light, 1 for white; values outside 0 to 1 are allowed. */
export function labOfLinear(rgb: Vector3): Lab {
  return xyzToLab(apply3(srgbToConnection, rgb), iccWhite);
}

/**
 * Measure a target against one edition.
 * @param planes Linear sRGB light, `white` for white.
 * @param outline Corners of the patches, clockwise from the corner at "dark skin".
 */
export function measureTarget(
  planes: readonly [Samples, Samples, Samples],
  outline: Quad,
  edition: TargetEdition,
  white = 65535,
): TargetColour {
  const patches = readPatches(planes, outline);
  const labs = patches.map(({ mean }) => labOfLinear(mean.map((v) => v / white) as never));
  const differences = labs.map((lab, k) => ciede2000(lab, target24[edition][k]));
  const greys = greyPatches.map((k) => {
    const [l, a, b] = labs[k];
    const [wantedL] = target24[edition][k];
    const { mean, deviation } = patches[k];
    return {
      tone: Math.abs(l - wantedL),
      balance: Math.hypot(a, b),
      noise: lightnessNoise(mean, deviation, white),
    };
  });
  const max = Math.max(...differences);
  return {
    mean: differences.reduce((sum, d) => sum + d, 0) / differences.length,
    max,
    worstPatch: differences.indexOf(max) + 1,
    tone: Math.max(...greys.map((g) => g.tone)),
    whiteBalance: Math.max(...greys.map((g) => g.balance)),
    noise: Math.max(...greys.map((g) => g.noise)),
  };
}

/** Standard deviation of L*, from that of the green channel, which carries most of the lightness. */
function lightnessNoise(
  mean: readonly [number, number, number],
  deviation: readonly [number, number, number],
  white: number,
): number {
  const level = Math.max(1e-6, mean[1] / white);
  const slope = level > epsilon ? 116 / (3 * level ** (2 / 3)) : kappa;
  return slope * (deviation[1] / white);
}

/** The ways in which a target's corners can have been given, with what is wrong in words. */
export const cornerOrders: readonly {
  readonly order: string;
  readonly corners: readonly number[];
}[] = [
  { order: 'as given', corners: [0, 1, 2, 3] },
  { order: 'turned by half', corners: [2, 3, 0, 1] },
  { order: 'mirrored', corners: [1, 0, 3, 2] },
  { order: 'mirrored and turned by half', corners: [3, 2, 1, 0] },
  { order: 'turned by a quarter', corners: [1, 2, 3, 0] },
  { order: 'turned by three quarters', corners: [3, 0, 1, 2] },
];

/** The order of the same four corners under which the target fits best. */
export function bestCornerOrder(
  planes: readonly [Samples, Samples, Samples],
  { corners }: Quad,
  edition: TargetEdition,
  white = 65535,
): { readonly order: string; readonly mean: number } {
  return cornerOrders
    .map(({ order, corners: places }) => {
      const [a, b, c, d] = places.map((k) => corners[k]);
      return { order, mean: measureTarget(planes, quadOf([a, b, c, d]), edition, white).mean };
    })
    .reduce((best, next) => (next.mean < best.mean ? next : best));
}
