/** Faults of the machine under a plate: the plate fails with what is known, the others go on. */
import { finding, type Finding } from '../records/finding.ts';
import type { ContentPlate } from './content.ts';
import type { PlateReport } from './plate-worker.ts';

/** Codes of faults that may be gone at the next build although the plate is the same. */
export const passingFaults: ReadonlySet<string> = new Set([
  'disk-full',
  'cache-unwritable',
  'stage-failed',
  'out-of-memory',
  'worker-lost',
  'changed-while-read',
  'unreadable',
  'file-unreadable',
  'disk-lost',
]);

const fullDisk = new Set(['ENOSPC', 'EDQUOT', 'EFBIG', 'disk-full']);
const refused = new Set(['EROFS', 'EACCES', 'EPERM']);
/** What a disk says that fails, and a folder of another machine that no longer answers. */
const lost = new Set([
  ...['EIO', 'EREMOTEIO', 'ENODEV', 'ENXIO', 'ESTALE', 'ENOTCONN', 'ECONNABORTED', 'ECONNRESET'],
  ...['ETIMEDOUT', 'EHOSTDOWN', 'EHOSTUNREACH', 'ENETDOWN', 'ENETUNREACH', 'ESHUTDOWN'],
]);

/** The code of a system's error; Node itself does not know the name of every one. */
export function systemCode(error: unknown): string {
  const { code = '', errno } = error as NodeJS.ErrnoException;
  // 116 on Linux, 70 on macOS and BSD: "stale file handle", the word of a network folder.
  return code.startsWith('Unknown system error') && (errno === -116 || errno === -70)
    ? 'ESTALE'
    : code;
}

/** What to say of a cache folder that stopped the whole build; null for other errors. */
export function cacheFault(cache: string, error: unknown): string | null {
  const code = systemCode(error);
  if (fullDisk.has(code)) {
    return `The disk of the cache folder ${cache} is full (${code}). Make room or set MIRRORLEAF_CACHE to a folder on a larger disk, then build again.`;
  }
  if (refused.has(code)) {
    return `The cache folder ${cache} cannot be written (${code}). Give yourself the right to write there, or set MIRRORLEAF_CACHE to another folder.`;
  }
  if (lost.has(code)) {
    return `The cache folder ${cache} no longer answers (${code}): its disk has failed, or the machine that it lies on is out of reach. Bring it back, then build again; what was finished is kept.`;
  }
  return null;
}

/** What to say of a folder of the exhibit that could not be filled; null for other errors. */
export function exhibitFault(out: string, error: unknown): string | null {
  const code = systemCode(error);
  const why = fullDisk.has(code)
    ? 'its disk is full'
    : refused.has(code)
      ? 'it may not be written'
      : lost.has(code)
        ? 'it no longer answers'
        : null;
  if (why === null) return null;
  return `The exhibit could not be put at ${out}: ${why} (${code}). Nothing half-made has taken its place; when that is mended, build again.`;
}

/** What a stage threw, as a finding. */
export function crash({ slug }: ContentPlate, error: unknown): Finding {
  const code = systemCode(error);
  const { message, stack } = error as Error;
  const about = { level: 'error', plate: slug } as const;
  if (fullDisk.has(code)) {
    return finding({
      ...about,
      code: 'disk-full',
      message: `The disk of the cache folder is full (${message}).`,
      remedy: 'Make room or set MIRRORLEAF_CACHE to a folder on a larger disk, then build again.',
    });
  }
  if (refused.has(code)) {
    return finding({
      ...about,
      code: 'cache-unwritable',
      message: `The cache folder does not let itself be written (${message}).`,
      remedy: 'Give yourself the right to write there, or set MIRRORLEAF_CACHE to another folder.',
    });
  }
  if (code === 'changed-while-read') {
    return finding({
      ...about,
      code,
      message: `${message}.`,
      remedy: 'Wait until the camera or the copy has finished, then build again.',
    });
  }
  if (lost.has(code)) {
    return finding({
      ...about,
      code: 'disk-lost',
      message: `A folder no longer answers (${message}): its disk has failed, or the machine that it lies on is out of reach.`,
      remedy: 'Bring it back, then build again.',
    });
  }
  if (code === 'file-damaged') {
    // It had been read to its last pixel when the plate was begun.
    return finding({
      ...about,
      code: 'unreadable',
      message: `A capture was sound when the plate was begun, and can no longer be read. ${message}`,
      remedy: 'Check the disk or network folder that it lies on, then build again.',
    });
  }
  const place = stack?.split('\n')[1]?.trim();
  return finding({
    ...about,
    code: 'stage-failed',
    message: `A stage stopped with: ${message}${place ? ` (${place})` : ''}.`,
    remedy: 'This is a fault of the program. Please report it with this sentence.',
  });
}

/** What is said of a plate whose thread ended without an answer. */
export function lostReport(plate: ContentPlate, error: unknown): PlateReport {
  const { code, message } = error as NodeJS.ErrnoException;
  const hungry = code === 'ERR_WORKER_OUT_OF_MEMORY';
  const lost = finding({
    level: 'error',
    plate: plate.slug,
    code: hungry ? 'out-of-memory' : 'worker-lost',
    message: hungry
      ? 'There was not enough memory for the plate.'
      : `The thread that worked on the plate ended before its time: ${message}.`,
    remedy: hungry
      ? 'Build with fewer plates at the same time (--jobs 1), or give Node more memory (NODE_OPTIONS=--max-old-space-size=8192).'
      : 'Build again; if it happens again, report it with this sentence.',
  });
  const tally = { made: 0, found: 0 };
  return { outcome: { ok: false, findings: [...plate.findings, lost] }, tally };
}
