/**
 * The museum's accent colour, kept legible. `collection.md` gives one colour; the light and the
 * dark page each need it with enough contrast against their own ground, so it is darkened or
 * lightened in small steps until it has it.
 *
 * References
 * - W3C (2024). Web Content Accessibility Guidelines 2.2, relative luminance and contrast
 *   ratio; success criterion 1.4.3, 4.5 to 1 for text.
 */

/** The brass of a mat. */
const brass = '#8a6a24';

/** Grounds of the two themes: `--paper` in `src/styles/tokens.css`. */
export const grounds = { light: '#faf8f3', dark: '#1b1917' } as const;

/**
 * Success criterion 1.4.3 asks 4.5. A little more on paper, since washes lie between; more on
 * charcoal, where thin brass lines next to bright text look duller than they measure.
 */
const enough = { light: 4.75, dark: 7 } as const;

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

/** The colour itself, or the nearest step towards black or white with the contrast asked for. */
export function legible(colour: string, ground: string, ratio: number): string {
  const target = luminance(rgb(ground)) > 0.18 ? 0 : 255;
  const start = rgb(colour);
  for (let step = 0; step <= 100; step++) {
    const share = step / 100;
    const [r, g, b] = start.map((code) => code + (target - code) * share);
    const candidate = hexOf([r, g, b]);
    if (contrast(candidate, ground) >= ratio) return candidate;
  }
  return target === 0 ? '#000000' : '#ffffff';
}

/** The rules that set the accent on every page. */
export function accentCss(accent: string = brass): string {
  const light = legible(accent, grounds.light, enough.light);
  const dark = legible(accent, grounds.dark, enough.dark);
  return `:root{--accent:${light};--accent-dark:${dark}}@media (prefers-color-scheme:dark){:root{--accent:${dark}}}`;
}
