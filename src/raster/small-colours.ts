/** The colours of captures laid into one frame and shrunk: means of whole blocks of pixels, in linear light. */
import { decodeSrgb } from '../imaging/colour/srgb-curve.ts';
import { type FrameFile, openFrames, type FrameOptions } from './frame-strips.ts';

export interface SmallColours {
  readonly width: number;
  readonly height: number;
  /** Linear, sRGB primaries, 1 at the largest code. */
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
}

/**
 * One picture for each file, in the same order.
 *
 * @param factor Side of a block, pixels of the frame. A last, partial block is dropped.
 * @throws CaptureFault
 */
export async function smallColours(
  files: readonly FrameFile[],
  factor: number,
  options: FrameOptions,
): Promise<SmallColours[]> {
  const light = Float32Array.from({ length: 256 }, (_, code) => decodeSrgb(code / 255));
  const strips = await openFrames(files, options);
  try {
    const width = Math.floor(strips.width / factor);
    const height = Math.floor(strips.height / factor);
    const plane = () => new Float32Array(width * height);
    const pictures = files.map(() => ({ red: plane(), green: plane(), blue: plane() }));
    const share = 1 / (factor * factor);
    for await (const { top, rows, frames } of strips.strips()) {
      for (let n = 0; n < rows && top + n < height * factor; n += 1) {
        const to = Math.floor((top + n) / factor) * width;
        frames.forEach((codes, k) => {
          const { red, green, blue } = pictures[k];
          let from = n * strips.width * 3;
          for (let x = 0; x < width; x += 1) {
            for (let c = 0; c < factor; c += 1, from += 3) {
              red[to + x] += light[codes[from]] * share;
              green[to + x] += light[codes[from + 1]] * share;
              blue[to + x] += light[codes[from + 2]] * share;
            }
          }
        });
      }
    }
    return pictures.map((picture) => ({ width, height, ...picture }));
  } finally {
    await strips.close();
  }
}
