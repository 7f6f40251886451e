/**
 * A part of a close-up in linear luminance, for comparing. A mosaic may be far larger than
 * memory; what its tiles share with their neighbours is not.
 */
import type { Plane16 } from '../plane.ts';
import { clipLevel, white, type MaskedPlane } from '../registration/masked-plane.ts';

export interface TileCut {
  /** Place of the cut's first sample in the tile, pixels. */
  readonly left: number;
  readonly top: number;
  readonly plane: Plane16;
}

/** The part of a tile from (left, top) to its lower right corner, copied. */
export function cutFrom(tile: Plane16, left: number, top: number): TileCut {
  const width = tile.width - left;
  const height = tile.height - top;
  const data = new Uint16Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const from = (top + y) * tile.width + left;
    data.set(tile.data.subarray(from, from + width), y * width);
  }
  return { left, top, plane: { width, height, data } };
}

/**
 * A window as log-luminance; samples beyond the cut repeat its edge and are not usable, and
 * neither are clipped ones.
 *
 * @param left Pixels of the tile, as `top`.
 * @param table From `logTable`.
 */
export function logWindow(
  cut: TileCut,
  left: number,
  top: number,
  width: number,
  height: number,
  table: Float32Array,
): MaskedPlane {
  const { plane } = cut;
  const clip = clipLevel * white;
  const data = new Float32Array(width * height);
  const usable = new Uint8Array(width * height);
  for (let y = 0, o = 0; y < height; y += 1) {
    const wantedY = top + y - cut.top;
    const sy = Math.max(0, Math.min(plane.height - 1, wantedY));
    for (let x = 0; x < width; x += 1, o += 1) {
      const wantedX = left + x - cut.left;
      const sx = Math.max(0, Math.min(plane.width - 1, wantedX));
      const value = plane.data[sy * plane.width + sx];
      data[o] = table[value];
      usable[o] = sx === wantedX && sy === wantedY && value < clip ? 1 : 0;
    }
  }
  return { width, height, data, usable };
}
