/**
 * A picture seen through a homography, again as rows: only the band of source rows that one
 * output row needs is held, so a capture of any height can be brought into the plate's frame in
 * the same pass that makes its pyramid. Outside the capture the frame is black: nothing is
 * invented there. How a pixel is drawn stands in `warp-sampler.ts`.
 */
import { linearised } from '../imaging/colour/light.ts';
import type { Homography } from '../imaging/conventions.ts';
import type { Radial } from '../imaging/radial.ts';
import type { RowSource } from './row-source.ts';
import { layUnderFrame, type WarpLayout } from './warp-layout.ts';
import { rowSampler } from './warp-sampler.ts';

/**
 * Rows of `source` in another frame, as linear light of 16 bits.
 *
 * @param homography Takes a pixel of the source to the frame, as in a registration.
 * @param radial Where the lens changed: done to a pixel of the frame before the way back.
 * @throws RangeError if the homography has no inverse or lays the source across the frame.
 */
export function warpRows(
  source: RowSource,
  homography: Homography,
  width: number,
  height: number,
  radial: Radial | null = null,
): RowSource {
  const layout = layUnderFrame(source, homography, radial, width, height);
  return {
    width,
    height,
    channels: source.channels,
    depth: 16,
    light: linearised(source.light),
    async *batches(order = 'down') {
      if (order === 'up') throw new RangeError('A warped picture is read from its first row.');
      const warp = startWarp(source, layout);
      for (let y = 0; y < height; y += 1) {
        if (warp.lacks(y)) await warp.reach(y);
        yield { data: warp.row(y, 0, width), rows: 1 };
      }
      await warp.end();
    },
    close: () => source.close(),
  };
}

/** A warp whose rows are asked for one by one, each as far as it is wanted. */
export interface OpenWarp {
  /** Whether source rows have to be read before row `y` can be drawn. */
  lacks(y: number): boolean;
  /** Read them. Rows must come in order; any may be left out. */
  reach(y: number): Promise<void>;
  /** Columns `from` to before `to` of row `y`, which has been reached; the array is used again. */
  row(y: number, from: number, to: number): Uint16Array;
  /** Stop reading; the source stays open. */
  end(): Promise<void>;
}

/** {@link warpRows} for whoever needs parts of rows. @throws the same. */
export function openWarp(
  source: RowSource,
  homography: Homography,
  width: number,
  height: number,
): OpenWarp {
  return startWarp(source, layUnderFrame(source, homography, null, width, height));
}

function startWarp(source: RowSource, layout: WarpLayout): OpenWarp {
  const { order, toSource, radial, bands, width } = layout;
  const { channels } = source;
  const rows = layout.bandRows + 1;
  const line = source.width * channels;
  const data = new Uint16Array(rows * line);
  const draw = rowSampler({ ...sizeOf(source), channels, rows, data }, radial);
  const out = new Uint16Array(width * channels);
  const linear = Uint16Array.from(source.light.toLinear, (v) => v + 0.5);
  const batches = source.batches(order);
  let batch: Uint8Array | Uint16Array = new Uint8Array(0);
  let [left, at, held] = [0, 0, 0];

  /** As many rows of the batch in hand as are needed up to row `last`, as linear light. */
  function take(last: number): void {
    for (; held <= last && left > 0; held += 1, left -= 1, at += line) {
      const to = (held % rows) * line;
      for (let i = 0; i < line; i += 1) data[to + i] = linear[batch[at + i]];
    }
  }

  return {
    lacks: (y) => held <= bands[y][1],
    async reach(y) {
      const last = bands[y][1];
      for (take(last); held <= last; take(last)) {
        const next = await batches.next();
        if (next.done) return;
        [batch, left, at] = [next.value.data, next.value.rows, 0];
      }
    },
    row(y, from, to) {
      const part = out.subarray(0, (to - from) * channels);
      draw(toSource, from, y, part);
      return part;
    },
    async end() {
      await batches.return(undefined);
    },
  };
}

function sizeOf({ width, height }: RowSource) {
  return { width, height };
}
