/**
 * Compact bright spots of each frame of a many-light set, at places that are dark in the others:
 * the highlight on a glossy ball is one of them, glints of the plate are the rest.
 */

export interface Spot {
  readonly x: number;
  readonly y: number;
  /** Linear light above the mean of the frames, summed. */
  readonly light: number;
}

/** A highlight moves away: where it is, this frame is so much brighter than the mean of all. */
const contrast = 3;
/** Of white: what is darker than this is noise. */
const darkest = 0.02;
/** Spots of a frame that are kept, strongest first. */
const most = 40;

/**
 * @param frames Linear luminance of each frame, white at 1, row-major with `width` columns.
 * @param mean Of all frames.
 */
export function brightSpots(
  frames: readonly Float32Array[],
  mean: Float32Array,
  width: number,
): Spot[][] {
  const height = mean.length / width;
  const seen = new Int32Array(mean.length).fill(-1);
  return frames.map((frame, number) => {
    const bright = (at: number): boolean =>
      seen[at] !== number && frame[at] > darkest && frame[at] > contrast * mean[at];
    const spots: Spot[] = [];
    const waiting: number[] = [];
    for (let start = 0; start < frame.length; start += 1) {
      if (!bright(start)) continue;
      let [light, sx, sy] = [0, 0, 0];
      seen[start] = number;
      waiting.push(start);
      for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
        const [x, y] = [at % width, Math.floor(at / width)];
        const own = frame[at] - mean[at];
        light += own;
        sx += own * x;
        sy += own * y;
        const beside = [x > 0 ? at - 1 : -1, x < width - 1 ? at + 1 : -1];
        if (y > 0) beside.push(at - width);
        if (y < height - 1) beside.push(at + width);
        for (const next of beside) {
          if (next < 0 || !bright(next)) continue;
          seen[next] = number;
          waiting.push(next);
        }
      }
      spots.push({ x: sx / light, y: sy / light, light });
    }
    return spots.sort((a, b) => b.light - a.light).slice(0, most);
  });
}
