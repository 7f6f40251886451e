/** A digest of the programs that decide what the captures look like: when they change, the captures are old. */
import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { dirname, join, relative, resolve } from 'node:path';

const source = join(import.meta.dirname, '..', '..');

const roots = { scenes: 'imaging/scenes', everything: 'pipeline/demonstration' } as const;

/** Where the numbers of a picture come from; how a file is packed does not change what it shows. */
const decisive = /^(imaging|optics|pipeline\/demonstration)\//;
const relativeImport = /\bfrom '(\.{1,2}\/[^']+\.ts)'/g;

/** SHA-256 over the sources of the scenes, or of all that is rendered, with what they import. */
export async function codeDigest(what: keyof typeof roots): Promise<string> {
  const texts = new Map<string, string>();
  const root = join(source, roots[what]);
  const waiting = (await readdir(root)).filter((name) => name.endsWith('.ts'));
  const paths = waiting.map((name) => join(root, name));
  for (let path = paths.pop(); path !== undefined; path = paths.pop()) {
    const name = relative(source, path).replaceAll('\\', '/');
    if (texts.has(name) || !decisive.test(name)) continue;
    const text = await readFile(path, 'utf8');
    texts.set(name, text);
    for (const [, target] of text.matchAll(relativeImport)) {
      paths.push(resolve(dirname(path), target));
    }
  }
  const hash = createHash('sha256');
  for (const name of [...texts.keys()].sort()) hash.update(`${name}\n`).update(texts.get(name)!);
  return hash.digest('hex');
}
