/** Seeded pictures with the two things that plates are hard on: grain, and bright lines one pixel wide. */
import { srgbLight, type Light } from '../../src/imaging/colour/light.ts';
import { type RowSource } from '../../src/raster/row-source.ts';

/** The generator of the C standard's example `rand`, in its 32-bit form: same numbers everywhere. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/**
 * Encoded 16-bit codes: a soft field with grain and scratches, about as bright on
 * the whole as a daguerreotype (mean 0.17 linear). In a much darker picture the rounding of JPEG
 * itself takes more than 0.3 % of the light.
 */
export function platePicture(width: number, height: number, seed = 1): Uint16Array {
  const random = seeded(seed);
  const data = new Uint16Array(width * height * 3);
  for (let y = 0, i = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1, i += 3) {
      const field = 0.45 + 0.12 * Math.sin(x / 97) * Math.cos(y / 71);
      const grain = (random() - 0.5) * 0.1;
      const value = Math.max(0, field + grain) * 65535;
      data[i] = value;
      data[i + 1] = value * 0.97;
      data[i + 2] = value * 0.9;
    }
  }
  for (let k = 0; k < (width * height) / 8000; k += 1) {
    let x = random() * width;
    let y = random() * height;
    const [dx, dy] = [random() - 0.5, random() - 0.5];
    for (let n = 0; n < 60; n += 1, x += dx, y += dy) {
      if (x < 0 || y < 0 || x >= width || y >= height) break;
      data.fill(
        62000,
        (Math.floor(y) * width + Math.floor(x)) * 3,
        (Math.floor(y) * width + Math.floor(x)) * 3 + 3,
      );
    }
  }
  return data;
}

/** Dark, with a bright vertical line one pixel wide at every ninth column. */
export function linePicture(width: number, height: number): Uint16Array {
  const data = new Uint16Array(width * height * 3).fill(6000);
  for (let y = 0; y < height; y += 1) {
    for (let x = 4; x < width; x += 9)
      data.fill(58000, (y * width + x) * 3, (y * width + x) * 3 + 3);
  }
  return data;
}

/** Samples in memory as rows, one batch. */
export function rowsFrom(
  width: number,
  height: number,
  channels: 1 | 3,
  data: Uint8Array | Uint16Array,
  light?: Light,
): RowSource {
  const depth = data instanceof Uint16Array ? 16 : 8;
  return {
    width,
    height,
    channels,
    depth,
    light: light ?? srgbLight(depth),
    // eslint-disable-next-line @typescript-eslint/require-await -- nothing to wait for in memory
    async *batches(order = 'down') {
      if (order === 'down') {
        yield { data, rows: height };
        return;
      }
      const line = width * channels;
      for (let y = height - 1; y >= 0; y -= 1) {
        yield { data: data.subarray(y * line, (y + 1) * line), rows: 1 };
      }
    },
    close: () => Promise.resolve(),
  };
}
