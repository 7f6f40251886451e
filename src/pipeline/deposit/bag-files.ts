/** Files of a bag: what is there, and their digests by several algorithms in one reading. */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';

/** Algorithms by the names that manifests use (RFC 8493, 2.4). */
export const algorithms: Readonly<Record<string, string>> = {
  md5: 'md5',
  sha1: 'sha1',
  sha224: 'sha224',
  sha256: 'sha256',
  sha384: 'sha384',
  sha512: 'sha512',
};

/** Every file below a folder, relative with "/", sorted. A link is listed and never followed. */
export async function listFiles(folder: string, within = ''): Promise<string[]> {
  const entries = await readdir(join(folder, within), { withFileTypes: true });
  const found = await Promise.all(
    entries.map(async (entry) => {
      const path = within ? `${within}/${entry.name}` : entry.name;
      return entry.isDirectory() ? listFiles(folder, path) : [path];
    }),
  );
  return found.flat().sort();
}

export interface FileDigest {
  readonly bytes: number;
  /** Hexadecimal, by the algorithm's name in manifests. */
  readonly digests: Readonly<Record<string, string>>;
}

/** @param names Of {@link algorithms}. */
export async function digestsOf(path: string, names: readonly string[]): Promise<FileDigest> {
  const hashes = names.map((name) => createHash(algorithms[name]));
  let bytes = 0;
  for await (const chunk of createReadStream(path, { highWaterMark: 4 << 20 })) {
    const part = chunk as Buffer;
    bytes += part.length;
    for (const hash of hashes) hash.update(part);
  }
  const digests = Object.fromEntries(names.map((name, k) => [name, hashes[k].digest('hex')]));
  return { bytes, digests };
}
