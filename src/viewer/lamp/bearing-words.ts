/** Where a lamp stands, in words. */
import { words } from '../words.ts';

/** "bearing 293°, 26° above the plate"; bearings are clockwise from the plate's top edge. */
export function lampWords(bearing: number, height: number): string {
  return words.lamp.place(`${Math.round(bearing) % 360}°`, `${Math.round(height)}°`);
}
