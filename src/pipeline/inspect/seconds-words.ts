import { said } from './inspected-sitting.ts';

/** An exposure as photographers write it: `1/60 s`, `2.5 s`. */
export function secondsWords(seconds: number): string {
  if (seconds >= 0.3) return `${said(seconds)} s`;
  return `1/${Math.round(1 / seconds)} s`;
}
