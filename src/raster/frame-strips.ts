/**
 * The frames of a set side by side: strips of rows that all frames share, as display bytes on
 * the sRGB curve. For work that looks at one pixel in all frames at once; memory is a strip of
 * each frame, whatever their height.
 */
import { byteOfLight, byteSteps, type Light } from '../imaging/colour/light.ts';
import type { Homography } from '../imaging/conventions.ts';
import type { Radial } from '../imaging/radial.ts';
import { rowLoops } from '../imaging/row-loops.ts';
import { openRows } from './capture-rows.ts';
import { paintCodes } from './paint-row.ts';
import type { RowSource } from './row-source.ts';
import { warpRows } from './warped-rows.ts';

export interface FrameFile {
  readonly path: string;
  /** Its light is multiplied by this, so that all lamps count as equally strong. */
  readonly gain: number;
  /** The way into the common frame, where the file does not lie there already. */
  readonly homography: Homography | null;
  /** Where the lens changed between file and frame. */
  readonly radial?: Radial | null;
}

/** Rows of every frame, three interleaved channels; valid until the next strip is asked for. */
export interface Strip {
  /** First row. */
  readonly top: number;
  readonly rows: number;
  readonly frames: readonly Uint8Array[];
}

export interface FrameStrips {
  readonly width: number;
  readonly height: number;
  /** All strips from the top; may be called again for another pass. */
  strips(): AsyncGenerator<Strip>;
  close(): Promise<void>;
}

export interface FrameOptions {
  /** Size of the common frame, for files that are to be laid into it. */
  readonly frame: { readonly width: number; readonly height: number };
  /** Folder for scratch files. */
  readonly scratch: string;
  /** Rows of a strip. */
  readonly rows?: number;
}

/**
 * Open the frames of a set.
 *
 * @throws CaptureFault when one cannot be read; RangeError when their sizes differ.
 */
export async function openFrames(
  files: readonly FrameFile[],
  { frame, scratch, rows = 32 }: FrameOptions,
): Promise<FrameStrips> {
  const sources: RowSource[] = [];
  const close = async (): Promise<void> => {
    for (const source of sources) await source.close();
  };
  try {
    for (const { path, homography, radial } of files) {
      const source = await openRows(path, { scratch });
      sources.push(
        homography
          ? warpRows(source, homography, frame.width, frame.height, radial ?? null)
          : source,
      );
      const { width, height } = sources[sources.length - 1];
      if (width !== sources[0].width || height !== sources[0].height) {
        throw new RangeError(
          `${path} is ${width} x ${height} pixels, the first frame ${sources[0].width} x ${sources[0].height}. All frames of a set have one size.`,
        );
      }
    }
  } catch (error) {
    await close();
    throw error;
  }
  const { width, height } = sources[0];
  return {
    width,
    height,
    async *strips() {
      const frames = sources.map(() => new Uint8Array(rows * width * 3));
      const readers = sources.map((source, i) => stripReader(source, files[i].gain, frames[i]));
      for (let top = 0; top < height; top += rows) {
        const count = Math.min(rows, height - top);
        for (const read of readers) await read(count);
        yield { top, rows: count, frames };
      }
    },
    close,
  };
}

/** Fills `out` with the next rows of one frame each time it is called. */
function stripReader(
  source: RowSource,
  gain: number,
  out: Uint8Array,
): (rows: number) => Promise<void> {
  const { width, channels } = source;
  const line = width * channels;
  const light = brightened(source.light, gain);
  // Display bytes already, as most captures are: hundreds of millions of look-ups less.
  const same = source.depth === 8 && !light.matrix && light.toByte.every((byte, i) => byte === i);
  const loops = rowLoops({ ...source, light }, { samples: 0, rows: 0 });
  const paint = paintCodes(loops, light);
  const batches = source.batches();
  let data: Uint8Array | Uint16Array = new Uint8Array(0);
  let left = 0;
  let at = 0;
  return async (rows) => {
    for (let y = 0; y < rows; y += 1) {
      if (left === 0) {
        const next = await batches.next();
        if (next.done) throw new RangeError('A frame ended before its last row.');
        data = next.value.data;
        left = next.value.rows;
        at = 0;
      }
      const to = y * width * 3;
      const row = data.subarray(at, at + line);
      if (same && channels === 3) out.set(row, to);
      else {
        loops.codes.set(row);
        paint();
        const { bytes } = loops;
        if (channels === 3) out.set(bytes, to);
        else for (let x = 0; x < width; x += 1) out.fill(bytes[x], to + 3 * x, to + 3 * x + 3);
      }
      at += line;
      left -= 1;
    }
  };
}

/** The same codes for a lamp that is `gain` times as strong. */
function brightened(light: Light, gain: number): Light {
  if (gain === 1) return light;
  const toLinear = light.toLinear.map((v) => Math.min(65535, v * gain));
  return {
    ...light,
    toLinear,
    toByte: Uint8Array.from(toLinear, (v) => byteOfLight[(v * byteSteps + 0.5) | 0]),
  };
}
