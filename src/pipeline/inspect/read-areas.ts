/**
 * Parts of a capture at full resolution: rows pass by once and only what lies in the areas is
 * kept, so that a picture of any size costs no more memory than its areas.
 */
import type { Plane } from '../../imaging/plane.ts';
import type { Area } from '../../imaging/inspect/samples.ts';
import { openRows, type OpenOptions } from '../../raster/capture-rows.ts';
import { luminanceRows } from '../../raster/load-plane.ts';

/** Linear luminance of each area, 0 to 65535. @throws CaptureFault */
export async function readLuminanceAreas(
  path: string,
  areas: readonly Area[],
  options: OpenOptions,
): Promise<Plane[]> {
  const source = await openRows(path, options);
  const planes = areas.map((area) => emptyPlane(area));
  const last = Math.max(...areas.map((area) => area.y + area.height));
  try {
    let y = 0;
    for await (const row of luminanceRows(source)) {
      areas.forEach((area, k) => {
        if (y < area.y || y >= area.y + area.height) return;
        planes[k].data.set(row.subarray(area.x, area.x + area.width), (y - area.y) * area.width);
      });
      y += 1;
      if (y >= last) break;
    }
  } finally {
    await source.close();
  }
  return planes;
}

/**
 * Red, green and blue of one area in linear sRGB, 0 to 65535; not clipped, since saturated
 * colours of a target lie outside sRGB. @throws CaptureFault
 */
export async function readColourArea(
  path: string,
  area: Area,
  options: OpenOptions,
): Promise<readonly [Plane, Plane, Plane]> {
  const source = await openRows(path, options);
  const planes = [emptyPlane(area), emptyPlane(area), emptyPlane(area)] as const;
  const { width, channels } = source;
  const { toLinear } = source.light;
  const m = source.light.matrix ?? ([1, 0, 0, 0, 1, 0, 0, 0, 1] as const);
  try {
    let y = 0;
    for await (const { data, rows } of source.batches()) {
      for (let n = 0; n < rows; n += 1, y += 1) {
        if (y < area.y || y >= area.y + area.height) continue;
        for (let x = 0; x < area.width; x += 1) {
          const from = (n * width + area.x + x) * channels;
          const r = toLinear[data[from]];
          const g = channels === 1 ? r : toLinear[data[from + 1]];
          const b = channels === 1 ? r : toLinear[data[from + 2]];
          const to = (y - area.y) * area.width + x;
          for (let c = 0; c < 3; c += 1) {
            planes[c].data[to] = m[3 * c] * r + m[3 * c + 1] * g + m[3 * c + 2] * b;
          }
        }
      }
      if (y >= area.y + area.height) break;
    }
  } finally {
    await source.close();
  }
  return planes;
}

function emptyPlane({ width, height }: Area): Plane {
  return { width, height, data: new Float32Array(width * height) };
}
