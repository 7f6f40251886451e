/**
 * Pictures of the scenes, traced once and kept in the cache: they take longer than all the
 * photographs of the plate. Kept as 16-bit linear light, so that the first run and the next
 * work with the same numbers.
 */
import { readFile } from 'node:fs/promises';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Plane } from '../../imaging/plane.ts';
import {
  renderScene,
  renderScenePart,
  type SceneName,
  type SceneOptions,
} from '../../imaging/scenes/index.ts';

export interface SceneOrder extends SceneOptions {
  readonly name: SceneName;
  /** A named part as a mask, instead of the picture. */
  readonly part?: string | undefined;
}

/** Trace a scene and keep it as `pixels` in a folder. */
export function traceScene({ name, part, ...options }: SceneOrder, folder: string): void {
  const plane = part ? renderScenePart(name, part, options) : renderScene(name, options);
  const codes = new Uint16Array(plane.data.length);
  for (let i = 0; i < codes.length; i += 1) {
    codes[i] = Math.round(65535 * Math.min(1, Math.max(0, plane.data[i])));
  }
  writeFileSync(join(folder, 'pixels'), Buffer.from(codes.buffer));
}

/** A kept scene. */
export async function readScene(folder: string, width: number, height: number): Promise<Plane> {
  const bytes = await readFile(join(folder, 'pixels'));
  const codes = new Uint16Array(bytes.buffer, bytes.byteOffset, width * height);
  const data = new Float32Array(codes.length);
  for (let i = 0; i < codes.length; i += 1) data[i] = codes[i] / 65535;
  return { width, height, data };
}
