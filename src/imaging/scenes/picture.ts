/**
 * From a scene to rows of its picture.
 *
 * The picture is worked out on a frame of at most {@link longest} elements and then enlarged to
 * the size asked for: the lenses of the time resolve no more on plates of this kind.
 * Every row depends on global coordinates alone, so that a strip equals the whole.
 */
import { blurReach, throughLens, type Strip } from './lens.ts';
import { type GridFrame } from './light-grid.ts';
import { makeLighting } from './light.ts';
import { type Scene } from './scene.ts';
import { radianceRows } from './shading.ts';
import { makeTracer } from './tracer.ts';
import { makeView, type Eye } from './view.ts';

/** Elements along the longer side of the frame that is worked out. */
const longest = 1500;

export interface PictureSize {
  readonly width: number;
  readonly height: number;
  readonly eye?: Eye;
}

function frameOf(scene: Scene, size: PictureSize): GridFrame {
  const scale = Math.min(1, longest / Math.max(size.width, size.height));
  const tracer = makeTracer(scene.solids);
  return {
    columns: Math.max(1, Math.ceil(size.width * scale)),
    rows: Math.max(1, Math.ceil(size.height * scale)),
    scene,
    tracer,
    view: makeView(scene.camera, size.width / size.height, size.eye),
    lighting: makeLighting(scene, tracer),
  };
}

/** Rows [firstRow, firstRow + rowCount) of the picture, linear 0 to 1, row-major. */
export function pictureRows(
  scene: Scene,
  size: PictureSize,
  firstRow: number,
  rowCount: number,
): Float32Array {
  const frame = frameOf(scene, size);
  const { columns, rows } = frame;
  const down = rows / size.height;
  const first = Math.floor((firstRow + 0.5) * down - 0.5) - blurReach;
  const last = Math.floor((firstRow + rowCount - 0.5) * down - 0.5) + 2 + blurReach;
  const data = radianceRows(frame, first, last);
  const radiance = { data, columns, first, count: last - first, rows };
  const exposed = throughLens(radiance, scene, size.width / size.height);
  return enlarge(exposed, size, firstRow, rowCount);
}

/** Reads a strip of the worked frame at the centres of the picture's pixels, between four elements. */
function enlarge(
  { data, columns, rows, first, count }: Strip,
  { width, height }: PictureSize,
  firstRow: number,
  rowCount: number,
): Float32Array {
  const out = new Float32Array(width * rowCount);
  for (let r = 0; r < rowCount; r++) {
    const fy = (firstRow + r + 0.5) * (rows / height) - 0.5;
    const iy = Math.floor(fy);
    const ty = fy - iy;
    const a = Math.min(count - 1, Math.max(0, iy - first)) * columns;
    const b = Math.min(count - 1, Math.max(0, iy + 1 - first)) * columns;
    for (let c = 0; c < width; c++) {
      const fx = (c + 0.5) * (columns / width) - 0.5;
      const ix = Math.floor(fx);
      const tx = fx - ix;
      const p = Math.min(columns - 1, Math.max(0, ix));
      const q = Math.min(columns - 1, Math.max(0, ix + 1));
      const upper = data[a + p] + (data[a + q] - data[a + p]) * tx;
      const lower = data[b + p] + (data[b + q] - data[b + p]) * tx;
      out[r * width + c] = upper + (lower - upper) * ty;
    }
  }
  return out;
}
