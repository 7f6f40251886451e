/**
 * A few thousand pixels of all frames: enough to learn from, small enough to hold.
 *
 * Everything here is in the *display* domain, codes of 0 to 255 on the sRGB curve: differences
 * there are what a reader sees, and a glint of a mirror does not outweigh all the rest as it
 * would in linear light (measured on rendered mirrors: 3 to 10 dB worse).
 */

export interface LightSample {
  readonly lamps: number;
  readonly pixels: number;
  /** Display codes; sample of pixel p, lamp l and channel c is at `(p * lamps + l) * 3 + c`. */
  readonly codes: Uint8Array;
}

/** The first `pixels` of a sample, spread evenly over it. */
export function thinnedSample(sample: LightSample, pixels: number): LightSample {
  if (sample.pixels <= pixels) return sample;
  const each = sample.lamps * 3;
  const codes = new Uint8Array(pixels * each);
  for (let p = 0; p < pixels; p += 1) {
    const from = Math.floor(((p + 0.5) * sample.pixels) / pixels) * each;
    codes.set(sample.codes.subarray(from, from + each), p * each);
  }
  return { lamps: sample.lamps, pixels, codes };
}
