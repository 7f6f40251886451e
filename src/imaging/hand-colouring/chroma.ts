/**
 * Colour without light and shade: ln(R/G) and ln(B/G) of linear light. A change of exposure or of
 * the shading moves neither; a filter in the way of the light adds to both.
 */
import { robustDeviation } from '../inspect/quantile.ts';

/** Linear RGB of one small picture, 1 at the clip level. */
export interface ColourPicture {
  readonly width: number;
  readonly height: number;
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
}

export interface ChromaPlanes {
  /** NaN where the pixel is too dark or clipped. */
  readonly red: Float32Array;
  readonly blue: Float32Array;
  /** Standard deviation of one value where the light is 1; it grows as light falls. */
  readonly noise: number;
}

/** Less light than this has no trustworthy colour, more may be clipped; own choice. */
const darkest = 0.012;
const lightest = 0.96;
/** Least light of a channel: below it the logarithm is of noise. */
const leastChannel = 0.002;

export function chromaOf(picture: ColourPicture): ChromaPlanes {
  const { width, red: R, green: G, blue: B } = picture;
  const red = new Float32Array(R.length).fill(NaN);
  const blue = new Float32Array(R.length).fill(NaN);
  for (let i = 0; i < R.length; i += 1) {
    const least = Math.min(R[i], G[i], B[i]);
    if (!(least > leastChannel) || Math.max(R[i], G[i], B[i]) > lightest) continue;
    if (lightOf(picture, i) < darkest) continue;
    red[i] = Math.log(R[i] / G[i]);
    blue[i] = Math.log(B[i] / G[i]);
  }
  return { red, blue, noise: noiseOf(picture, red, blue, width) };
}

/** Linear luminance of a pixel. */
export function lightOf({ red, green, blue }: ColourPicture, i: number): number {
  return 0.2126 * red[i] + 0.7152 * green[i] + 0.0722 * blue[i];
}

/**
 * Deviation between neighbours, which differ by little but noise, brought to light 1: photons
 * scatter by the square root of their number.
 */
function noiseOf(picture: ColourPicture, red: Float32Array, blue: Float32Array, width: number) {
  const differences: number[] = [];
  for (let i = 0; i + 1 < red.length; i += 7) {
    if ((i + 1) % width === 0 || Number.isNaN(red[i]) || Number.isNaN(red[i + 1])) continue;
    const root = Math.sqrt(lightOf(picture, i));
    differences.push((red[i + 1] - red[i]) * root, (blue[i + 1] - blue[i]) * root);
  }
  // The difference of two has the square root of 2 times the deviation of one.
  return differences.length > 20 ? robustDeviation(differences) / Math.SQRT2 : 0;
}
