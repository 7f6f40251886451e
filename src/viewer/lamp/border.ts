/**
 * The track of the lamp: a rectangle a little outside the plate's border as it lies on the
 * screen, held inside the picture's box where the plate is larger than that. A bearing is where
 * the ray from its middle meets it.
 */
import type { Region } from '../view-state.ts';

/** Distance of the track from the plate, and of the track from the box, CSS pixels. */
const outside = 16;
const within = 18;

/** @param plate The plate's rectangle on the screen. @param box The picture's box. */
export function lampTrack(plate: Region, box: Region): Region {
  const left = Math.max(box.x + within, plate.x - outside);
  const top = Math.max(box.y + within, plate.y - outside);
  const right = Math.min(box.x + box.width - within, plate.x + plate.width + outside);
  const bottom = Math.min(box.y + box.height - within, plate.y + plate.height + outside);
  return { x: left, y: top, width: Math.max(1, right - left), height: Math.max(1, bottom - top) };
}

/** The place on the track for a bearing. @param mirrored The plate is shown turned left for right. */
export function onTrack(
  track: Region,
  bearing: number,
  mirrored: boolean,
): readonly [x: number, y: number] {
  const t = (bearing * Math.PI) / 180;
  const [dx, dy] = [Math.sin(t) * (mirrored ? -1 : 1), -Math.cos(t)];
  const [halfX, halfY] = [track.width / 2, track.height / 2];
  const reach = Math.min(
    halfX / Math.max(1e-9, Math.abs(dx)),
    halfY / Math.max(1e-9, Math.abs(dy)),
  );
  return [track.x + halfX + dx * reach, track.y + halfY + dy * reach];
}

/** The bearing, 0 to 360, in which a point of the screen lies from the middle of the track. */
export function bearingOf(track: Region, x: number, y: number, mirrored: boolean): number {
  const dx = (x - track.x - track.width / 2) * (mirrored ? -1 : 1);
  const dy = y - track.y - track.height / 2;
  return ((Math.atan2(dx, -dy) * 180) / Math.PI + 360) % 360;
}
