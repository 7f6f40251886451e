/**
 * Rows of any picture that libvips decodes, as they come: the layout of `scratch-rows.ts` through
 * a pipe instead of a file. Of a JPEG of 900 megapixels the file would have 2.7 GB, and writing
 * it was a fifth of all the time that its pyramid took (8 of 38 s, nearly all of it for fresh
 * pages).
 *
 * libvips waits for the reader in one of libuv's threads. Whoever reads must therefore not depend
 * on all of these threads: see `pipe-slot.ts`.
 */
import { mkdir } from 'node:fs/promises';
import { openBytePipe } from './byte-pipe.ts';
import type { Sharp } from './libvips.ts';
import type { RowBatch } from './row-source.ts';
import {
  decodeToScratch,
  headerBytes,
  readHeader,
  type Scratch,
  type ScratchShape,
} from './scratch-rows.ts';

/** Few enough to stay in a core's own cache until they have been looked at. */
const batchBytes = 1e6;

/**
 * Decode a picture while its rows are asked for. A second pass, or one from the last row, decodes
 * it into a scratch file after all.
 *
 * @param picture Gives the decoder, each time anew.
 * @param reader Part of the pipe's name.
 * @returns null where there are no pipes.
 * @throws what libvips throws when it cannot decode: here for the head, from `rows` for pixels.
 */
export async function decodeThroughPipe(
  picture: () => Sharp,
  folder: string,
  reader: string,
): Promise<Scratch | null> {
  await mkdir(folder, { recursive: true });
  const pipe = openBytePipe(folder, reader, '.v');
  if (!pipe) return null;
  // It fails always: when all has been written libvips looks for the size of its file, and a pipe
  // has none. What it says then may be lost to another thread's end, so nothing but the number of
  // bytes tells whether every pixel came.
  const failed = picture()
    .toFile(pipe.path)
    .then(
      () => null,
      (error: unknown) => error as Error,
    )
    .finally(() => {
      pipe.end();
    });

  const fill = async (bytes: Uint8Array): Promise<void> => {
    if (!(await pipe.fill(bytes))) throw (await failed) ?? new Error('fewer rows than expected');
  };
  const close = async (): Promise<void> => {
    pipe.close();
    await failed;
  };

  async function* piped({
    width,
    height,
    channels,
    depth,
  }: ScratchShape): AsyncGenerator<RowBatch> {
    const line = (width * channels * depth) / 8;
    const most = Math.min(height, Math.max(1, Math.floor(batchBytes / line)));
    const buffer = new Uint8Array(new ArrayBuffer(most * line));
    try {
      for (let done = 0; done < height; done += most) {
        const rows = Math.min(most, height - done);
        const bytes = buffer.subarray(0, rows * line);
        await fill(bytes);
        const data = depth === 16 ? new Uint16Array(buffer.buffer, 0, bytes.length / 2) : bytes;
        yield { rows, data };
      }
    } finally {
      await close();
    }
  }

  const header = Buffer.from(new ArrayBuffer(headerBytes));
  let shape: ScratchShape;
  try {
    await fill(header);
    shape = readHeader(header);
  } catch (error) {
    await close();
    throw error;
  }
  let read = false;
  let scratch: Scratch | null = null;
  return {
    ...shape,
    async *rows(order) {
      if (order === 'down' && !read) {
        read = true;
        yield* piped(shape);
        return;
      }
      if (!read) await close();
      read = true;
      scratch ??= await decodeToScratch(picture(), folder);
      yield* scratch.rows(order);
    },
    async close() {
      await close();
      await scratch?.close();
    },
  };
}
