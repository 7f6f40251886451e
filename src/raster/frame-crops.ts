/** One part of every frame of a set, as linear luminance, whole or shrunk by block means. */
import { displayLuminance } from '../imaging/relight/display-luminance.ts';
import type { FrameStrips } from './frame-strips.ts';

export interface Part {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface FrameCrops {
  readonly width: number;
  readonly height: number;
  /** White at 1. */
  readonly frames: readonly Float32Array[];
}

/** @param step Side of a block, pixels; columns and rows left over at the end are dropped. */
export async function frameCrops(
  strips: FrameStrips,
  count: number,
  part: Part,
  step: number,
): Promise<FrameCrops> {
  const width = Math.floor(part.width / step);
  const height = Math.floor(part.height / step);
  const frames = Array.from({ length: count }, () => new Float32Array(width * height));
  const share = 1 / (step * step);
  for await (const strip of strips.strips()) {
    for (let n = 0; n < strip.rows; n += 1) {
      const row = Math.floor((strip.top + n - part.top) / step);
      if (row < 0 || row >= height) continue;
      const line = (n * strips.width + part.left) * 3;
      strip.frames.forEach((frame, l) => {
        const out = frames[l];
        for (let x = 0; x < width * step; x += 1) {
          const at = row * width + Math.floor(x / step);
          out[at] += share * displayLuminance(frame, line + 3 * x);
        }
      });
    }
  }
  return { width, height, frames };
}
