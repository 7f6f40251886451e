/** What Tilt says of an angle and of what the numbers refuse. */
import type { TiltReading } from '../imaging/tilt.ts';
import { measures, words } from './words.ts';

/** The angle, and the reading where it can be told. */
export function heldWords(tilt: number, reading: TiltReading | null): string {
  return [degrees(tilt), reading && words.tilt.reading[reading]].filter(Boolean).join(', ');
}

/** "7.3°" */
export const degrees = (value: number) => `${measures.fixed(value, 1)}°`;

/** A reason of the numbers, which are written in English, in the page's language. */
export function said(reason: string): string {
  return words.tilt.reasons[reason] ?? reason;
}
