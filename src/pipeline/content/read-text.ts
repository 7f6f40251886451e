/**
 * A text file of the content folder: a plain file, inside the folder, in UTF-8, of sane length.
 * Anything else is a finding. A named pipe would never end, a link may lead anywhere.
 */
import { readFile, realpath, stat } from 'node:fs/promises';
import { relative, sep, isAbsolute } from 'node:path';
import { finding, type Finding } from '../../records/finding.ts';

/** Bytes; a very long page has 100,000. */
const longestText = 2_000_000;

export interface TextAbout {
  /** Real path of the folder that nothing may lead out of. */
  readonly root: string;
  readonly plate: string;
  readonly file: string;
}

export type TextRead =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly absent: boolean; readonly finding: Finding };

/** Whether a real path lies in a folder, given by its real path. */
export function liesWithin(path: string, root: string): boolean {
  const way = relative(root, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

export async function readText(path: string, about: TextAbout): Promise<TextRead> {
  const { root, plate, file } = about;
  const refuse = (code: string, message: string, remedy: string, line: number | null = null) => ({
    ok: false as const,
    absent: code === 'no-file',
    finding: finding({ level: 'error', plate, file, line, code, message, remedy }),
  });
  try {
    if (!liesWithin(await realpath(path), root)) {
      return refuse('leads-out', `${file} is a link that leads out of the content folder.`, putItHere);
    }
    const stats = await stat(path);
    if (!stats.isFile()) {
      return refuse('not-a-file', `${file} is not a file.`, `Put a text file of that name there.`);
    }
    if (stats.size > longestText) {
      const message = `${file} has ${stats.size} bytes; a text may have ${longestText}.`;
      return refuse('too-long', message, 'Check that it is the right file.');
    }
    return decode(await readFile(path), refuse, file);
  } catch (error) {
    const { code = 'unknown' } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') {
      return refuse('no-file', `There is no ${file}.`, 'Write it; the README shows one.');
    }
    const remedy = 'Check that the file may be read and that its disk is sound.';
    return refuse('unreadable', `${file} cannot be read (${code}).`, remedy);
  }
}

const putItHere = 'Put the file itself there.';

function decode(
  bytes: Buffer,
  refuse: (code: string, message: string, remedy: string, line?: number) => TextRead,
  file: string,
): TextRead {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  try {
    const text = decoder.decode(bytes);
    if (!text.includes('\0')) return { ok: true, text };
  } catch {
    // Which line it is on is found below.
  }
  let line = 1;
  for (let start = 0; start < bytes.length; line++) {
    const end = bytes.indexOf(10, start);
    const part = bytes.subarray(start, end < 0 ? bytes.length : end);
    if (part.includes(0) || !isUtf8(part)) break;
    start = end < 0 ? bytes.length : end + 1;
  }
  const message = `${file} is not text in UTF-8: line ${line} has bytes that mean nothing in it.`;
  return refuse('not-utf-8', message, 'Save it as UTF-8 in your editor.', line);
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}
