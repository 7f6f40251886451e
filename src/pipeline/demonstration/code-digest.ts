/** A digest of the programs that decide what the captures look like: when they change, the captures are old. */
import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

const source = join(import.meta.dirname, '..', '..');

const scenes = ['imaging/scenes'];
const everything = [...scenes, 'imaging/render', 'optics', 'pipeline/demonstration'];

/** SHA-256 over the sources of the scenes, or of all that is rendered. */
export async function codeDigest(what: 'scenes' | 'everything'): Promise<string> {
  const hash = createHash('sha256');
  for (const folder of what === 'scenes' ? scenes : everything) {
    const names = (await readdir(join(source, folder))).filter(decides).sort();
    for (const name of names) {
      hash.update(`${folder}/${name}\n`).update(await readFile(join(source, folder, name)));
    }
  }
  return hash.digest('hex');
}

/** Files for the tests of other parts do not decide what captures look like. */
function decides(name: string): boolean {
  return name.endsWith('.ts') && name !== 'test-pair.ts' && name !== 'stand-in.ts';
}
