/**
 * Combining two pictures without shaders: a clip for the divider, and a cross-fade in encoded
 * values for Tilt. The cross-fade is not what light does, and the stage says so.
 */
import OpenSeadragon from 'openseadragon';
import type { Look } from '../look.ts';
import { toPlate, type Placing } from '../placing.ts';

/** @param items The pictures, the lowest first. */
export function layPlain(
  look: Look,
  items: readonly OpenSeadragon.TiledImage[],
  placing: Placing,
): void {
  const [first, second] = items;
  if (first === undefined) return;
  first.setOpacity(1);
  if (second === undefined) return;
  second.setClip(look.kind === 'divide' ? beyond(look.line.d, second, placing) : null);
  second.setOpacity(look.kind === 'tilt' ? look.b / (look.a + look.b) : 1);
}

/** The part of a picture on the second view's side of an upright divider. */
function beyond(
  screenX: number,
  item: OpenSeadragon.TiledImage,
  placing: Placing,
): OpenSeadragon.Rect {
  const size = item.getContentSize();
  const edge = Math.min(size.x, Math.max(0, toPlate(placing, screenX, 0)[0]));
  return placing.mirrored
    ? new OpenSeadragon.Rect(0, 0, edge, size.y)
    : new OpenSeadragon.Rect(edge, 0, size.x - edge, size.y);
}
