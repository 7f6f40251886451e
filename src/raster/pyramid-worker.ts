/** The other end of `tile-picture.ts`: one job, one answer. */
import { basename } from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import { openRows } from './capture-rows.ts';
import { asFailure, CaptureFault, diskFull } from './capture-fault.ts';
import { writePyramid, type PyramidResult } from './pyramid.ts';
import { openMosaicFile } from './mosaic-rows.ts';
import type { TileAnswer, TileWork } from './tile-picture.ts';
import { warpRows } from './warped-rows.ts';

async function tile(job: TileWork): Promise<PyramidResult> {
  const { composedFrom } = job;
  const source = composedFrom
    ? await openMosaicFile(job.path, composedFrom, { ...job, pipe: undefined })
    : await openRows(job.path, job);
  try {
    const { frame } = job;
    const rows = frame
      ? warpRows(source, frame.homography, frame.width, frame.height, frame.radial)
      : source;
    return await writePyramid(rows, job);
  } finally {
    await source.close();
  }
}

function failed(error: unknown): TileAnswer {
  const fault = error instanceof CaptureFault ? error : diskFull(basename(job.path), error);
  if (fault) return asFailure(fault);
  const message = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return { ok: false, code: null, message };
}

const job = workerData as TileWork;
parentPort?.postMessage(
  await tile(job).then<TileAnswer, TileAnswer>((value) => ({ ok: true, value }), failed),
);
