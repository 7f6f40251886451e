/**
 * The 24-patch colour target: where its patches are, what they should be, what they are.
 *
 * Two editions of the target exist, made before and from November 2014; they differ by a mean
 * CIEDE2000 of 0.85, nearly half of a strict tolerance, so a result always names its edition.
 *
 * References
 * - Values: the maker's published colour specifications (2016), as given by the colour-science
 *   project (BSD-3-Clause), colour/characterisation/datasets/colour_checkers/
 *   chromaticity_coordinates.py, commit 9d743142. CIE L*a*b*, D50, 2 degree observer.
 */
import type { Lab } from '../colour/lab.ts';
import { placeInQuad, type Quad } from './quad.ts';
import type { Samples } from './samples.ts';

export type TargetEdition = 'before-2014-11' | 'from-2014-11';

// prettier-ignore
export const target24: Readonly<Record<TargetEdition, readonly Lab[]>> = {
  'from-2014-11': [
    [37.54, 14.37, 14.92], // 1 dark skin
    [64.66, 19.27, 17.5], // 2 light skin
    [49.32, -3.82, -22.54], // 3 blue sky
    [43.46, -12.74, 22.72], // 4 foliage
    [54.94, 9.61, -24.79], // 5 blue flower
    [70.48, -32.26, -0.37], // 6 bluish green
    [62.73, 35.83, 56.5], // 7 orange
    [39.43, 10.75, -45.17], // 8 purplish blue
    [50.57, 48.64, 16.67], // 9 moderate red
    [30.1, 22.54, -20.87], // 10 purple
    [71.77, -24.13, 58.19], // 11 yellow green
    [71.51, 18.24, 67.37], // 12 orange yellow
    [28.37, 15.42, -49.8], // 13 blue
    [54.38, -39.72, 32.27], // 14 green
    [42.43, 51.05, 28.62], // 15 red
    [81.8, 2.67, 80.41], // 16 yellow
    [50.63, 51.28, -14.12], // 17 magenta
    [49.57, -29.71, -28.32], // 18 cyan
    [95.19, -1.03, 2.93], // 19 white 9.5
    [81.29, -0.57, 0.44], // 20 neutral 8
    [66.89, -0.75, -0.06], // 21 neutral 6.5
    [50.76, -0.13, 0.14], // 22 neutral 5
    [35.63, -0.46, -0.48], // 23 neutral 3.5
    [20.64, 0.07, -0.46], // 24 black 2
  ],
  'before-2014-11': [
    [37.986, 13.555, 14.059], // 1 dark skin
    [65.711, 18.13, 17.81], // 2 light skin
    [49.927, -4.88, -21.905], // 3 blue sky
    [43.139, -13.095, 21.905], // 4 foliage
    [55.112, 8.844, -25.399], // 5 blue flower
    [70.719, -33.397, -0.199], // 6 bluish green
    [62.661, 36.067, 57.096], // 7 orange
    [40.02, 10.41, -45.964], // 8 purplish blue
    [51.124, 48.239, 16.248], // 9 moderate red
    [30.325, 22.976, -21.587], // 10 purple
    [72.532, -23.709, 57.255], // 11 yellow green
    [71.941, 19.363, 67.857], // 12 orange yellow
    [28.778, 14.179, -50.297], // 13 blue
    [55.261, -38.342, 31.37], // 14 green
    [42.101, 53.378, 28.19], // 15 red
    [81.733, 4.039, 79.819], // 16 yellow
    [51.935, 49.986, -14.574], // 17 magenta
    [51.038, -28.631, -28.638], // 18 cyan
    [96.539, -0.425, 1.186], // 19 white 9.5
    [81.257, -0.638, -0.335], // 20 neutral 8
    [66.766, -0.734, -0.504], // 21 neutral 6.5
    [50.867, -0.153, -0.27], // 22 neutral 5
    [35.656, -0.421, -1.231], // 23 neutral 3.5
    [20.461, -0.079, -0.973], // 24 black 2
  ],
};

/** The grey row: patches 19 to 24, from white to black. */
export const greyPatches: readonly number[] = [18, 19, 20, 21, 22, 23];

export interface PatchReading {
  /** Mean of each channel over the middle of the patch, in the planes' unit. */
  readonly mean: readonly [number, number, number];
  /** Standard deviation of each channel there. */
  readonly deviation: readonly [number, number, number];
  readonly pixels: number;
}

/** Share of a patch's side that is read: the middle, clear of its frame and of blur. */
const readShare = 0.5;

/**
 * Read the 24 patches: four rows of six.
 * @param planes Red, green and blue in linear light.
 * @param outline Corners of the field of patches, clockwise from the corner at "dark skin".
 */
export function readPatches(
  planes: readonly [Samples, Samples, Samples],
  outline: Quad,
): readonly PatchReading[] {
  return Array.from({ length: 24 }, (_, patch) => {
    const column = patch % 6;
    const row = (patch - column) / 6;
    const corner = (dx: number, dy: number) =>
      placeInQuad(
        outline,
        (column + 0.5 + dx * readShare * 0.5) / 6,
        (row + 0.5 + dy * readShare * 0.5) / 4,
      );
    return readPatch(planes, [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]);
  });
}

type Corner = readonly [number, number];

function readPatch(
  planes: readonly [Samples, Samples, Samples],
  corners: readonly Corner[],
): PatchReading {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const { width, height } = planes[0];
  const [left, right] = [
    Math.max(0, Math.ceil(Math.min(...xs))),
    Math.min(width - 1, Math.max(...xs)),
  ];
  const [top, bottom] = [
    Math.max(0, Math.ceil(Math.min(...ys))),
    Math.min(height - 1, Math.max(...ys)),
  ];
  const sums = [0, 0, 0];
  const squares = [0, 0, 0];
  let pixels = 0;
  for (let y = top; y <= bottom; y += 1) {
    for (let x = left; x <= right; x += 1) {
      if (!isInside(corners, x, y)) continue;
      pixels += 1;
      for (let c = 0; c < 3; c += 1) {
        const value = planes[c].data[y * width + x];
        sums[c] += value;
        squares[c] += value * value;
      }
    }
  }
  const mean = sums.map((s) => s / pixels) as [number, number, number];
  const deviation = squares.map((s, c) => Math.sqrt(Math.max(0, s / pixels - mean[c] ** 2))) as [
    number,
    number,
    number,
  ];
  return { mean, deviation, pixels };
}

/** Inside all four sides, whichever way round they run. */
function isInside(corners: readonly Corner[], x: number, y: number): boolean {
  let positive = true;
  let negative = true;
  corners.forEach(([ax, ay], k) => {
    const [bx, by] = corners[(k + 1) % 4];
    const side = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    positive &&= side >= 0;
    negative &&= side <= 0;
  });
  return positive || negative;
}
