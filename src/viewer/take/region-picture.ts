/**
 * A region of a view as pixels, put together from the tiles of its static image service: at full
 * resolution where it is small enough, otherwise at the finest level that is.
 *
 * References
 * - IIIF Image API 3.0, 4 (region, size) and 5.4 (tiles with scale factors).
 */
import type { Region } from '../view-state.ts';
import { words } from '../words.ts';

interface ServiceInfo {
  readonly width: number;
  readonly height: number;
  readonly tiles?: readonly { readonly width: number; readonly scaleFactors: readonly number[] }[];
  readonly preferredFormats?: readonly string[];
}

export interface RegionPicture {
  readonly canvas: OffscreenCanvas;
  /** Picture pixels for one pixel of the canvas: 1 is full resolution. */
  readonly factor: number;
  /** What it covers, pixels of the view, whole multiples of the factor. */
  readonly region: Region;
}

/** One tile of a level: its address below the service and its place on the level, pixels. */
export interface TilePlace {
  readonly address: string;
  readonly x: number;
  readonly y: number;
}

/** The tiles that a region needs at a scale factor. */
export function tilesOver(
  info: ServiceInfo,
  region: Region,
  factor: number,
  format = 'jpg',
): TilePlace[] {
  const side = info.tiles?.[0].width ?? Math.max(info.width, info.height);
  const span = side * factor;
  if (info.width <= span && info.height <= span) {
    const size = factor === 1 ? 'max' : sizeText(info, factor);
    return [{ address: `full/${size}/0/default.${format}`, x: 0, y: 0 }];
  }
  const places: TilePlace[] = [];
  const right = Math.min(info.width, region.x + region.width);
  const bottom = Math.min(info.height, region.y + region.height);
  for (let row = Math.floor(region.y / span); row * span < bottom; row++)
    for (let column = Math.floor(region.x / span); column * span < right; column++) {
      const [x, y] = [column * span, row * span];
      const width = Math.min(span, info.width - x);
      const height = Math.min(span, info.height - y);
      const size = `${Math.ceil(width / factor)},${Math.ceil(height / factor)}`;
      places.push({
        address: `${x},${y},${width},${height}/${size}/0/default.${format}`,
        x: x / factor,
        y: y / factor,
      });
    }
  return places;
}

function sizeText(info: ServiceInfo, factor: number): string {
  return `${Math.ceil(info.width / factor)},${Math.ceil(info.height / factor)}`;
}

/** The smallest power of two at which a region has at most so many pixels. */
export function factorFor(region: Region, most: number, largest: number): number {
  let factor = 1;
  while (factor < largest && (region.width / factor) * (region.height / factor) > most) factor *= 2;
  return factor;
}

/** @param most Pixels of the canvas at most. Rejects with a sentence. */
export async function regionPicture(
  service: string,
  wanted: Region,
  most: number,
): Promise<RegionPicture> {
  const answer = await fetch(`${service}/info.json`).catch(() => null);
  if (answer === null || !answer.ok) throw new Error(words.faults.picture);
  const info = (await answer.json()) as ServiceInfo;
  const factor = factorFor(wanted, most, Math.max(...(info.tiles?.[0].scaleFactors ?? [1])));
  const left = Math.max(0, Math.floor(wanted.x / factor) * factor);
  const top = Math.max(0, Math.floor(wanted.y / factor) * factor);
  const right = Math.min(info.width, wanted.x + wanted.width);
  const bottom = Math.min(info.height, wanted.y + wanted.height);
  const region = { x: left, y: top, width: right - left, height: bottom - top };
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.ceil(region.width / factor)),
    Math.max(1, Math.ceil(region.height / factor)),
  );
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error(words.faults.noDrawing);
  const format = info.preferredFormats?.[0] ?? 'jpg';
  await Promise.all(
    tilesOver(info, region, factor, format).map(async ({ address, x, y }) => {
      const tile = await fetch(`${service}/${address}`).catch(() => null);
      if (tile === null || !tile.ok) throw new Error(words.faults.part);
      const bitmap = await createImageBitmap(await tile.blob(), { colorSpaceConversion: 'none' });
      context.drawImage(bitmap, x - left / factor, y - top / factor);
      bitmap.close();
    }),
  );
  return { canvas, factor, region };
}
