/**
 * Whether a folder is a bag, and whole: anybody's bag of RFC 8493 or of a draft before it. All
 * faults are told, not only the first.
 *
 * References
 * - RFC 8493, section 3: complete and valid bags.
 */
import { lstat, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import {
  isFinal,
  parseDeclaration,
  parseFetch,
  parseInfo,
  parseManifest,
  sameName,
  type BagDeclaration,
  type ManifestEntry,
} from '../../publish/deposit/tag-files.ts';
import { algorithms, digestsOf, listFiles, type FileDigest } from './bag-files.ts';

export interface BagVerdict {
  readonly valid: boolean;
  readonly version: string | null;
  /** Payload files and bytes that were looked at. */
  readonly files: number;
  readonly bytes: number;
  readonly errors: readonly string[];
  readonly warnings: readonly string[];
}

/** Files that operating systems put into folders by themselves, and take away again. */
const systemFile = /(^|\/)(\.DS_Store|Thumbs\.db|desktop\.ini)$/i;

interface Manifest {
  readonly name: string;
  readonly algorithm: string;
  readonly entries: readonly ManifestEntry[];
}

export async function checkBag(folder: string): Promise<BagVerdict> {
  const errors: string[] = [];
  const warnings: string[] = [];
  const verdict = (version: string | null, files = 0, bytes = 0): BagVerdict => {
    return { valid: errors.length === 0, version, files, bytes, errors, warnings };
  };
  const here = await listFiles(folder).catch(() => null);
  if (here === null) {
    errors.push(`${folder} is no folder that can be read.`);
    return verdict(null);
  }
  if (!here.includes('bagit.txt')) {
    errors.push('There is no bagit.txt, so this is no bag.');
    return verdict(null);
  }
  // With its byte order mark, if it has one: that is a fault of its own.
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  const declared = parseDeclaration(decoder.decode(await readFile(join(folder, 'bagit.txt'))));
  if (!declared.ok) {
    errors.push(declared.reason);
    return verdict(null);
  }
  const declaration = declared.value;
  const { version } = declaration;
  const payload = here.filter((path) => path.startsWith('data/'));
  if (!(await lstat(join(folder, 'data')).catch(() => null))?.isDirectory()) {
    errors.push('There is no folder data/ for the payload.');
  }
  const text = (name: string) => readTag(folder, name, declaration);
  const manifests = await readManifests(here, text, declaration, errors, warnings);
  const own = manifests.filter(({ name }) => name.startsWith('manifest-'));
  if (own.length === 0)
    errors.push('There is no payload manifest, manifest-sha256.txt or another.');
  checkPlaces(manifests, errors);
  checkListed(payload, own, isFinal(declaration), errors);
  if (here.includes('fetch.txt')) errors.push(...parseFetch(await text('fetch.txt')).errors);
  const sums = await checkDigests(folder, here, manifests, errors, warnings);
  const bytes = await totalBytes(folder, payload, sums);
  if (here.includes('bag-info.txt')) {
    const gone = new Set(own.flatMap(({ entries }) => entries.map(({ path }) => path)));
    for (const path of payload) gone.delete(path);
    // Those that a system took away held no byte worth keeping, but were counted.
    const systems = [...gone].filter((path) => systemFile.test(path)).length;
    checkOxum(parseInfo(await text('bag-info.txt')), payload.length + systems, bytes, errors);
  }
  return verdict(version, payload.length, bytes);
}

/** A tag file in the encoding that the bag declares; UTF-16 by its byte order mark. */
async function readTag(
  folder: string,
  name: string,
  { encoding }: BagDeclaration,
): Promise<string> {
  const bytes = await readFile(join(folder, name));
  const bigEndian = /^utf-?16$/i.test(encoding) && bytes[0] === 0xfe && bytes[1] === 0xff;
  return new TextDecoder(bigEndian ? 'utf-16be' : encoding).decode(bytes);
}

async function readManifests(
  here: readonly string[],
  text: (name: string) => Promise<string>,
  declaration: BagDeclaration,
  errors: string[],
  warnings: string[],
): Promise<Manifest[]> {
  const manifests: Manifest[] = [];
  for (const name of here) {
    const written = /^(?:tag)?manifest-([A-Za-z0-9-]+)\.txt$/.exec(name)?.[1];
    if (written === undefined) continue;
    const algorithm = written.toLowerCase().replace('-', '');
    if (!(algorithm in algorithms)) {
      errors.push(`${name} uses "${written}", which this program does not know.`);
      continue;
    }
    try {
      const parsed = parseManifest(name, await text(name), declaration);
      errors.push(...parsed.errors);
      warnings.push(...parsed.warnings);
      manifests.push({ name, algorithm, entries: parsed.entries });
    } catch {
      errors.push(`${name} cannot be read as ${declaration.encoding}.`);
    }
  }
  return manifests;
}

/** Payload manifests list the payload, tag manifests the rest. */
function checkPlaces(manifests: readonly Manifest[], errors: string[]): void {
  for (const { name, entries } of manifests) {
    const payload = name.startsWith('manifest-');
    for (const { path } of entries) {
      if (path.startsWith('data/') === payload) continue;
      errors.push(`${name} lists "${path}", which is ${payload ? 'not in data/' : 'in data/'}.`);
    }
  }
}

/** Each payload file in one manifest at least; since 1.0 in every manifest. */
function checkListed(
  payload: readonly string[],
  manifests: readonly Manifest[],
  final: boolean,
  errors: string[],
): void {
  const listed = manifests.map(({ name, entries }) => ({
    name,
    paths: new Set(entries.map(({ path }) => sameName(path))),
  }));
  for (const path of payload) {
    const without = listed.filter(({ paths }) => !paths.has(sameName(path)));
    if (final ? without.length > 0 : without.length === listed.length && listed.length > 0) {
      errors.push(
        `"${path}" is in the bag, but not in ${without.map(({ name }) => name).join(', ')}.`,
      );
    }
  }
}

async function checkDigests(
  folder: string,
  here: readonly string[],
  manifests: readonly Manifest[],
  errors: string[],
  warnings: string[],
): Promise<ReadonlyMap<string, FileDigest>> {
  const exact = new Set(here);
  const near = new Map(here.map((path) => [sameName(path), path]));
  const wanted = new Map<string, { algorithm: string; digest: string; name: string }[]>();
  for (const { name, algorithm, entries } of manifests) {
    for (const { path, digest } of entries) {
      const found = exact.has(path) ? path : near.get(sameName(path));
      if (found === undefined) {
        const system = systemFile.test(path);
        (system ? warnings : errors).push(`"${path}" is in ${name}, but not in the bag.`);
        continue;
      }
      if (found !== path) warnings.push(`"${path}" of ${name} is written "${found}" on the disk.`);
      wanted.set(found, [...(wanted.get(found) ?? []), { algorithm, digest, name }]);
    }
  }
  const sums = new Map<string, FileDigest>();
  for (const [path, checks] of wanted) {
    if (!(await lstat(join(folder, path))).isFile()) {
      errors.push(`"${path}" is not a plain file.`);
      continue;
    }
    const sum = await digestsOf(join(folder, path), [...new Set(checks.map((c) => c.algorithm))]);
    sums.set(path, sum);
    for (const { algorithm, digest, name } of checks) {
      if (sum.digests[algorithm] === digest) continue;
      errors.push(
        `"${path}" has changed: its ${algorithm} is ${sum.digests[algorithm].slice(0, 12)}…, and ${name} has ${digest.slice(0, 12)}….`,
      );
    }
  }
  return sums;
}

async function totalBytes(
  folder: string,
  payload: readonly string[],
  sums: ReadonlyMap<string, FileDigest>,
): Promise<number> {
  let bytes = 0;
  for (const path of payload) {
    bytes += sums.get(path)?.bytes ?? (await lstat(join(folder, path))).size;
  }
  return bytes;
}

/** Payload-Oxum (2.2.2): bytes and files of the payload. */
function checkOxum(
  info: readonly (readonly [string, string])[],
  files: number,
  bytes: number,
  errors: string[],
): void {
  for (const [label, value] of info) {
    if (label.toLowerCase() !== 'payload-oxum') continue;
    const [oxumBytes, oxumFiles] = value.split('.').map(Number);
    if (oxumBytes === bytes && oxumFiles === files) continue;
    errors.push(
      `Payload-Oxum says ${oxumBytes} bytes in ${oxumFiles} files; there are ${bytes} bytes in ${files} files.`,
    );
  }
}
