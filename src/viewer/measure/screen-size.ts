/**
 * How large this screen is, told by the reader once: a line is made as wide as a card that has
 * the size of a bank card. Kept in this browser; nothing is sent.
 *
 * References
 * - ISO/IEC 7810:2019, format ID-1: 85.60 mm wide (from memory).
 */

/** Millimetres. */
export const cardWidth = 85.6;

const key = 'mirrorleaf screen';

/** CSS pixels per millimetre of this screen; null while the reader has not told. */
export function screenScale(): number | null {
  try {
    const kept = Number(localStorage.getItem(key));
    return kept > 1 && kept < 40 ? kept : null;
  } catch {
    return null;
  }
}

/** @param pixels Width of the line, CSS pixels, when it is as wide as the card. */
export function keepScreenScale(pixels: number): number {
  const scale = pixels / cardWidth;
  try {
    localStorage.setItem(key, String(scale));
  } catch {
    // It is then true for this visit alone.
  }
  return scale;
}
