/**
 * Numbers with their units as a reader of a language meets them: as many digits as the number
 * deserves, that language's decimal sign, a narrow space that does not break before the unit, a
 * real minus. Needs nothing but the engine's own tables, so it works in a browser too.
 */
import { localeOf } from './locale.ts';

const thin = '\u202f';

export interface Measures {
  /** A number with exactly so many decimals. */
  readonly fixed: (value: number, decimals: number) => string;
  /** A number in at most `digits` significant figures, no exponent. */
  readonly figure: (value: number, digits?: number) => string;
  /** A count, grouped by thin spaces: 12 700 000. */
  readonly count: (value: number) => string;
  readonly pixels: (value: number, digits?: number) => string;
  readonly micrometres: (value: number, digits?: number) => string;
  readonly millimetres: (value: number, digits?: number) => string;
  /** Width and height in pixels. */
  readonly pixelSize: (width: number, height: number) => string;
  readonly degrees: (value: number, digits?: number) => string;
  /** A share from 0 to 1 as a percentage; what is above none never reads as none. */
  readonly percent: (share: number) => string;
  /** Decimal units, as a file manager shows them. */
  readonly bytes: (value: number) => string;
  /** Seconds as a camera shows them: 1/125 s below a quarter of a second, else decimals. */
  readonly shutter: (seconds: number) => string;
}

export function measuresIn(language: string): Measures {
  const locale = localeOf(language);
  const written = (options: Intl.NumberFormatOptions) => {
    const format = new Intl.NumberFormat(locale, { useGrouping: false, ...options });
    return (value: number) => format.format(value).replace('-', '−');
  };
  const byDigits = kept((maximumSignificantDigits) => written({ maximumSignificantDigits }));
  const byDecimals = kept((decimals) =>
    written({ minimumFractionDigits: decimals, maximumFractionDigits: decimals }),
  );
  const figure = (value: number, digits = 3) => byDigits(digits)(value);
  const withUnit = (unit: string) => (value: number, digits?: number) =>
    `${figure(value, digits)}${thin}${unit}`;
  const count = (value: number) => String(value).replace(/\B(?=(\d{3})+$)/g, thin);
  return {
    fixed: (value, decimals) => byDecimals(decimals)(value),
    figure,
    count,
    pixels: withUnit('px'),
    micrometres: withUnit('µm'),
    millimetres: withUnit('mm'),
    pixelSize: (width, height) => `${count(width)} × ${count(height)}`,
    degrees: (value, digits) => `${figure(value, digits)}°`,
    percent(share) {
      const value = share * 100;
      if (value === 0) return `0${thin}%`;
      return value < 0.01 ? `<${thin}${figure(0.01)}${thin}%` : `${figure(value, 2)}${thin}%`;
    },
    bytes(value) {
      if (value < 1000) return `${value}${thin}B`;
      return value < 1e6 ? withUnit('kB')(value / 1e3) : withUnit('MB')(value / 1e6);
    },
    shutter: (seconds) =>
      seconds < 0.25 && seconds > 0
        ? `1/${figure(1 / seconds)}${thin}s`
        : `${figure(seconds)}${thin}s`,
  };
}

/** Formats are costly to make and are asked for again and again. */
function kept<T>(make: (key: number) => T): (key: number) => T {
  const made = new Map<number, T>();
  return (key) => {
    const found = made.get(key) ?? make(key);
    made.set(key, found);
    return found;
  };
}
