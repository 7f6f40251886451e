/**
 * A plate under a lamp that need not have been photographed, from the data planes of a `lamp`
 * layer. The reader's graphics card does the same for each pixel of the screen; this is the
 * reference that it is compared with.
 */
import { lampTerms, type TermKind } from './lamp-terms.ts';
import { type Domain, fromDomain } from './light-domain.ts';
import type { Direction } from './light-place.ts';

/** The part of a `lamp` layer's description that is needed here (`src/records/layer.ts`). */
export interface LampResponse {
  readonly planes: number;
  /** What a plane's code c stands for: `offset + step * c`. */
  readonly offset: readonly number[];
  readonly step: readonly number[];
  readonly domain: Domain;
  readonly terms: TermKind;
  readonly lamps: readonly { readonly direction: Direction }[];
  /** Row-major, 3 * (planes + 1) rows: base and factors of red, green and blue. */
  readonly response: readonly number[];
}

/** One lamp's light: what each channel is made of, as numbers for *codes* of the planes. */
export interface LampLight {
  readonly domain: Domain;
  /** Of red, green, blue. */
  readonly base: Float64Array;
  /** Row-major, 3 rows of one factor for each plane. */
  readonly factors: Float64Array;
}

/** What a lamp in this direction makes of the planes. */
export function lampLight(layer: LampResponse, direction: Direction): LampLight {
  const directions = layer.lamps.map((lamp) => lamp.direction);
  const terms = lampTerms(layer.terms, directions, direction);
  const base = new Float64Array(3);
  const factors = new Float64Array(3 * layer.planes);
  let at = 0;
  const product = (): number => {
    let sum = 0;
    for (const term of terms) sum += term * layer.response[at++];
    return sum;
  };
  for (let c = 0; c < 3; c += 1) {
    base[c] = product();
    for (let k = 0; k < layer.planes; k += 1) {
      const factor = product();
      base[c] += factor * layer.offset[k];
      factors[c * layer.planes + k] = factor * layer.step[k];
    }
  }
  return { domain: layer.domain, base, factors };
}

/**
 * One pixel under that lamp, as display codes from 0 to 255 on the sRGB curve, not rounded.
 *
 * @param codes The planes' codes of the pixel, 0 to 255.
 */
export function litPixel(
  light: LampLight,
  codes: ArrayLike<number>,
): [red: number, green: number, blue: number] {
  const channel = (c: number): number => {
    let sum = light.base[c];
    for (let k = 0; k < codes.length; k += 1) sum += light.factors[c * codes.length + k] * codes[k];
    return fromDomain(light.domain, sum);
  };
  return [channel(0), channel(1), channel(2)];
}
