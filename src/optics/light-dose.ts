/**
 * The light that a plate receives in a sitting, in lux hours: what has been taken from it
 * cannot be given back, and some corroded plates darken under visible light.
 *
 * References
 * - An incident reading: illuminance x time = C N^2 / S, C = 250 lux seconds for a flat receiver
 *   (ISO 2720, its text not seen; constant from memory).
 * - 50 lux for the most sensitive objects on display: CIE 157:2004 (from memory).
 * - Silver chloride on corroded plates under ultraviolet and visible light: Applied Physics A
 *   (2011). No published limit for such plates was found.
 */

/** Meter constant for incident light, lux seconds at f/1 and ISO 1. */
export const incidentConstant = 250;

/** Light on the plate for one correct exposure, lux seconds, whatever the time. */
export function exposureDose(fNumber: number, iso: number, m: number, stopsMore = 0): number {
  return ((incidentConstant * (fNumber * (1 + m)) ** 2) / iso) * 2 ** stopsMore;
}

/** Lux seconds to lux hours. */
export function luxHours(luxSeconds: number): number {
  return luxSeconds / 3600;
}

export interface DosePart {
  readonly name: string;
  readonly luxHours: number;
}

/** A sum, and what it is like: hours on display at 50 lux. */
export function doseOf(parts: readonly DosePart[]): {
  readonly luxHours: number;
  readonly displayHours: number;
} {
  const sum = parts.reduce((total, part) => total + part.luxHours, 0);
  return { luxHours: sum, displayHours: sum / 50 };
}
