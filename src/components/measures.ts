/**
 * Numbers with their units as a reader meets them: as many digits as the number deserves, a
 * narrow space that does not break before the unit, a real minus.
 */

const thin = '\u202f';

/** A number in at most `digits` significant figures, no exponent. */
export function figure(value: number, digits = 3): string {
  return new Intl.NumberFormat('en-GB', { maximumSignificantDigits: digits, useGrouping: false })
    .format(value)
    .replace('-', '−');
}

/** A count, grouped by thin spaces: 12 700 000. */
export function count(value: number): string {
  return String(value).replace(/\B(?=(\d{3})+$)/g, thin);
}

const withUnit = (unit: string) => (value: number, digits?: number) =>
  `${figure(value, digits)}${thin}${unit}`;

export const pixels = withUnit('px');
export const micrometres = withUnit('µm');
export const millimetres = withUnit('mm');
/** Width and height in pixels. */
export const pixelSize = (width: number, height: number): string =>
  `${count(width)} × ${count(height)}`;

export function degrees(value: number): string {
  return `${figure(value)}°`;
}

/** A share from 0 to 1 as a percentage; what is above none never reads as none. */
export function percent(share: number): string {
  const value = share * 100;
  if (value === 0) return `0${thin}%`;
  return value < 0.01 ? `below 0.01${thin}%` : `${figure(value, 2)}${thin}%`;
}

/** Decimal units, as a file manager shows them. */
export function bytes(value: number): string {
  if (value < 1000) return `${value}${thin}B`;
  if (value < 1e6) return `${figure(value / 1e3)}${thin}kB`;
  return `${figure(value / 1e6)}${thin}MB`;
}

/** Seconds as a camera shows them: 1/125 s below a quarter of a second, else decimals. */
export function shutter(seconds: number): string {
  return seconds < 0.25 && seconds > 0
    ? `1/${figure(1 / seconds)}${thin}s`
    : `${figure(seconds)}${thin}s`;
}
