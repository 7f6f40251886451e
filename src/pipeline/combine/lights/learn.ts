/** First pass over a many-light set: pixels to learn from, and the ball where there is one. */
import type { Circle } from '../../../imaging/relight/ball-highlight.ts';
import type { LightSample } from '../../../imaging/relight/light-sample.ts';
import { displayLuminance } from '../../../imaging/relight/display-luminance.ts';
import type { FrameStrips } from '../../../raster/frame-strips.ts';

export interface Learned {
  readonly sample: LightSample;
  /** Place of each pixel of the sample. */
  readonly places: readonly (readonly [x: number, y: number])[];
  /** Share of the sample that is clipped in each frame, and in at least one. */
  readonly clippedShares: readonly number[];
  readonly clippedShare: number;
  /** Linear luminance around the ball in each frame, and the ball's place in it. */
  readonly ball: {
    readonly width: number;
    readonly circle: Circle;
    readonly frames: readonly Float64Array[];
  } | null;
}

/** Pixels to learn from. */
const wanted = 30_000;
/** A code from here on counts as clipped: coders ring by a code. */
export const clippedCode = 254;

export async function learn(
  strips: FrameStrips,
  lamps: number,
  ball: Circle | null,
): Promise<Learned> {
  const { width, height } = strips;
  const step = Math.max(1, Math.floor(Math.sqrt((width * height) / wanted)));
  const columns = Math.floor(width / step);
  const rows = Math.floor(height / step);
  const codes = new Uint8Array(columns * rows * lamps * 3);
  const places: [number, number][] = [];
  const box = ball ? ballBox(ball, width, height) : null;
  const boxes = box
    ? Array.from({ length: lamps }, () => new Float64Array(box.width * box.height))
    : [];
  let at = 0;
  for await (const strip of strips.strips()) {
    for (let n = 0; n < strip.rows; n += 1) {
      const y = strip.top + n;
      const line = n * width * 3;
      if (box && y >= box.top && y < box.top + box.height) {
        strip.frames.forEach((frame, l) => {
          for (let x = 0; x < box.width; x += 1) {
            const from = line + (box.left + x) * 3;
            boxes[l][(y - box.top) * box.width + x] = displayLuminance(frame, from);
          }
        });
      }
      const row = (y - (step >> 1)) / step;
      if (!Number.isInteger(row) || row >= rows) continue;
      for (let k = 0; k < columns; k += 1) {
        const x = k * step + (step >> 1);
        const from = line + x * 3;
        for (const frame of strip.frames) {
          codes[at] = frame[from];
          codes[at + 1] = frame[from + 1];
          codes[at + 2] = frame[from + 2];
          at += 3;
        }
        places.push([x, y]);
      }
    }
  }
  const sample = { lamps, pixels: places.length, codes: codes.subarray(0, at) };
  return {
    ...{ sample, places, ...clipping(sample) },
    ball:
      box && ball
        ? {
            width: box.width,
            circle: { x: ball.x - box.left, y: ball.y - box.top, radius: ball.radius },
            frames: boxes,
          }
        : null,
  };
}

function ballBox(ball: Circle, width: number, height: number) {
  const left = Math.max(0, Math.floor(ball.x - ball.radius));
  const top = Math.max(0, Math.floor(ball.y - ball.radius));
  const right = Math.min(width - 1, Math.ceil(ball.x + ball.radius));
  const bottom = Math.min(height - 1, Math.ceil(ball.y + ball.radius));
  return { left, top, width: Math.max(1, right - left + 1), height: Math.max(1, bottom - top + 1) };
}

function clipping({ lamps, pixels, codes }: LightSample) {
  const counts = new Array<number>(lamps).fill(0);
  let any = 0;
  for (let p = 0; p < pixels; p += 1) {
    let here = 0;
    for (let l = 0; l < lamps; l += 1) {
      const at = (p * lamps + l) * 3;
      const most = Math.max(codes[at], codes[at + 1], codes[at + 2]);
      if (most < clippedCode) continue;
      counts[l] += 1;
      here = 1;
    }
    any += here;
  }
  return { clippedShares: counts.map((count) => count / pixels), clippedShare: any / pixels };
}
