/**
 * The scene's camera as rays and back again: where a point of the scene falls in the picture.
 * The picture is drawn the right way round, as the eye would have seen it.
 */
import { type Camera } from './scene.ts';
import { type Ray } from './solid.ts';

export type Eye = 'left' | 'right';

export interface View {
  /** Sets the ray through a point of the picture, 0 to 1 across and down. */
  readonly aim: (u: number, v: number, ray: Ray) => void;
  /** Where a point of the scene falls, 0 to 1 across and down; null behind the camera. */
  readonly project: (x: number, y: number, z: number) => readonly [number, number] | null;
  /** Width of a picture of that many rows' element at unit distance. */
  readonly element: (rows: number) => number;
}

type Vector = readonly [number, number, number];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vector): Vector => {
  const l = Math.hypot(a[0], a[1], a[2]);
  return [a[0] / l, a[1] / l, a[2] / l];
};

/**
 * @param aspect Width of the picture divided by its height.
 * @param eye One of two standpoints: the camera is slid sideways by half the base, and the
 *   picture shifted so that both pictures agree at the distance the camera names. A point at
 *   depth Z then lies further right in the left picture than in the right one by
 *   base (1/Z - 1/agree) / (2 tangent aspect) of the picture's width.
 */
export function makeView(camera: Camera, aspect: number, eye?: Eye): View {
  const forward = unit([
    camera.target[0] - camera.position[0],
    camera.target[1] - camera.position[1],
    camera.target[2] - camera.position[2],
  ]);
  const right = unit(cross([0, 1, 0], forward));
  const up = cross(forward, right);
  const half = eye && camera.stereo ? (camera.stereo.base / 2) * (eye === 'left' ? -1 : 1) : 0;
  const slide = camera.stereo && eye ? -half / camera.stereo.agree : 0;
  const ox = camera.position[0] + right[0] * half;
  const oy = camera.position[1] + right[1] * half;
  const oz = camera.position[2] + right[2] * half;
  const th = camera.tangent;
  const tw = camera.tangent * aspect;
  const rise = camera.rise ?? 0;
  return {
    aim(u, v, ray) {
      const a = (2 * u - 1) * tw + slide;
      const b = (1 - 2 * v + rise) * th;
      const dx = forward[0] + right[0] * a + up[0] * b;
      const dy = forward[1] + right[1] * a + up[1] * b;
      const dz = forward[2] + right[2] * a + up[2] * b;
      const l = 1 / Math.sqrt(dx * dx + dy * dy + dz * dz);
      ray.ox = ox;
      ray.oy = oy;
      ray.oz = oz;
      ray.dx = dx * l;
      ray.dy = dy * l;
      ray.dz = dz * l;
    },
    project(x, y, z) {
      const px = x - ox;
      const py = y - oy;
      const pz = z - oz;
      const depth = px * forward[0] + py * forward[1] + pz * forward[2];
      if (depth <= 1e-6) return null;
      const a = (px * right[0] + py * right[1] + pz * right[2]) / depth - slide;
      const b = (px * up[0] + py * up[1] + pz * up[2]) / depth;
      return [(a / tw + 1) / 2, (1 - b / th + rise) / 2];
    },
    element: (rows) => (2 * th) / rows,
  };
}
