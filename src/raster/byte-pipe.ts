/**
 * A named pipe from a library that writes files to a reader that wants bytes as they come. Only
 * on Linux: there a pipe that was never opened for writing has no end, so the reader may come
 * first, and opening it for both directions, as libvips does, never waits. Such a writer is a
 * reader as well: it does not fail when the other one goes, it waits for ever. So whoever wants
 * no more lets the rest run out.
 *
 * References
 * - Linux man-pages, fifo(7), poll(2) (POLLHUP) and pipe(7) (a pipe holds 64 KiB).
 */
import { execFileSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { closeSync, constants, openSync, rmSync } from 'node:fs';
import { Socket, type SocketConstructorOpts } from 'node:net';
import { join } from 'node:path';
import { pipePrefix, watchPipes } from './pipe-drain.ts';

export interface BytePipe {
  /** Where the writer writes. */
  readonly path: string;
  /** Fill `bytes` with what comes next; false when less than that came before the end. */
  fill(bytes: Uint8Array): Promise<boolean>;
  /** To be called when the writer is done, or has failed before it opened the pipe. */
  end(): void;
  /** Take no more; what still comes is thrown away. */
  close(): void;
}

const pipeBytes = 65536;

/**
 * Make a pipe in `folder`, which exists. A thread that does so must not keep track of open files
 * by itself (`trackUnmanagedFds: false`): the socket closes the pipe.
 *
 * @param reader Part of its name, for `drainPipes`.
 * @param ending How its name ends; libraries go by that.
 * @returns null where the system or the folder's file system has none.
 */
export function openBytePipe(folder: string, reader: string, ending: string): BytePipe | null {
  if (process.platform !== 'linux') return null;
  const path = join(folder, `${pipePrefix(reader)}-${randomUUID()}${ending}`);
  watchPipes(folder);
  let fd: number;
  try {
    execFileSync('mkfifo', [path], { stdio: 'ignore' });
    fd = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
  } catch {
    rmSync(path, { force: true });
    return null;
  }

  const chunk = Buffer.alloc(pipeBytes);
  // What of the chunk is not taken yet, and what is being filled.
  let [from, to, filled] = [0, 0, 0];
  let [ended, closed] = [false, false];
  let wanted: { readonly bytes: Uint8Array; readonly done: (whole: boolean) => void } | null = null;

  /** Whether more is wanted. */
  function serve(): boolean {
    if (!wanted) return closed;
    const { bytes, done } = wanted;
    const some = Math.min(to - from, bytes.length - filled);
    bytes.set(chunk.subarray(from, from + some), filled);
    [from, filled] = [from + some, filled + some];
    if (filled < bytes.length && !ended) return true;
    wanted = null;
    done(filled === bytes.length);
    return false;
  }

  const options = { fd, readable: true, writable: false } satisfies SocketConstructorOpts;
  const socket = new Socket({
    ...options,
    onread: {
      buffer: chunk,
      callback(count) {
        [from, to] = [0, count];
        return serve();
      },
    },
  });
  const over = () => {
    ended = true;
    serve();
    if (closed) socket.destroy();
  };
  socket.on('end', over).on('error', over).on('close', over);
  socket.pause();

  return {
    path,
    fill(bytes) {
      return new Promise((resolve) => {
        filled = 0;
        wanted = { bytes, done: resolve };
        if (serve()) socket.resume();
      });
    },
    end() {
      try {
        // A writer that comes and goes is an end for the reader even if none came before.
        closeSync(openSync(path, constants.O_WRONLY | constants.O_NONBLOCK));
      } catch {
        // Nobody reads any more.
      }
      rmSync(path, { force: true });
    },
    close() {
      closed = true;
      wanted?.done(false);
      wanted = null;
      if (ended) socket.destroy();
      else socket.resume();
    },
  };
}
