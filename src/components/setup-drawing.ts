/**
 * Geometry of the small drawings of a set-up: the plate from above with its lamps around it, and
 * from the side with the lens over it. Directions are as recorded; distances are not to scale.
 *
 * Bearing and height: `src/imaging/conventions.ts`.
 */

export interface LampPlace {
  /** Degrees clockwise from the plate's top edge. */
  readonly bearing: number;
  /** Degrees above the plate's plane. */
  readonly height: number;
}

export interface Stroke {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

const radians = (degrees: number) => (degrees * Math.PI) / 180;
const round = (value: number) => Math.round(value * 10) / 10;

function stroke(x1: number, y1: number, x2: number, y2: number): Stroke {
  return { x1: round(x1), y1: round(y1), x2: round(x2), y2: round(y2) };
}

/** Ends of a short line across a direction, through a point. */
function across(x: number, y: number, angle: number, half: number): Stroke {
  const dx = Math.cos(angle) * half;
  const dy = Math.sin(angle) * half;
  return stroke(x - dx, y - dy, x + dx, y + dy);
}

/** A lamp seen from above: its lit face, and its light as far as the plate's edge. */
export function lampFromAbove({ bearing, height }: LampPlace, half: number) {
  const angle = radians(bearing);
  // A lamp overhead stands nearer the middle; never on the plate itself, which it would hide.
  const reach = 34 + 22 * Math.cos(radians(height));
  const [x, y] = [reach * Math.sin(angle), -reach * Math.cos(angle)];
  return {
    face: across(x, y, angle, half),
    ray: stroke(x * 0.92, y * 0.92, x * 0.55, y * 0.62),
  };
}

/** The same lamp from the side; lamps of the left half of the plate stand on the left. */
export function lampFromSide({ bearing, height }: LampPlace, half: number) {
  const left = bearing > 180;
  const angle = radians(left ? 180 - height : height);
  const [x, y] = [56 * Math.cos(angle), -56 * Math.sin(angle)];
  return {
    face: across(x, y, Math.PI / 2 - angle, half),
    ray: stroke(x * 0.93, y * 0.93, x * 0.4, y * 0.4),
  };
}
