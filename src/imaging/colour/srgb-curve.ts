/**
 * The sRGB transfer curve, in both directions, for values from 0 to 1.
 *
 * References
 * - IEC 61966-2-1:1999, clauses 5.2 and 5.3: constants 12.92, 1.055, 0.055, 2.4 with knees
 *   0.0031308 (linear) and 0.04045 (encoded).
 */

/** Linear light to encoded value, both 0 to 1. */
export function encodeSrgb(linear: number): number {
  return linear <= 0.0031308 ? linear * 12.92 : 1.055 * linear ** (1 / 2.4) - 0.055;
}

/** Encoded value to linear light, both 0 to 1. */
export function decodeSrgb(encoded: number): number {
  return encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;
}
