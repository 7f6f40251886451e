/**
 * The way of a capture that has to be decoded: through a pipe where the picture is large and its
 * reader can take it, otherwise into a scratch file.
 */
import { tmpdir } from 'node:os';
import { CaptureFault, damaged } from './capture-fault.ts';
import type { CaptureHead } from './capture-head.ts';
import { sharp, type Sharp } from './libvips.ts';
import { claimPipe, type PipeUse } from './pipe-slot.ts';
import { decodeThroughPipe } from './piped-rows.ts';
import type { RowBatch } from './row-source.ts';
import { decodeToScratch, type Scratch } from './scratch-rows.ts';

export interface DecodeOptions {
  readonly scratch?: string | undefined;
  readonly pipe?: PipeUse | undefined;
}

/**
 * @param to Where the profile is to be honoured on the way: the space that it is converted to.
 * @throws CaptureFault; from `rows` as well.
 */
export async function decodeCapture(
  head: CaptureHead,
  to: 'srgb' | null,
  { scratch = tmpdir(), pipe }: DecodeOptions,
): Promise<Scratch> {
  const picture = () => decoder(head, to);
  try {
    const large = head.width * head.height * head.channels >= (pipe?.from ?? Infinity);
    const use = pipe && large ? { ...pipe, folder: scratch, name: head.name } : null;
    const streamed = use ? await piped(picture, use) : null;
    return streamed ?? (await decodeToScratch(picture(), scratch));
  } catch (error) {
    throw damaged(head.name, error);
  }
}

function decoder(head: CaptureHead, to: 'srgb' | null): Sharp {
  // The limit was checked on the head; libvips' own would repeat it with another number.
  const picture = sharp(head.path, {
    limitInputPixels: false,
    ignoreIcc: to === null,
    failOn: 'warning',
    autoOrient: true,
  });
  const deep = to !== null || head.depth === 16;
  if (head.channels === 1 && to === null) picture.toColourspace(deep ? 'grey16' : 'b-w');
  else picture.toColourspace(deep ? 'rgb16' : 'srgb');
  if (to !== null) picture.withIccProfile(to);
  return picture;
}

/** @returns null where there is no leave for a pipe, or no pipe. */
async function piped(
  picture: () => Sharp,
  { folder, slot, reader, name }: PipeUse & { folder: string; name: string },
): Promise<Scratch | null> {
  const leave = claimPipe(slot);
  if (!leave) return null;
  try {
    const found = await decodeThroughPipe(picture, folder, reader);
    if (!found) {
      leave();
      return null;
    }
    return {
      ...found,
      rows: (order) => named(found.rows(order), name),
      close: () => found.close().finally(leave),
    };
  } catch (error) {
    leave();
    throw error;
  }
}

/** The same rows; what goes wrong names the file. */
async function* named(rows: AsyncGenerator<RowBatch>, name: string): AsyncGenerator<RowBatch> {
  try {
    yield* rows;
  } catch (error) {
    throw error instanceof CaptureFault ? error : damaged(name, error);
  }
}
