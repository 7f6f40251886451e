/** Reflections that are not sharp: varnished wood, iron, and water that moved during the exposure. */
import { type Lighting } from './light.ts';
import { type Ray, type Surface } from './solid.ts';

/** No single ray may bring more: a glint that a plate would lose anyway. */
const brightest = 4;

/**
 * Radiance of a spread reflection, the mean of a few mirror rays about a surface point.
 *
 * @param turn Which part of the sequence is used; with `count` samples each.
 */
export function spreadReflection(
  lighting: Lighting,
  surface: Surface,
  x: number,
  y: number,
  z: number,
  n: Float64Array,
  ray: Ray,
  turn: number,
  count: number,
): number {
  const spread = surface.spread ?? 0;
  const mirror: Ray = { ox: x, oy: y, oz: z, dx: 0, dy: 0, dz: 0 };
  let sum = 0;
  for (let s = 0; s < count; s++) {
    const k = turn * count + s;
    const a = ((0.5 + k * 0.7548776662466927) % 1) - 0.5;
    const b = ((0.5 + k * 0.5698402909980532) % 1) - 0.5;
    // A surface that ripples evenly: slopes uniform over the spread. Ripples on water are seen
    // along the surface, so that they draw reflections out towards the camera.
    let mx = n[0] + a * spread * (surface.water ? 0.35 : 1);
    let my = n[1] + (surface.water ? 0 : b * spread);
    let mz = n[2] + (surface.water ? b * spread : a * b * 4 * spread);
    const l = 1 / Math.sqrt(mx * mx + my * my + mz * mz);
    mx *= l;
    my *= l;
    mz *= l;
    const c = 2 * (ray.dx * mx + ray.dy * my + ray.dz * mz);
    mirror.dx = ray.dx - c * mx;
    mirror.dy = ray.dy - c * my;
    mirror.dz = ray.dz - c * mz;
    if (mirror.dx * n[0] + mirror.dy * n[1] + mirror.dz * n[2] <= 0) continue;
    sum += Math.min(brightest, lighting.along(mirror, 1e-4, k, true));
  }
  return sum / count;
}
