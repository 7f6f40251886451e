/** Path and SHA-256 of every file below a folder, for tests that compare bytes; none where there is no folder. */
import { createHash } from 'node:crypto';
import { folderFiles } from './folder-files.ts';

export async function folderDigests(root: string): Promise<Record<string, string>> {
  const digest = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');
  const files = await folderFiles(root);
  return Object.fromEntries(files.map(([path, bytes]) => [path, digest(bytes)]));
}
