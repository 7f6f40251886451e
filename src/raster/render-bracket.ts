/**
 * Two renderings of a merged picture for the page, in one pass over its rows: one curve for the
 * whole picture, and one that compresses the wide range and keeps the fine detail. Each is a
 * 16-bit TIFF through the sRGB curve. Clipped everywhere shows as white, below the noise as black.
 */
import { baseDetailRow, type BaseDetail } from '../imaging/merge/base-detail-tone.ts';
import {
  photographicLuminance,
  type PhotographicTone,
} from '../imaging/merge/photographic-tone.ts';
import { codeOf } from '../imaging/render/sensor.ts';
import { openFloatRows } from './float-rows.ts';
import { lightLuminance } from './merge-bracket.ts';
import { openTiffStrips } from './tiff-strips.ts';

export interface RenderBracket {
  /** The merged picture. */
  readonly radiance: string;
  readonly global: { readonly path: string; readonly tone: PhotographicTone };
  readonly local: { readonly path: string; readonly tone: BaseDetail };
  /** Light below which nothing stands above the noise. */
  readonly floor: number;
}

const stripRows = 16;

export async function renderBracket({
  radiance,
  global,
  local,
  floor,
}: RenderBracket): Promise<void> {
  const rows = await openFloatRows(radiance);
  const { width, height } = rows;
  const shape = { width, height, channels: 3, samples: 'codes' } as const;
  const description = 'Rendering of a merged bracket';
  const files = await Promise.all([
    openTiffStrips(global.path, { ...shape, description: `${description}, one curve` }),
    openTiffStrips(local.path, { ...shape, description: `${description}, base and detail` }),
  ]);
  try {
    const codes = [0, 1].map(() => new Uint16Array(stripRows * width * 3));
    const luminance = new Float32Array(width);
    const logs = new Float32Array(width);
    const factors = new Float32Array(width);
    for await (const { data, rows: count, y } of rows.batches(stripRows)) {
      for (let r = 0; r < count; r += 1) {
        const at = r * width * 3;
        rowLuminance(data, at, luminance);
        for (let x = 0; x < width; x += 1) {
          const light = luminance[x];
          factors[x] = light > 0 ? photographicLuminance(global.tone, light) / light : 0;
          logs[x] = Math.log2(light > floor && light < Infinity ? light : floor);
        }
        paint(data, at, luminance, factors, codes[0]);
        baseDetailRow(local.tone, logs, y + r, height, factors);
        paint(data, at, luminance, factors, codes[1]);
      }
      await Promise.all(files.map((f, k) => f.write(codes[k].subarray(0, count * width * 3))));
    }
    await Promise.all(files.map((f) => f.finish()));
  } catch (error) {
    await Promise.all(files.map((f) => f.abandon().catch(() => undefined)));
    throw error;
  } finally {
    await rows.close();
  }
}

function rowLuminance(data: Float32Array, at: number, out: Float32Array): void {
  for (let x = 0, i = at; x < out.length; x += 1, i += 3) {
    out[x] = lightLuminance(data[i], data[i + 1], data[i + 2]);
  }
}

function paint(
  data: Float32Array,
  at: number,
  luminance: Float32Array,
  factors: Float32Array,
  codes: Uint16Array,
): void {
  for (let x = 0, i = at; x < luminance.length; x += 1, i += 3) {
    if (luminance[x] === Infinity) {
      codes[i] = codes[i + 1] = codes[i + 2] = 65535;
      continue;
    }
    for (let c = i; c < i + 3; c += 1) {
      const shown = data[c] * factors[x];
      codes[c] = shown > 0 ? codeOf(shown < 1 ? shown : 1, 65535) : 0;
    }
  }
}
