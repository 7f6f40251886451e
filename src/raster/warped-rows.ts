/**
 * A picture seen through a homography, again as rows: only the band of source rows that one
 * output row needs is held, so a capture of any height can be brought into the plate's frame in
 * the same pass that makes its pyramid.
 *
 * Interpolation is Catmull-Rom on 4 x 4 samples in linear light; it passes through the samples
 * and keeps the contrast of fine detail better than a bilinear one. Outside the capture the
 * frame is black: nothing is invented there.
 *
 * References
 * - Catmull, E. and Rom, R. (1974). A class of local interpolating splines. In Computer Aided
 *   Geometric Design, 317-326. doi:10.1016/B978-0-12-079050-0.50020-5
 * - Keys, R. G. (1981). Cubic convolution interpolation for digital image processing. IEEE
 *   Trans. ASSP 29(6), 1153-1160 (the same kernel, a = -1/2). doi:10.1109/TASSP.1981.1163711
 *   (both DOIs from memory)
 */
import { linearised } from '../imaging/colour/light.ts';
import { invert3, multiply3 } from '../imaging/colour/matrix3.ts';
import { project, type Homography } from '../imaging/conventions.ts';
import { bend, type Radial } from '../imaging/radial.ts';
import type { RowSource } from './row-source.ts';

/** Positions between two samples that have weights of their own; finer steps do not show. */
const phases = 512;
/** Sum of the four weights of a phase. */
const unity = 16384;
/** Largest band of source rows: a capture turned by a right angle would need all of them. */
const bandLimitBytes = 512 * 1024 * 1024;

const weights = catmullRomWeights();

function catmullRomWeights(): Int32Array {
  const table = new Int32Array((phases + 1) * 4);
  for (let p = 0; p <= phases; p += 1) {
    const t = p / phases;
    const w = [
      -(t ** 3) / 2 + t * t - t / 2,
      1.5 * t ** 3 - 2.5 * t * t + 1,
      -1.5 * t ** 3 + 2 * t * t + t / 2,
      t ** 3 / 2 - (t * t) / 2,
    ].map((v) => Math.round(v * unity));
    w[1] += unity - w.reduce((a, b) => a + b); // flat areas stay exactly what they are
    table.set(w, p * 4);
  }
  return table;
}

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
  const lain = layOut(source, homography, radial, width, height);
  return {
    width,
    height,
    channels: source.channels,
    depth: 16,
    light: linearised(source.light),
    async *batches(order = 'down') {
      if (order === 'up') throw new RangeError('A warped picture is read from its first row.');
      const warp = startWarp(source, lain);
      for (let y = 0; y < height; y += 1) yield { data: await warp.row(y, 0, width), rows: 1 };
      await warp.end();
    },
    close: () => source.close(),
  };
}

/** A warp whose rows are asked for one by one, each as far as it is wanted. */
export interface OpenWarp {
  /** Columns `from` to before `to` of row `y`. Rows must be asked for in order; any may be left out. */
  row(y: number, from: number, to: number): Promise<Uint16Array>;
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
  return startWarp(source, layOut(source, homography, null, width, height));
}

interface LaidOut {
  readonly order: 'down' | 'up';
  /** From the frame to the source as it is read. */
  readonly toSource: Homography;
  readonly radial: Radial | null;
  readonly bands: readonly (readonly [number, number])[];
  readonly bandRows: number;
  readonly width: number;
}

function layOut(
  source: RowSource,
  homography: Homography,
  radial: Radial | null,
  width: number,
  height: number,
): LaidOut {
  const inverse = invert3(homography);
  // A capture that lay half turned is read from its last row, so that rows come as they are needed.
  const upsideDown = project(inverse, width / 2, height - 1)[1] < project(inverse, width / 2, 0)[1];
  const toSource: Homography = upsideDown
    ? multiply3([1, 0, 0, 0, -1, source.height - 1, 0, 0, 1], inverse)
    : inverse;
  const bands = neededBands(toSource, radial, source.height, width, height);
  const bandRows = widestBand(bands);
  if (bandRows * source.width * source.channels * 2 > bandLimitBytes) {
    throw new RangeError(
      `The homography needs ${bandRows} rows of the capture for one row of the frame, more than is held at once. ` +
        'Turn the capture so that it lies as the base does, then align it again.',
    );
  }
  return { order: upsideDown ? 'up' : 'down', toSource, radial, bands, bandRows, width };
}

/**
 * First and last source row that each row of the frame needs. Through a homography v is monotone
 * along a row; a bent row is looked at every 64 pixels, between which it leaves the straight
 * line by less than the one row more that is held.
 */
function neededBands(
  m: Homography,
  radial: Radial | null,
  sourceHeight: number,
  width: number,
  height: number,
): (readonly [number, number])[] {
  const clamped = (v: number): number => Math.min(sourceHeight - 1, Math.max(0, v));
  const count = radial ? Math.ceil(width / 64) + 1 : 2;
  const spare = radial ? 1 : 0;
  return Array.from({ length: height }, (_, y) => {
    let [first, last] = [Infinity, -Infinity];
    for (let k = 0; k < count; k += 1) {
      const x = ((width - 1) * k) / (count - 1);
      const [bx, by] = radial ? bend(radial, x, y) : [x, y];
      const v = project(m, bx, by)[1];
      first = Math.min(first, v);
      last = Math.max(last, v);
    }
    return [clamped(Math.floor(first) - 1 - spare), clamped(Math.floor(last) + 2 + spare)] as const;
  });
}

/** Rows between the last one that has come and the first one that is still needed, at most. */
function widestBand(bands: readonly (readonly [number, number])[]): number {
  let come = 0;
  let widest = 1;
  for (const [from, to] of bands) {
    come = Math.max(come, to);
    widest = Math.max(widest, come - from + 1);
  }
  return widest;
}

function startWarp(
  source: RowSource,
  { order, toSource, radial, bands, bandRows, width }: LaidOut,
): OpenWarp {
  const { channels } = source;
  const ringRows = bandRows + 1;
  const ring = new Uint16Array(ringRows * source.width * channels);
  const out = new Uint16Array(width * channels);
  const sample = sampler(source, ring, ringRows, radial);
  const rows = linearRows(source, order, ring, ringRows);
  let held = 0;
  return {
    async row(y, from, to) {
      const last = bands[y][1];
      while (held <= last && !(await rows.next()).done) held += 1;
      const part = out.subarray(0, (to - from) * channels);
      sample(toSource, from, y, part);
      return part;
    },
    async end() {
      await rows.return(undefined);
    },
  };
}

/** Puts one source row after another into the ring, as linear light. */
async function* linearRows(
  source: RowSource,
  order: 'down' | 'up',
  ring: Uint16Array,
  ringRows: number,
): AsyncGenerator<void, undefined> {
  const line = source.width * source.channels;
  const { toLinear } = source.light;
  let y = 0;
  for await (const { data, rows } of source.batches(order)) {
    for (let r = 0; r < rows; r += 1, y += 1) {
      const to = (y % ringRows) * line;
      for (let i = 0, from = r * line; i < line; i += 1) {
        ring[to + i] = toLinear[data[from + i]] + 0.5;
      }
      yield;
    }
  }
}

/** Fills a part of one row of the frame from the ring. */
function sampler(
  source: RowSource,
  ring: Uint16Array,
  ringRows: number,
  radial: Radial | null,
): (m: Homography, left: number, y: number, out: Uint16Array) => void {
  const { width: W, height: H, channels: C } = source;
  const line = W * C;
  const size = ringRows * line;
  const sums = new Float64Array(C);
  return (m, left, y, out) => {
    const width = out.length / C;
    let u = m[0] * left + m[1] * y + m[2];
    let v = m[3] * left + m[4] * y + m[5];
    let w = m[6] * left + m[7] * y + m[8];
    for (let x = 0, o = 0; x < width; x += 1, o += C, u += m[0], v += m[3], w += m[6]) {
      let sx = u / w;
      let sy = v / w;
      if (radial) [sx, sy] = project(m, ...bend(radial, left + x, y));
      if (!(sx >= -0.5 && sx <= W - 0.5 && sy >= -0.5 && sy <= H - 0.5)) {
        for (let c = 0; c < C; c += 1) out[o + c] = 0;
        continue;
      }
      const ix = Math.floor(sx);
      const iy = Math.floor(sy);
      const px = (((sx - ix) * phases + 0.5) | 0) * 4;
      const py = (((sy - iy) * phases + 0.5) | 0) * 4;
      if (ix >= 1 && ix < W - 2 && iy >= 1 && iy < H - 2) {
        const w0 = weights[px];
        const w1 = weights[px + 1];
        const w2 = weights[px + 2];
        const w3 = weights[px + 3];
        let at = ((iy - 1) % ringRows) * line + (ix - 1) * C;
        sums.fill(0);
        for (let j = 0; j < 4; j += 1) {
          const z = weights[py + j];
          for (let c = 0; c < C; c += 1) {
            const i = at + c;
            sums[c] +=
              z * (w0 * ring[i] + w1 * ring[i + C] + w2 * ring[i + 2 * C] + w3 * ring[i + 3 * C]);
          }
          at += line;
          if (at >= size) at -= size;
        }
      } else {
        // At the border the outermost pixels repeat.
        sums.fill(0);
        for (let j = 0; j < 4; j += 1) {
          const row = (Math.min(H - 1, Math.max(0, iy - 1 + j)) % ringRows) * line;
          for (let i = 0; i < 4; i += 1) {
            const at = row + Math.min(W - 1, Math.max(0, ix - 1 + i)) * C;
            const z = weights[py + j] * weights[px + i];
            for (let c = 0; c < C; c += 1) sums[c] += z * ring[at + c];
          }
        }
      }
      for (let c = 0; c < C; c += 1) {
        const value = sums[c] / (unity * unity) + 0.5;
        out[o + c] = value < 0 ? 0 : value > 65535 ? 65535 : value;
      }
    }
  };
}
