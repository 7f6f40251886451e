/**
 * Emptying pipes whose reader is gone. The thread that writes one waits for a reader for ever,
 * and a process cannot end before the threads of libuv have: a build that gives up in the middle
 * of a picture would hang.
 */
import { closeSync, constants, lstatSync, openSync, readdirSync, readSync, rmSync } from 'node:fs';
import { join } from 'node:path';

/** How the names of a reader's pipes begin; without one, those of this process. */
export const pipePrefix = (reader = ''): string => `${process.pid}-pipe-${reader}`;

const watched = new Set<string>();

/** Empty what pipes are left in `folder` when this thread's process ends. */
export function watchPipes(folder: string): void {
  if (watched.size === 0) {
    process.once('exit', () => {
      for (const each of watched) drainPipes(each);
    });
  }
  watched.add(folder);
}

/** Let whoever writes a pipe in `folder` for a reader come to an end; returns when it has. */
export function drainPipes(folder: string, reader?: string): void {
  for (const path of pipesIn(folder, pipePrefix(reader))) {
    const fd = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
    // A writer that has not come yet will make a file of its own, which needs no reader.
    rmSync(path, { force: true });
    const thrownAway = Buffer.alloc(65536);
    for (let more = true; more;) {
      try {
        more = readSync(fd, thrownAway) > 0;
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') break;
        Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 0.2);
      }
    }
    closeSync(fd);
  }
}

function pipesIn(folder: string, prefix: string): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.startsWith(prefix))
      .map((name) => join(folder, name))
      .filter((path) => lstatSync(path).isFIFO());
  } catch {
    return [];
  }
}
