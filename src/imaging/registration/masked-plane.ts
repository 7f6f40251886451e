/**
 * Log-luminance with a mask: the form in which two captures of one plate are compared.
 *
 * The logarithm makes a change of exposure an offset and gives shadows and lights the same say.
 * Clipped samples hold no detail, and the bloom around them is no detail of the plate, so both
 * are masked and not compared.
 */

export interface MaskedPlane {
  readonly width: number;
  readonly height: number;
  /** Natural logarithm of linear luminance plus {@link shadowFloor}. */
  readonly data: Float32Array;
  /** 1 where the sample may be compared, 0 where it is clipped or outside of the capture. */
  readonly usable: Uint8Array;
}

/** Added to linear luminance (0 to 1) before the logarithm, so that noise in black stays small. */
export const shadowFloor = 0.02;

/** Linear luminance from which a sample counts as clipped: code 253 of 255 in sRGB encoding. */
export const clipLevel = 0.982;

/** The largest number of a `Plane16`. */
export const white = 65535;

/** Table of log-luminance for every number of a `Plane16`. */
export function logTable(): Float32Array {
  const table = new Float32Array(white + 1);
  for (let i = 0; i <= white; i += 1) table[i] = Math.log(shadowFloor + i / white);
  return table;
}

/** Half the size: the mean of 2 x 2 samples, usable where all four are. */
export function halve(plane: MaskedPlane): MaskedPlane {
  const width = plane.width >> 1;
  const height = plane.height >> 1;
  const data = new Float32Array(width * height);
  const usable = new Uint8Array(width * height);
  const { data: d, usable: u, width: w } = plane;
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const i = 2 * y * w + 2 * x;
      data[y * width + x] = 0.25 * (d[i] + d[i + 1] + d[i + w] + d[i + w + 1]);
      usable[y * width + x] = u[i] & u[i + 1] & u[i + w] & u[i + w + 1];
    }
  }
  return { width, height, data, usable };
}

/** Halved again and again until neither side is longer than `longest`; the first is the plane. */
export function halvings(plane: MaskedPlane, longest: number): readonly MaskedPlane[] {
  const levels = [plane];
  for (let last = plane; Math.max(last.width, last.height) > longest;) {
    last = halve(last);
    levels.push(last);
  }
  return levels;
}

/** Spread the unusable samples by `radius` pixels to all sides (a square). */
export function spreadMask(plane: MaskedPlane, radius: number): MaskedPlane {
  const { width, height } = plane;
  const across = new Uint8Array(width * height);
  const usable = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1) {
    spreadLine(plane.usable, across, y * width, 1, width, radius);
  }
  for (let x = 0; x < width; x += 1) spreadLine(across, usable, x, width, height, radius);
  return { ...plane, usable };
}

function spreadLine(
  from: Uint8Array,
  to: Uint8Array,
  offset: number,
  stride: number,
  length: number,
  radius: number,
): void {
  // `until` is the first position that no unusable sample so far reaches.
  let until = 0;
  for (let i = 0; i < Math.min(radius, length); i += 1) {
    if (!from[offset + i * stride]) until = i + radius + 1;
  }
  for (let i = 0; i < length; i += 1) {
    const ahead = i + radius;
    if (ahead < length && !from[offset + ahead * stride]) until = ahead + radius + 1;
    to[offset + i * stride] = i < until ? 0 : 1;
  }
}
