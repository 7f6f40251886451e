/** What is in a folder, sorted, links that lead out of the content folder refused. */
import type { Dirent } from 'node:fs';
import { readdir, realpath, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { finding, type Finding } from '../../records/finding.ts';
import { liesWithin } from './read-text.ts';

export interface FolderEntry {
  readonly name: string;
  readonly kind: 'file' | 'folder';
}

export interface FolderListing {
  readonly entries: readonly FolderEntry[];
  readonly findings: readonly Finding[];
  /** False when there is no such folder. */
  readonly present: boolean;
}

/** Files that systems leave behind, which no person put there. */
const leftovers = /^(\.|thumbs\.db$|desktop\.ini$|vips-properties\.xml$)/i;

/**
 * List a folder.
 *
 * @param root Real path of the content folder.
 * @param plate Slug for the findings.
 */
export async function listFolder(
  path: string,
  root: string,
  plate: string,
  shown = '',
): Promise<FolderListing> {
  const findings: Finding[] = [];
  const say = (name: string, code: string, message: string, remedy: string) => {
    findings.push(finding({ level: 'error', plate, file: name, code, message, remedy }));
  };
  let listed: Dirent[];
  try {
    if (!liesWithin(await realpath(path), root)) {
      say(shown, 'leads-out', `${shown || path} is a link that leads out of the content folder.`, putThere);
      return { entries: [], findings, present: true };
    }
    listed = await readdir(path, { withFileTypes: true });
  } catch (error) {
    const { code = 'unknown' } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return { entries: [], findings, present: false };
    const remedy = 'Check that it is a folder and that it may be read.';
    say(shown, 'unreadable', `The folder ${shown || path} cannot be read (${code}).`, remedy);
    return { entries: [], findings, present: true };
  }
  const entries: FolderEntry[] = [];
  for (const dirent of listed) {
    const { name } = dirent;
    if (leftovers.test(name)) continue;
    const label = shown === '' ? name : `${shown}/${name}`;
    const kind = dirent.isSymbolicLink() ? await linkKind(join(path, name), root) : kindOf(dirent);
    if (kind === 'file' || kind === 'folder') entries.push({ name, kind });
    else if (kind === 'leads-out') {
      say(label, 'leads-out', `${label} is a link that leads out of the content folder.`, putThere);
    } else if (kind === 'dangling') {
      say(label, 'dangling-link', `${label} is a link to something that is not there.`, putThere);
    } else {
      say(label, 'not-a-file', `${label} is neither a file nor a folder.`, 'Take it out.');
    }
  }
  entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  findings.sort((a, b) => ((a.file ?? '') < (b.file ?? '') ? -1 : 1));
  return { entries, findings, present: true };
}

const putThere = 'Put the file itself there.';

function kindOf(entry: { isFile(): boolean; isDirectory(): boolean }) {
  return entry.isFile() ? 'file' : entry.isDirectory() ? 'folder' : 'other';
}

async function linkKind(path: string, root: string) {
  try {
    if (!liesWithin(await realpath(path), root)) return 'leads-out';
    return kindOf(await stat(path));
  } catch {
    return 'dangling';
  }
}
