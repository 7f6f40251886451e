/**
 * Leave to decode through a pipe, for one thread at a time.
 *
 * A decoder that waits for its reader holds one of libuv's few threads, and the reader of a
 * pyramid waits for encoders that need one as well. With every thread held by a decoder nothing
 * would go on; with one decoder and two threads or more it always does. Whoever gets no leave
 * decodes into a file. A thread that dies keeps its leave, and the others go on by way of files.
 */

/** Shared by all threads of a process: 1 while somebody has leave. */
export type PipeSlot = Int32Array<SharedArrayBuffer>;

/**
 * Samples of the smallest picture that is worth a pipe, which takes a process to make; a smaller
 * one's scratch file is written in less than a second.
 */
export const pipeFrom = 1e8;

export const openPipeSlot = (): PipeSlot => new Int32Array(new SharedArrayBuffer(4));

export interface PipeUse {
  readonly slot: PipeSlot;
  /** Whose pipe it is, as a part of its name. */
  readonly reader: string;
  /** Samples of the smallest picture that is worth a pipe. */
  readonly from: number;
}

/** Gives the leave back; may be called again. */
export type LeavePipe = () => void;

/** @returns null where somebody else has it, or there is one thread only. */
export function claimPipe(slot: PipeSlot): LeavePipe | null {
  if (Number(process.env['UV_THREADPOOL_SIZE'] ?? 4) < 2) return null;
  if (Atomics.compareExchange(slot, 0, 0, 1) !== 0) return null;
  let held = true;
  return () => {
    if (held) Atomics.store(slot, 0, 0);
    held = false;
  };
}
