/** All files under a plate's `captures/`, in folders below it as well. */
import { join } from 'node:path';
import { finding, type Finding } from '../../records/finding.ts';
import { listFolder } from './list-folder.ts';

const deepest = 4;
const mostFiles = 20_000;

export interface CaptureListing {
  /** Relative to `captures/`, with forward slashes, sorted. */
  readonly files: readonly string[];
  readonly findings: readonly Finding[];
  readonly present: boolean;
}

export async function listCaptures(
  plateFolder: string,
  root: string,
  plate: string,
): Promise<CaptureListing> {
  const files: string[] = [];
  const findings: Finding[] = [];
  let present = false;
  const folders: { path: string; shown: string; depth: number }[] = [
    { path: join(plateFolder, 'captures'), shown: 'captures', depth: 0 },
  ];
  for (let folder = folders.shift(); folder; folder = folders.shift()) {
    const listing = await listFolder(folder.path, root, plate, folder.shown);
    present ||= listing.present;
    findings.push(...listing.findings);
    for (const { name, kind } of listing.entries) {
      const shown = `${folder.shown}/${name}`;
      if (kind === 'file') files.push(shown.slice('captures/'.length));
      else if (folder.depth < deepest) {
        folders.push({ path: join(folder.path, name), shown, depth: folder.depth + 1 });
      }
    }
    if (files.length > mostFiles) {
      const message = `captures/ holds more than ${mostFiles} files.`;
      const remedy = 'Keep the captures of each plate in a folder of its own.';
      const about = { level: 'error', plate, file: 'captures', code: 'too-many-files' } as const;
      findings.push(finding({ ...about, message, remedy }));
      break;
    }
  }
  return { files: files.sort(), findings, present };
}
