/**
 * A capture file as rows of codes, with what the codes stand for: the way in for everything that
 * reads pixels. The profile is honoured in one of two ways:
 *
 * - a profile of primaries and one curve becomes part of {@link Light} and costs no pass;
 * - any other is converted by LittleCMS to 16-bit sRGB on the way into the scratch file. The
 *   destination is always named: without one, sharp hands 16-bit pictures out in another
 *   display's primaries (measured: up to 40 of 255 wrong).
 */
import { curvedLight, srgbLight, type Light } from '../imaging/colour/light.ts';
import { decodeSrgb } from '../imaging/colour/srgb-curve.ts';
import { openBytes } from './byte-reader.ts';
import { defaultPixelLimit, readHead, type CaptureHead } from './capture-head.ts';
import { CaptureFault } from './capture-fault.ts';
import { decodeCapture } from './decode-capture.ts';
import type { PipeUse } from './pipe-slot.ts';
import { readMatrixProfile, type MatrixProfile } from './matrix-profile.ts';
import type { RowBatch, RowSource } from './row-source.ts';
import type { Scratch } from './scratch-rows.ts';
import { plainTiffRows, type TiffLayout } from './tiff-rows.ts';

export interface OpenOptions {
  /** Most pixels that a picture may have. */
  readonly pixelLimit?: number | undefined;
  /** Folder for scratch files; the system's own where none is named. */
  readonly scratch?: string | undefined;
  /** Given by whoever reads the rows once, from the first to the last. */
  readonly pipe?: PipeUse | undefined;
}

/**
 * Open a capture: rows after its orientation has been applied, in source codes.
 *
 * @throws CaptureFault when the file is no capture; also from `batches()` when it turns out
 *   there.
 */
export async function openRows(path: string, options: OpenOptions = {}): Promise<RowSource> {
  return rowsOf(await readHead(path, options.pixelLimit ?? defaultPixelLimit), options);
}

/** The same for a head that has been read. */
export async function rowsOf(head: CaptureHead, options: OpenOptions): Promise<RowSource> {
  const profile = head.profile && readMatrixProfile(head.profile);
  const direct = head.profile === null || profile !== null;
  if (head.layout && direct)
    return await plainRows(head, head.layout, lightOf(profile, head.depth));

  const light = direct ? lightOf(profile, head.depth) : srgbLight(16);
  return scratchSource(await decodeCapture(head, direct ? null : 'srgb', options), head, light);
}

/** What the codes stand for; without a profile sRGB is assumed. */
function lightOf(profile: MatrixProfile | null, depth: 8 | 16): Light {
  if (!profile || isSrgb(profile)) return srgbLight(depth);
  return curvedLight(depth, profile.curve, profile.matrix);
}

/** Whether a profile is sRGB but for the rounding of its writer: at most half a code of 255. */
function isSrgb({ curve, matrix }: MatrixProfile): boolean {
  for (let i = 0; i <= 64; i += 1) {
    if (Math.abs(curve(i / 64) - decodeSrgb(i / 64)) > 0.0005) return false;
  }
  return matrix === null || matrix.every((v, i) => Math.abs(v - (i % 4 === 0 ? 1 : 0)) < 0.002);
}

async function plainRows(head: CaptureHead, layout: TiffLayout, light: Light): Promise<RowSource> {
  const file = await openBytes(head.path);
  const { width, height, channels, depth } = layout;
  return {
    width,
    height,
    channels,
    depth,
    light,
    batches: (order = 'down') => plainTiffRows(file, layout, order),
    close: () => file.close(),
  };
}

function scratchSource(scratch: Scratch, head: CaptureHead, light: Light): RowSource {
  const { width, height, depth, channels: stored } = scratch;
  const alpha = stored === 2 || stored === 4;
  const channels = stored >= 3 ? 3 : 1;
  return {
    width,
    height,
    channels,
    depth,
    light,
    batches: (order = 'down') =>
      alpha ? opaqueRows(scratch.rows(order), channels, head.name) : scratch.rows(order),
    close: () => scratch.close(),
  };
}

/** Rows without their alpha channel, which must say "opaque" everywhere. */
async function* opaqueRows(
  rows: AsyncGenerator<RowBatch>,
  channels: 1 | 3,
  name: string,
): AsyncGenerator<RowBatch> {
  for await (const { data, rows: count } of rows) {
    const opaque = data instanceof Uint8Array ? 255 : 65535;
    const pixels = data.length / (channels + 1);
    for (let i = 0, from = 0, to = 0; i < pixels; i += 1) {
      for (let c = 0; c < channels; c += 1) data[to++] = data[from++];
      if (data[from++] !== opaque) {
        throw new CaptureFault(
          'transparent',
          `${name} has transparent pixels; light behind a plate is not known, so a capture must be opaque.`,
          'Flatten the picture on the ground that is meant and save it without an alpha channel.',
        );
      }
    }
    yield { data: data.subarray(0, pixels * channels), rows: count };
  }
}
