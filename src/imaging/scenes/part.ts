/**
 * Where a named part of a scene is in the picture, for the brush of a colourist:
 * the share of each pixel that the part covers.
 */
import { type Plane } from '../plane.ts';
import { type Scene } from './scene.ts';
import { type Ray } from './solid.ts';
import { makeTracer } from './tracer.ts';
import { makeView } from './view.ts';
import { makeVisible } from './visible.ts';
import { type PictureSize } from './picture.ts';

/**
 * @param bodies Indices into the scene's solids.
 * @returns Coverage 0 to 1 from four points of each pixel.
 */
export function partCoverage(scene: Scene, bodies: readonly number[], size: PictureSize): Plane {
  const { width, height } = size;
  const view = makeView(scene.camera, width / height, size.eye);
  const tracer = makeTracer(scene.solids);
  const visible = makeVisible(scene.solids, view, width, height);
  const wanted = new Set(bodies);
  const ray: Ray = { ox: 0, oy: 0, oz: 0, dx: 0, dy: 0, dz: 1 };
  const data = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const here = visible(x, y);
      if (!here.some((k) => wanted.has(k))) continue;
      let hits = 0;
      for (let k = 0; k < 4; k++) {
        view.aim((x + 0.25 + 0.5 * (k & 1)) / width, (y + 0.25 + 0.5 * (k >> 1)) / height, ray);
        if (wanted.has(tracer.first(ray, 0.01, 3000, here))) hits++;
      }
      data[y * width + x] = hits / 4;
    }
  }
  return { width, height, data };
}
