/** Square windows of a bracket's frames, spread over the picture: what shift, times and noise are told from. */
import type { Plane } from '../imaging/plane.ts';
import type { RowSource } from './row-source.ts';
import { rowsTogether } from './rows-together.ts';

export interface BracketWindows {
  readonly side: number;
  /** Codes of each window of each frame, channels interleaved: `codes[frame][window]`. */
  readonly codes: readonly (readonly (Uint8Array | Uint16Array)[])[];
  readonly channels: 1 | 3;
}

const acrossWindows = 4;
const downWindows = 3;
const usualSide = 256;

/** @throws RangeError if the frames differ in size. */
export async function readWindows(sources: readonly RowSource[]): Promise<BracketWindows> {
  const [{ width, height, channels }] = sources;
  // Windows of a small picture are smaller, or they would all show the same.
  const side = Math.min(usualSide, 2 ** Math.floor(Math.log2(Math.min(width, height) / 2)));
  const places = (length: number, count: number): number[] =>
    Array.from({ length: count }, (_, k) =>
      Math.round(((k + 0.5) * length) / count - side / 2),
    ).map((v) => Math.max(0, Math.min(length - side, v)));
  const corners = places(height, downWindows).flatMap((top) =>
    places(width, acrossWindows).map((left) => ({ top, left })),
  );
  const codes = sources.map(({ depth }) =>
    corners.map(() =>
      depth === 16
        ? new Uint16Array(side * side * channels)
        : new Uint8Array(side * side * channels),
    ),
  );
  for await (const { data, rows, y } of rowsTogether(sources, 32)) {
    for (let r = 0; r < rows; r += 1) {
      corners.forEach(({ top, left }, w) => {
        const within = y + r - top;
        if (within < 0 || within >= side) return;
        const from = (r * width + left) * channels;
        data.forEach((row, k) => {
          const part = row.subarray(from, from + side * channels);
          codes[k][w].set(part, within * side * channels);
        });
      });
    }
  }
  return { side, codes, channels };
}

/** Luminance of each window of one frame. @param signals Linear signal of every code. */
export function windowLuminance(
  { side, codes, channels }: BracketWindows,
  frame: number,
  signals: Float32Array,
  luminance: readonly [number, number, number],
): Plane[] {
  return codes[frame].map((window) => {
    const data = new Float32Array(side * side);
    for (let i = 0; i < data.length; i += 1) {
      const at = i * channels;
      data[i] =
        channels === 1
          ? signals[window[at]]
          : luminance[0] * signals[window[at]] +
            luminance[1] * signals[window[at + 1]] +
            luminance[2] * signals[window[at + 2]];
    }
    return { width: side, height: side, data };
  });
}

/** Signals of every n-th sample of all windows of one frame, the same places in every frame. */
export function windowSignals(
  { codes }: BracketWindows,
  frame: number,
  signals: Float32Array,
  step: number,
): Float32Array {
  return Float32Array.from(
    codes[frame].flatMap((window) => [...window.filter((_, i) => i % step === 0)]),
    (code) => signals[code],
  );
}
