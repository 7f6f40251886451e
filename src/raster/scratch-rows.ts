/**
 * Rows of any picture that libvips decodes, by way of a scratch file: sharp has no streamed raw
 * output (it fills one buffer with the whole picture), but it writes libvips' own plain layout
 * in bounded memory. That is a header of 64 bytes, then the samples row after row in the
 * machine's byte order.
 *
 * References
 * - libvips, "The VIPS file format" (the header's fields and their order).
 */
import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { randomUUID } from 'node:crypto';
import { type ByteReader, openBytes } from './byte-reader.ts';
import type { RowBatch } from './row-source.ts';
import type { Sharp } from './libvips.ts';
import { turnRowsOver } from './tiff-rows.ts';

export interface ScratchShape {
  readonly width: number;
  readonly height: number;
  /** Alpha included. */
  readonly channels: number;
  readonly depth: 8 | 16;
}

/** A decoded picture in a scratch file. */
export interface Scratch extends ScratchShape {
  rows(order: 'down' | 'up'): AsyncGenerator<RowBatch>;
  /** Close and delete. */
  close(): Promise<void>;
}

export const headerBytes = 64;
const batchBytes = 4e6;
/** Numbers of the sample formats in the header: unsigned char and unsigned short. */
const formats: Readonly<Record<number, 8 | 16>> = { 0: 8, 2: 16 };

/**
 * Decode a picture into a scratch file in `folder`.
 *
 * @throws what libvips throws when it cannot decode every pixel.
 */
export async function decodeToScratch(picture: Sharp, folder: string): Promise<Scratch> {
  await mkdir(folder, { recursive: true });
  const path = join(folder, `${randomUUID()}.v`);
  try {
    await picture.toFile(path);
    return await openScratch(path);
  } catch (error) {
    await rm(path, { force: true });
    throw error;
  }
}

async function openScratch(path: string): Promise<Scratch> {
  const file = await openBytes(path);
  const shape = readHeader(await file.read(headerBytes, 0));
  return {
    ...shape,
    rows: (order) => scratchRows(file, shape, order),
    async close() {
      await file.close();
      await rm(path, { force: true });
    },
  };
}

/** What the header says of the samples. @param header Bytes at the start of their buffer. */
export function readHeader(header: Buffer): ScratchShape {
  const [, width, height, channels, , format] = new Int32Array(header.buffer, 0, 6);
  const depth = formats[format];
  if (depth === undefined) throw new RangeError(`The scratch file has sample format ${format}.`);
  return { width, height, channels, depth };
}

async function* scratchRows(
  file: ByteReader,
  shape: ScratchShape,
  order: 'down' | 'up',
): AsyncGenerator<RowBatch> {
  const line = (shape.width * shape.channels * shape.depth) / 8;
  const most = Math.max(1, Math.floor(batchBytes / line));
  const buffer = Buffer.from(new ArrayBuffer(Math.min(most, shape.height) * line));
  for (let done = 0; done < shape.height;) {
    const rows = Math.min(most, shape.height - done);
    const top = order === 'down' ? done : shape.height - done - rows;
    await file.fill(buffer, rows * line, headerBytes + top * line);
    const bytes = buffer.subarray(0, rows * line);
    if (order === 'up') turnRowsOver(bytes, line);
    yield {
      rows,
      data: shape.depth === 16 ? new Uint16Array(buffer.buffer, 0, bytes.length / 2) : bytes,
    };
    done += rows;
  }
}
