/**
 * The section that a lesson shows beside the turning plate: eye, plate, lamp, and the room with
 * its bright part. The same numbers as Tilt (`src/imaging/tilt.ts`), drawn large enough to be
 * projected: the plate turned by the tilt, the mirror's line by twice that.
 */
import type { ViewerWords } from '../../words/en/viewer.ts';
import { reflectedLuminance, roomLight, type Room } from '../../imaging/tilt.ts';

type TurningWords = ViewerWords['turning'];

/** Places in the drawing's own units: the plate's middle, and how far away the room is. */
export const turningSection = { x: 300, y: 236, reach: 220, half: 56 } as const;

const { x, y, reach, half } = turningSection;

/** A place around the plate; 0 degrees is towards the eye, then upwards. */
function polar(degrees: number, radius: number): readonly [number, number] {
  const t = (degrees * Math.PI) / 180;
  return [x - Math.cos(t) * radius, y - Math.sin(t) * radius];
}

const text = ([px, py]: readonly [number, number]) => `${px.toFixed(1)} ${py.toFixed(1)}`;

function wall(from: number, to: number, kind: string): string {
  return `<path class="${kind}" d="M${text(polar(from, reach))}A${reach} ${reach} 0 0 1 ${text(polar(to, reach))}"/>`;
}

/** The drawing for a tilt in degrees. */
export function turningSvg(tilt: number, room: Room, turningWords: TurningWords): string {
  const light = roomLight[room];
  const degrees = (Math.round(tilt * 10) / 10).toString();
  const b = reflectedLuminance(tilt, light);
  const ray = polar(2 * tilt, reach - 8);
  const lamp = polar(118, reach * 0.78);
  const place = `${x} ${y}`;
  const brightAt = polar((light.from + Math.min(light.to, 74)) / 2, reach + 14);
  const seen = polar(2 * tilt, reach * 0.82);
  const bar = (value: number) => (200 * value) / (1 + Math.max(b, 1));
  return (
    `<svg class="turning-svg" viewBox="0 0 520 392" role="img" aria-label="${turningWords.title(`${degrees}°`)}">` +
    wall(-24, light.from, 'wall') +
    wall(light.from, light.to, 'bright') +
    `<path class="faint" d="M${place}L${text(polar(0, reach - 8))}"/>` +
    `<path class="lit" data-draw="lamp" d="M${text(lamp)}L${place}"/>` +
    `<path class="lit dots" d="M${place}L${text(polar(0, reach - 40))}"/>` +
    `<path class="mirror" data-draw="ray" d="M${place}L${text(ray)}"/>` +
    `<path class="plate" data-draw="plate" d="M${text(polar(tilt + 90, half))}L${text(polar(tilt - 90, half))}"/>` +
    `<path class="eye" d="M${x - reach + 16} ${y - 9}l18 9l-18 9"/>` +
    `<circle class="lamp" cx="${lamp[0].toFixed(1)}" cy="${lamp[1].toFixed(1)}" r="9"/>` +
    `<text x="${x - reach + 14}" y="${y + 32}">${turningWords.eye}</text>` +
    `<text x="${x + 16}" y="${y + 46}">${turningWords.plate}</text>` +
    `<text x="${(lamp[0] + 16).toFixed(1)}" y="${(lamp[1] + 5).toFixed(1)}">${turningWords.lamp}</text>` +
    `<text x="${x - reach + 22}" y="${y + 66}">${turningWords.dark}</text>` +
    `<text x="${brightAt[0].toFixed(1)}" y="${brightAt[1].toFixed(1)}" text-anchor="end">${turningWords.bright[room]}</text>` +
    `<text class="soft" x="${seen[0].toFixed(1)}" y="${(seen[1] - 8).toFixed(1)}">${tilt > 3 ? turningWords.looks : ''}</text>` +
    `<text class="soft" x="12" y="350">${turningWords.scattered}</text>` +
    `<rect class="amount" data-draw="a" x="290" y="339" width="${bar(1).toFixed(1)}" height="12"/>` +
    `<text class="soft" x="12" y="376">${turningWords.mirrored}</text>` +
    `<rect class="amount mirrored" data-draw="b" x="290" y="365" width="${bar(b).toFixed(1)}" height="12"/>` +
    '</svg>'
  );
}
