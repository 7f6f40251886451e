/**
 * Captures as planes of linear light: whole, or shrunk by exact area means for work that needs
 * an overview.
 */
import type { Plane16 } from '../imaging/plane.ts';
import { openRows, type OpenOptions } from './capture-rows.ts';
import type { RowSource } from './row-source.ts';
import { shrinkRows } from './shrink-rows.ts';

export interface LoadOptions extends OpenOptions {
  /** Longest side of the plane, pixels; the full resolution where nothing is said. */
  readonly maxSide?: number | undefined;
}

/**
 * Luminance of a capture, linear, 65535 for the capture's white.
 *
 * A shrunk plane covers the whole picture: its pixel (x, y) is centred on
 * `((x + 0.5) * W / width - 0.5, (y + 0.5) * H / height - 0.5)` of the W x H capture.
 *
 * @throws CaptureFault
 */
export async function loadLuminance(path: string, options: LoadOptions = {}): Promise<Plane16> {
  const source = await openRows(path, options);
  try {
    return await luminancePlane(source, options.maxSide);
  } finally {
    await source.close();
  }
}

/** The same from rows that are open already. */
export async function luminancePlane(source: RowSource, maxSide?: number): Promise<Plane16> {
  const { width, height } = fittedSize(source, maxSide);
  const data = new Uint16Array(width * height);
  if (width === source.width && height === source.height) {
    let at = 0;
    for await (const row of luminanceRows(source)) {
      for (let i = 0; i < width; i += 1) data[at + i] = row[i] + 0.5;
      at += width;
    }
  } else {
    await shrinkRows(luminanceRows(source), source, { width, height }, (row, y) => {
      for (let i = 0; i < width; i += 1) data[y * width + i] = Math.min(65535, row[i] + 0.5);
    });
  }
  return { width, height, data };
}

/** Size that fits `maxSide` with the same proportions, never larger than the picture. */
function fittedSize(
  { width, height }: Pick<RowSource, 'width' | 'height'>,
  maxSide = Infinity,
): { width: number; height: number } {
  const scale = Math.min(1, maxSide / Math.max(width, height));
  return {
    width: Math.max(1, Math.round(width * scale)),
    height: Math.max(1, Math.round(height * scale)),
  };
}

/** Rows of linear luminance, 0 to 65535, not rounded. The array is used again. */
export async function* luminanceRows(source: RowSource): AsyncGenerator<Float32Array> {
  const { width, channels } = source;
  const { toLinear, luminance } = source.light;
  const [r, g, b] = luminance;
  const row = new Float32Array(width);
  for await (const { data, rows } of source.batches()) {
    for (let n = 0, i = 0; n < rows; n += 1) {
      if (channels === 1) {
        for (let x = 0; x < width; x += 1, i += 1) row[x] = toLinear[data[i]];
      } else {
        for (let x = 0; x < width; x += 1, i += 3) {
          const y = r * toLinear[data[i]] + g * toLinear[data[i + 1]] + b * toLinear[data[i + 2]];
          row[x] = y < 0 ? 0 : y > 65535 ? 65535 : y;
        }
      }
      yield row;
    }
  }
}

/**
 * Red, green and blue of a capture in linear sRGB at full resolution, clipped to 0 .. 65535. For
 * small pictures: three planes of the whole.
 *
 * @throws CaptureFault
 */
export async function loadRgb16(
  path: string,
  options: OpenOptions = {},
): Promise<readonly [red: Plane16, green: Plane16, blue: Plane16]> {
  const source = await openRows(path, options);
  try {
    return await rgbPlanes(source);
  } finally {
    await source.close();
  }
}

/** The same from rows that are open already. */
export async function rgbPlanes(
  source: RowSource,
): Promise<readonly [red: Plane16, green: Plane16, blue: Plane16]> {
  const { width, height, channels } = source;
  const { toLinear } = source.light;
  const m = source.light.matrix ?? ([1, 0, 0, 0, 1, 0, 0, 0, 1] as const);
  const plane = (): Plane16 => ({ width, height, data: new Uint16Array(width * height) });
  const planes = [plane(), plane(), plane()] as const;
  const clipped = (v: number): number => (v < 0 ? 0 : v > 65535 ? 65535 : v + 0.5);
  let at = 0;
  for await (const { data, rows } of source.batches()) {
    for (let i = 0; i < rows * width; i += 1, at += 1) {
      const from = i * channels;
      const r = toLinear[data[from]];
      const g = channels === 1 ? r : toLinear[data[from + 1]];
      const b = channels === 1 ? r : toLinear[data[from + 2]];
      planes[0].data[at] = clipped(m[0] * r + m[1] * g + m[2] * b);
      planes[1].data[at] = clipped(m[3] * r + m[4] * g + m[5] * b);
      planes[2].data[at] = clipped(m[6] * r + m[7] * g + m[8] * b);
    }
  }
  return planes;
}
