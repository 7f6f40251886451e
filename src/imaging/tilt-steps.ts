/**
 * A few stations of Tilt for readers whose browser cannot mix the pictures itself: the plate
 * facing the dark, half the turning point's light, the turning point, twice its light, and the
 * plate facing the bright part of a room with one window.
 */
import { reflectedLuminance, roomLight, tiltFor, tiltLimit } from './tilt.ts';

export interface TiltStep {
  /** Degrees. */
  readonly tilt: number;
  /** What the mirror reflects, in units of the light that the negative was taken with. */
  readonly b: number;
}

/** @param turning b / a of the plate's turning point; null where it has none. */
export function tiltSteps(turning: number | null): TiltStep[] {
  const room = roomLight.window;
  const [least, most] = [reflectedLuminance(0, room), reflectedLuminance(tiltLimit, room)];
  const middle = turning ?? 1;
  const between = [middle / 2, middle, 2 * middle]
    .filter((b) => b > least && b < most)
    .flatMap((b) => {
      const tilt = tiltFor(b, room);
      return tilt === null ? [] : [{ tilt, b }];
    });
  return [{ tilt: 0, b: least }, ...between, { tilt: tiltLimit, b: most }];
}
