/**
 * Tilt: how a mirror-like plate turns from positive to negative in the hand.
 *
 * What the eye sees is a sum in linear light, `V = a P + b N`: P the picture under a lamp before
 * a dark surround (light scattered by the particles), N the picture reflecting a bright even
 * field (the mirror), a the lamp's strength, b the luminance of what the mirror reflects, both
 * in units of the light that their capture had. Tilting the plate by an angle turns the
 * reflected direction by twice that angle, so b follows how much of the bright part of the room
 * has come into the mirror. The sum is then divided by a + b, as an eye adapts: this keeps the
 * tone scale on the screen and does not change which of two places is brighter.
 *
 * What is left out: the plate's own curvature, the change of the lamp's cosine (under 2 % within
 * 10 degrees), and the polarisation of the reflection.
 *
 * References
 * - Law of reflection: a mirror turned by an angle turns the ray by twice that angle
 *   (Hecht, E. Optics, chapter on plane mirrors; from memory, edition not checked).
 * - Michelson contrast (Imax - Imin) / (Imax + Imin): Born and Wolf, Principles of Optics,
 *   section 7.3, "visibility" (from memory).
 */
import { decodeSrgb, encodeSrgb } from './colour/srgb-curve.ts';
import type { Estimate, Plane } from './plane.ts';

export const rooms = ['dark', 'window', 'bright'] as const;
export type Room = (typeof rooms)[number];

export function isRoom(word: string): word is Room {
  return rooms.some((room) => room === word);
}

/** What stands around the plate. Angles are those of the reflected direction, degrees. */
export interface RoomLight {
  /** What the mirror reflects before it is tilted: the reader's own dark clothes. */
  readonly surround: number;
  /** Luminance of the bright part. */
  readonly bright: number;
  /** Where the bright part begins and ends. */
  readonly from: number;
  readonly to: number;
  /** Angular width over which the mirror gathers: the plate's own extent as the eye sees it. */
  readonly spread: number;
}

/** Invented rooms that differ in how much of them is bright; b is relative to the capture of N. */
export const roomLight: Readonly<Record<Room, RoomLight>> = {
  dark: { surround: 0.01, bright: 0.06, from: 14, to: 90, spread: 14 },
  window: { surround: 0.03, bright: 6, from: 18, to: 90, spread: 14 },
  bright: { surround: 0.35, bright: 8, from: 8, to: 90, spread: 14 },
};

/** The hand's range: the reflected direction moves over twice this. Degrees. */
export const tiltLimit = 20;

/** The share, 0 to 1, of the gathered directions that meet the bright part at a tilt. */
export function brightShare(tiltDegrees: number, room: RoomLight): number {
  const centre = 2 * tiltDegrees;
  const low = Math.max(room.from, centre - room.spread / 2);
  const high = Math.min(room.to, centre + room.spread / 2);
  return Math.min(1, Math.max(0, (high - low) / room.spread));
}

/** b: luminance that the mirror reflects at a tilt, relative to the capture of N. */
export function reflectedLuminance(tiltDegrees: number, room: RoomLight): number {
  return room.surround + (room.bright - room.surround) * brightShare(tiltDegrees, room);
}

/** The least tilt, degrees, at which the mirror reflects a luminance; null when none does. */
export function tiltFor(luminance: number, room: RoomLight): number | null {
  if (luminance <= reflectedLuminance(0, room)) return null;
  const share = (luminance - room.surround) / (room.bright - room.surround);
  if (share > 1) return null;
  const tilt = (room.from - room.spread / 2 + share * room.spread) / 2;
  return tilt <= tiltLimit ? tilt : null;
}

/** Mean linear luminance of a plate's highlights and shadows in both captures. */
export interface Tones {
  readonly positiveHighlight: number;
  readonly positiveShadow: number;
  readonly negativeHighlight: number;
  readonly negativeShadow: number;
}

/**
 * b / a at which highlight and shadow are equally bright:
 * (P_h - P_s) / (N_s - N_h). Fails when the second picture does not reverse the first.
 */
export function turningPoint(tones: Tones): Estimate<number> {
  const gain = tones.positiveHighlight - tones.positiveShadow;
  const loss = tones.negativeShadow - tones.negativeHighlight;
  if (!(gain > 1e-4)) return { ok: false, reason: 'the positive has no tones to compare here' };
  if (!(loss > 1e-4)) return { ok: false, reason: 'the negative does not reverse the tones here' };
  return { ok: true, value: gain / loss };
}

/** Michelson contrast of highlights over shadows in a P + b N, -1 to 1. Below 0: negative. */
export function readingContrast(tones: Tones, a: number, b: number): number {
  const highlight = a * tones.positiveHighlight + b * tones.negativeHighlight;
  const shadow = a * tones.positiveShadow + b * tones.negativeShadow;
  const sum = highlight + shadow;
  return sum > 0 ? (highlight - shadow) / sum : 0;
}

/** Contrast below this reads neither way: our own choice, a quarter of a usual print's. */
const turningContrast = 0.08;

export const tiltReadings = ['reads positive', 'turning', 'reads negative'] as const;
export type TiltReading = (typeof tiltReadings)[number];

export function tiltReading(contrast: number): TiltReading {
  if (Math.abs(contrast) < turningContrast) return 'turning';
  return contrast > 0 ? 'reads positive' : 'reads negative';
}

/**
 * Tones of a region from linear luminance planes of both captures in one frame: the mean over
 * the lightest and the darkest tenth of the positive, taken at the same places in both.
 * Tenths rather than extremes, so that a scratch or a speck of dust does not decide.
 *
 * @param region Columns and rows, edges in samples of the planes; the whole plane when absent.
 */
export function tonesOf(
  positive: Plane,
  negative: Plane,
  region?: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  },
): Estimate<Tones> {
  if (positive.width !== negative.width || positive.height !== negative.height) {
    return { ok: false, reason: 'the two pictures differ in size' };
  }
  const area = region ?? { x: 0, y: 0, width: positive.width, height: positive.height };
  const left = Math.max(0, Math.round(area.x));
  const top = Math.max(0, Math.round(area.y));
  const right = Math.min(positive.width, Math.round(area.x + area.width));
  const bottom = Math.min(positive.height, Math.round(area.y + area.height));
  const places: number[] = [];
  for (let y = top; y < bottom; y++)
    for (let x = left; x < right; x++) places.push(y * positive.width + x);
  if (places.length < 100) return { ok: false, reason: 'fewer than 100 samples lie in it' };
  places.sort((i, j) => positive.data[i] - positive.data[j]);
  const tenth = Math.ceil(places.length / 10);
  const mean = (plane: Plane, list: readonly number[]) =>
    list.reduce((sum, i) => sum + plane.data[i], 0) / list.length;
  const dark = places.slice(0, tenth);
  const light = places.slice(-tenth);
  return {
    ok: true,
    value: {
      positiveHighlight: mean(positive, light),
      positiveShadow: mean(positive, dark),
      negativeHighlight: mean(negative, light),
      negativeShadow: mean(negative, dark),
    },
  };
}

/**
 * One channel of the last pass, as the shader `src/shaders/tilt.ts` computes it.
 *
 * @param p Encoded sRGB code of the positive, 0 to 255. @param n The same of the negative.
 * @returns Encoded sRGB value, 0 to 255, not rounded.
 */
export function tiltCode(p: number, n: number, a: number, b: number): number {
  const linear = (a * decodeSrgb(p / 255) + b * decodeSrgb(n / 255)) / (a + b);
  return 255 * encodeSrgb(Math.min(1, Math.max(0, linear)));
}
