/**
 * A picture moved by a fraction of a pixel, again as rows of linear light. Unlike a warp for the
 * eye it knows about clipping: where one of the samples that would be mixed is clipped, the
 * result is clipped too, for what the mixture would have been nobody knows. What lies outside of
 * the picture counts as clipped for the same reason.
 *
 * References
 * - Keys, R. G. (1981). Cubic convolution interpolation for digital image processing. IEEE Trans.
 *   ASSP 29(6), 1153-1160 (kernel with a = -1/2). doi:10.1109/TASSP.1981.1163711 (from memory)
 */
import { linearised } from '../imaging/colour/light.ts';
import type { RowBatch, RowSource } from './row-source.ts';

const full = 65535;

/** Weights of the four samples around a place at `t` between the second and the third. */
export function cubicWeights(t: number): readonly [number, number, number, number] {
  return [
    -(t ** 3) / 2 + t * t - t / 2,
    1.5 * t ** 3 - 2.5 * t * t + 1,
    -1.5 * t ** 3 + 2 * t * t + t / 2,
    t ** 3 / 2 - (t * t) / 2,
  ];
}

/**
 * Sample (x, y) of the result is the source at (x + dx, y + dy).
 *
 * @param clip Linear light, 0 to 1, from which a sample of the source is clipped; the result's
 *   clipped samples have the largest code.
 */
export function shiftRows(source: RowSource, dx: number, dy: number, clip: number): RowSource {
  const { width, height, channels } = source;
  const line = width * channels;
  const toLinear = source.light.toLinear.map((v) => (v >= clip * full ? Infinity : v));
  const [left, top] = [Math.floor(dx), Math.floor(dy)];
  const [across, down] = [cubicWeights(dx - left), cubicWeights(dy - top)];
  const outside = new Float32Array(line).fill(Infinity);

  async function* batches(): AsyncGenerator<RowBatch> {
    const rows = new Map<number, Float32Array>();
    const out = new Uint16Array(line);
    const column = new Float32Array(line);
    let y = 0;
    const send = (): RowBatch => {
      const four = [-1, 0, 1, 2].map((step) => rows.get(y + top + step) ?? outside);
      for (let i = 0; i < line; i += 1) {
        column[i] =
          down[0] * four[0][i] + down[1] * four[1][i] + down[2] * four[2][i] + down[3] * four[3][i];
      }
      mixAcross(column, out, channels, left, across);
      rows.delete(y + top - 1);
      y += 1;
      return { data: out, rows: 1 };
    };
    let come = 0;
    for await (const batch of source.batches()) {
      for (let r = 0; r < batch.rows; r += 1, come += 1) {
        const row = new Float32Array(line);
        for (let i = 0; i < line; i += 1) row[i] = toLinear[batch.data[r * line + i]];
        if (come >= y + top - 1) rows.set(come, row);
        while (y < height && y + top + 2 <= come) yield send();
      }
    }
    while (y < height) yield send();
  }

  return {
    width,
    height,
    channels,
    depth: 16,
    light: linearised(source.light),
    batches,
    close: () => source.close(),
  };
}

/** A weight of 0 times a clipped sample is not a number: clipped as well, on the safe side. */
function mixAcross(
  column: Float32Array,
  out: Uint16Array,
  channels: number,
  left: number,
  weights: readonly [number, number, number, number],
): void {
  const width = out.length / channels;
  const [a, b, c, d] = weights;
  for (let x = 0; x < width; x += 1) {
    const from = x + left - 1;
    const inside = from >= 0 && from + 3 < width;
    for (let k = 0; k < channels; k += 1) {
      const at = from * channels + k;
      const value = inside
        ? a * column[at] +
          b * column[at + channels] +
          c * column[at + 2 * channels] +
          d * column[at + 3 * channels]
        : Infinity;
      // A mixture of clipped samples is infinite in either direction, or no number.
      out[x * channels + k] = Number.isFinite(value)
        ? Math.max(0, Math.min(full - 1, value + 0.5))
        : full;
    }
  }
}
