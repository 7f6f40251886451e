/** Data planes over a region as numbers, put together from their tiles. */
import type { PlaneTiles } from '../surface.ts';
import type { Region } from '../view-state.ts';
import { words } from '../words.ts';

export interface RegionPlanes {
  readonly width: number;
  readonly height: number;
  /** Codes, one array for each plane, row-major. */
  readonly codes: readonly Uint8ClampedArray[];
}

/**
 * @param region Whole multiples of the factor, pixels of the full size.
 * @param factor A power of two: 1 is full resolution.
 */
export async function regionPlanes(
  data: PlaneTiles,
  region: Region,
  factor: number,
): Promise<RegionPlanes> {
  const level = Math.min(data.levels - 1, Math.round(Math.log2(factor)));
  const width = Math.max(1, Math.ceil(region.width / factor));
  const height = Math.max(1, Math.ceil(region.height / factor));
  const codes = Array.from({ length: data.planes }, () => new Uint8ClampedArray(width * height));
  const [left, top] = [Math.floor(region.x / factor), Math.floor(region.y / factor)];
  const lastColumn = Math.floor((left + width - 1) / data.tile);
  const lastRow = Math.floor((top + height - 1) / data.tile);
  const places: [number, number][] = [];
  for (let row = Math.floor(top / data.tile); row <= lastRow; row++)
    for (let column = Math.floor(left / data.tile); column <= lastColumn; column++)
      places.push([column, row]);
  for (const [column, row] of places) {
    const address = `${data.folder}/${level}/${column}-${row}.${data.format}`;
    const answer = await fetch(address).catch(() => null);
    if (answer === null || !answer.ok) throw new Error(words.faults.part);
    const tile = await pixelsOf(await answer.blob());
    const rows = tile.height / data.planes;
    for (let k = 0; k < data.planes; k++)
      for (let y = 0; y < rows; y++) {
        const toY = row * data.tile + y - top;
        if (toY < 0 || toY >= height) continue;
        for (let x = 0; x < tile.width; x++) {
          const toX = column * data.tile + x - left;
          if (toX >= 0 && toX < width)
            codes[k][toY * width + toX] = tile.data[4 * ((k * rows + y) * tile.width + x)];
        }
      }
  }
  return { width, height, codes };
}

async function pixelsOf(blob: Blob): Promise<ImageData> {
  const bitmap = await createImageBitmap(blob, { colorSpaceConversion: 'none' });
  const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d', {
    willReadFrequently: true,
  });
  if (context === null) throw new Error(words.faults.noPixels);
  context.drawImage(bitmap, 0, 0);
  const { width, height } = bitmap;
  bitmap.close();
  return context.getImageData(0, 0, width, height);
}
