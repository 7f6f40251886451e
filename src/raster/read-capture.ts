/**
 * The first stage's work on one file: proof that every pixel of it can be decoded, and what it
 * is. The header alone proves nothing; a copy that broke off has a perfect header.
 */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import type { FileResult } from '../records/result.ts';
import { readExif } from './camera-exif.ts';
import { asFailure, type CaptureFailure } from './capture-fault.ts';
import { defaultPixelLimit, readHead } from './capture-head.ts';
import { rowsOf } from './capture-rows.ts';
import { profileName } from './matrix-profile.ts';
import { openPipeSlot, pipeFrom } from './pipe-slot.ts';
import type { RowSource } from './row-source.ts';

export interface ReadOptions {
  /** Most pixels that a picture may have. */
  readonly pixelLimit?: number | undefined;
  /** Folder for scratch files. */
  readonly scratch: string;
}

/** One of its own: whoever only measures needs none of the threads that a decoder may hold. */
const pipe = { slot: openPipeSlot(), reader: 'measure', from: pipeFrom };

export type ReadCapture = { readonly ok: true; readonly value: FileResult } | CaptureFailure;

/**
 * Read one capture to its last pixel. What is wrong with the file comes back as a failure with
 * a sentence; only mistakes of this program are thrown. `name` is the last part of the path.
 */
export async function readCapture(path: string, options: ReadOptions): Promise<ReadCapture> {
  try {
    const head = await readHead(path, options.pixelLimit ?? defaultPixelLimit);
    const source = await rowsOf(head, { ...options, pipe });
    try {
      const measured = await measure(source);
      return {
        ok: true,
        value: {
          name: head.name,
          sha256: await digest(path),
          bytes: head.bytes,
          format: head.format,
          width: source.width,
          height: source.height,
          channels: head.channels,
          depth: head.depth,
          profile: head.profile && (profileName(head.profile) ?? 'unnamed profile'),
          exif: await readExif(head),
          ...measured,
        },
      };
    } finally {
      await source.close();
    }
  } catch (error) {
    return asFailure(error);
  }
}

/** SHA-256 of a file, in hexadecimal. */
async function digest(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path, { highWaterMark: 4 * 1024 * 1024 })) {
    hash.update(chunk as Buffer);
  }
  return hash.digest('hex');
}

async function measure(
  source: RowSource,
): Promise<Pick<FileResult, 'meanLuminance' | 'clippedShare'>> {
  const { width, height, channels, depth } = source;
  const { toLinear, luminance } = source.light;
  const [r, g, b] = channels === 1 ? [1, 0, 0] : luminance;
  const [green, blue] = channels === 1 ? [0, 0] : [1, 2];
  const largest = depth === 16 ? 65535 : 255;
  let sum = 0;
  let clipped = 0;
  for await (const { data, rows } of source.batches()) {
    const samples = rows * width * channels;
    for (let i = 0; i < samples; i += channels) {
      const p = data[i];
      const q = data[i + green];
      const s = data[i + blue];
      sum += r * toLinear[p] + g * toLinear[q] + b * toLinear[s];
      if (p === largest || q === largest || s === largest) clipped += 1;
    }
  }
  const pixels = width * height;
  return { meanLuminance: sum / pixels / 65535, clippedShare: clipped / pixels };
}
