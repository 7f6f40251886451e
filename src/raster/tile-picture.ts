/**
 * From a capture file to its finished pyramid, in a thread of its own: the main thread stays
 * free, and the thread's own limit keeps V8 from letting the young generation grow with the
 * thousands of short-lived objects that an encoder makes (measured: 149 MB without, 36 MB with).
 */
import { randomUUID } from 'node:crypto';
import { MessageChannel, Worker, type MessagePort } from 'node:worker_threads';
import type { Homography } from '../imaging/conventions.ts';
import type { Radial } from '../imaging/radial.ts';
import { CaptureFault, type CaptureFailure } from './capture-fault.ts';
import { drainPipes, watchPipes } from './pipe-drain.ts';
import { openPipeSlot, pipeFrom, type PipeUse } from './pipe-slot.ts';
import type { PyramidOptions, PyramidResult } from './pyramid.ts';

export interface TileJob extends PyramidOptions {
  /** The capture, or the plan of a mosaic. */
  readonly path: string;
  /** Folder of the captures that a plan speaks of; nothing for a capture. */
  readonly composedFrom?: string | undefined;
  /** Folder for scratch files. */
  readonly scratch: string;
  readonly pixelLimit?: number | undefined;
  /** Samples of the smallest picture that is decoded through a pipe. */
  readonly pipeFrom?: number | undefined;
  /** The plate's frame and the way there, where the capture is to be laid into it. */
  readonly frame?:
    | {
        /** Takes a pixel of the capture to the frame. */
        readonly homography: Homography;
        /** Done to a pixel of the frame before the way back. */
        readonly radial?: Radial;
        readonly width: number;
        readonly height: number;
      }
    | undefined;
}

/**
 * The thread's first words. A thread has to strip the types from every module anew, which takes
 * longer than a small pyramid; with Node's cache of compiled modules it happens once.
 */
const start = `
  require('node:module').enableCompileCache();
  import(${JSON.stringify(new URL('./pyramid-worker.ts', import.meta.url).href)});
`;

/** What the thread is given. */
export type TileWork = TileJob & {
  readonly pipe: PipeUse;
  /** Closed by the end of the thread, of whatever kind. */
  readonly life: MessagePort;
};

const slot = openPipeSlot();

/** What the thread answers. */
export type TileAnswer =
  | { readonly ok: true; readonly value: PyramidResult }
  | CaptureFailure
  | { readonly ok: false; readonly code: null; readonly message: string };

/**
 * Tile one capture.
 *
 * @throws CaptureFault when the capture cannot be read; Error when its files cannot be written.
 */
export async function tilePicture(job: TileJob): Promise<PyramidResult> {
  watchPipes(job.scratch);
  const reader = randomUUID();
  const { port1, port2: life } = new MessageChannel();
  // A thread that dies of memory is not reported before its decoder has come to an end.
  port1.once('close', () => {
    drainPipes(job.scratch, reader);
  });
  port1.unref();
  const pipe = { slot, reader, from: job.pipeFrom ?? pipeFrom };
  const answer = await new Promise<TileAnswer>((resolve, reject) => {
    const worker = new Worker(start, {
      eval: true,
      workerData: { ...job, pipe, life } satisfies TileWork,
      transferList: [life],
      // A pipe's number is closed with its socket; at its end the thread would close it again,
      // and by then it may be somebody else's.
      trackUnmanagedFds: false,
      resourceLimits: { maxYoungGenerationSizeMb: 2 },
    });
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', (code) => {
      reject(new Error(`The thread that tiles ${job.path} ended with code ${code}.`));
    });
  });
  if (answer.ok) return answer.value;
  if (answer.code === null) throw new Error(answer.message);
  throw new CaptureFault(answer.code, answer.message, answer.remedy);
}
