/**
 * The description of a picture's tiles. A static host may be moved, so the `id` inside the file
 * is not believed: it is set from the address that the file came from.
 *
 * References
 * - IIIF Image API 3.0, section 5: the address of info.json is the id with `/info.json`.
 */

import type { PlaneTiles } from '../surface.ts';
import { words } from '../words.ts';

export async function tileSource(service: string): Promise<string> {
  const address = new URL(`${service}/info.json`, document.baseURI).href;
  const answer = await fetch(address).catch(() => null);
  if (answer === null) throw new Error(words.faults.offline);
  if (!answer.ok) throw new Error(words.faults.answer(answer.status, address));
  const info = (await answer.json().catch(() => null)) as object | null;
  if (info === null) throw new Error(words.faults.notPicture(address));
  const described = { ...info, id: address.replace(/\/info\.json$/, '') };
  // The library takes the description as an object; its type file only knows text here.
  return described as unknown as string;
}

/** One whole picture without tiles. */
export function pictureSource(address: string): string {
  return { type: 'image', url: new URL(address, document.baseURI).href } as unknown as string;
}

/**
 * The tiles of data planes over a view, `src/records/layer.ts`: level 0 is the full size there,
 * the largest number is the full size here.
 */
export function planeSource(data: PlaneTiles): string {
  const described = {
    width: data.width,
    height: data.height,
    tileSize: data.tile,
    tileOverlap: 0,
    minLevel: 0,
    maxLevel: data.levels - 1,
    planes: data.planes,
    getTileUrl: (level: number, column: number, row: number) =>
      `${data.folder}/${data.levels - 1 - level}/${column}-${row}.${data.format}`,
  };
  return described as unknown as string;
}
