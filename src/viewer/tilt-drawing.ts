/**
 * The drawing beside Tilt's control: a section through the plate. The eye is at the left, the
 * plate stands at the right; the line from the plate shows where the mirror looks, twice the
 * tilt away from the eye, and the thick arc is the bright part of the room.
 */
import { tiltLimit, type RoomLight } from '../imaging/tilt.ts';

/** Where the plate stands in the drawing, and how far away the room is; units of its viewBox. */
export const section = { x: 118, y: 92, reach: 84, half: 26 } as const;

function polar(degrees: number, radius: number): string {
  const t = (degrees * Math.PI) / 180;
  const x = section.x - Math.cos(t) * radius;
  const y = section.y - Math.sin(t) * radius;
  return `${x.toFixed(2)} ${y.toFixed(2)}`;
}

/** The bright part of the room as an arc around the plate. */
export function brightArc(room: RoomLight): string {
  const { reach } = section;
  return `M${polar(room.from, reach)}A${reach} ${reach} 0 0 1 ${polar(room.to, reach)}`;
}

/** The line from the plate to what it reflects. */
export function mirrorRay(tiltDegrees: number): string {
  return `M${section.x} ${section.y}L${polar(2 * tiltDegrees, section.reach - 5)}`;
}

/** The plate, edge on. */
export function plateLine(tiltDegrees: number): string {
  const up = polar(tiltDegrees + 90, section.half);
  const down = polar(tiltDegrees - 90, section.half);
  return `M${up}L${down}`;
}

export function drawSection(panel: HTMLElement, tilt: number, room: RoomLight): void {
  const draw = (part: string, path: string) =>
    panel.querySelector(`[data-draw="${part}"]`)?.setAttribute('d', path);
  draw('bright', brightArc(room));
  draw('ray', mirrorRay(tilt));
  draw('plate', plateLine(tilt));
  const weight = room.bright < 1 ? '1.5' : '5';
  panel.querySelector('[data-draw="bright"]')?.setAttribute('stroke-width', weight);
}

/** Put the turning point's mark on the ruled line. */
export function placeMark(panel: HTMLElement, turning: number | null): void {
  const mark = panel.querySelector<SVGElement>('[data-draw="turning"]');
  if (mark === null) return;
  mark.toggleAttribute('hidden', turning === null);
  if (turning !== null) mark.setAttribute('x', `${(100 * turning) / tiltLimit}%`);
}
