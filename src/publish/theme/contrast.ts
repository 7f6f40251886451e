/**
 * Contrast of two colours, and the nearest colour that has enough of it.
 *
 * References
 * - W3C (2024). Web Content Accessibility Guidelines 2.2, relative luminance and contrast
 *   ratio; success criterion 1.4.3, 4.5 to 1 for text.
 */

type Rgb = readonly [number, number, number];

function rgb(hex: string): Rgb {
  const value = parseInt(hex.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255];
}

function hexOf(colour: Rgb): string {
  return `#${colour.map((code) => Math.round(code).toString(16).padStart(2, '0')).join('')}`;
}

/** Relative luminance of encoded sRGB codes, 0 to 1. */
function luminance(colour: Rgb): number {
  const [r, g, b] = colour.map((code) => {
    const part = code / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio of two colours written #rrggbb, 1 to 21. */
export function contrast(a: string, b: string): number {
  const [low, high] = [luminance(rgb(a)), luminance(rgb(b))].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

/** Encoded codes of `a` moved towards `b` by a share from 0 to 1; all written #rrggbb. */
export function mixed(a: string, b: string, share: number): string {
  const [from, to] = [rgb(a), rgb(b)];
  const [red, green, blue] = from.map((code, k) => code + (to[k] - code) * share);
  return hexOf([red, green, blue]);
}

/** The colour itself, or the nearest step towards black or white with the contrast asked for. */
export function legible(colour: string, ground: string, ratio: number): string {
  const target = luminance(rgb(ground)) > 0.18 ? '#000000' : '#ffffff';
  for (let step = 0; step <= 100; step++) {
    const candidate = mixed(colour, target, step / 100);
    if (contrast(candidate, ground) >= ratio) return candidate;
  }
  return target;
}
