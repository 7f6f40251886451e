/**
 * The text files of a bag: declaration, manifests, description. Text in, values out; what is
 * wrong is said in sentences.
 *
 * References
 * - Kunze, J., Littman, J., Madden, E., Scancella, J. and Adams, C. (2018). The BagIt File
 *   Packaging Format (V1.0). RFC 8493. doi:10.17487/RFC8493
 */

export interface BagDeclaration {
  /** `1.0`, `0.97`. */
  readonly version: string;
  /** Encoding of the other tag files. */
  readonly encoding: string;
}

export type Parsed<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: string };

const lines = (text: string) => text.split(/\r\n|\n|\r/).filter((line) => line !== '');

/** `bagit.txt` (RFC 8493, 2.1.1): exactly two lines, no byte order mark. */
export function parseDeclaration(text: string): Parsed<BagDeclaration> {
  if (text.startsWith('\uFEFF')) {
    return { ok: false, reason: 'bagit.txt begins with a byte order mark.' };
  }
  const [first = '', second = '', ...rest] = lines(text);
  const version = /^BagIt-Version: (\d+\.\d+)$/.exec(first)?.[1];
  const encoding = /^Tag-File-Character-Encoding: (\S+)$/.exec(second)?.[1];
  if (version === undefined) {
    const reason = `bagit.txt has "${first}" where "BagIt-Version: 1.0" is expected.`;
    return { ok: false, reason };
  }
  if (encoding === undefined || rest.length > 0) {
    const reason = 'bagit.txt does not say the encoding of tag files in its second and last line.';
    return { ok: false, reason };
  }
  return { ok: true, value: { version, encoding } };
}

/** Whether a bag follows RFC 8493 itself and not one of its drafts. */
export function isFinal({ version }: BagDeclaration): boolean {
  return Number(version) >= 1;
}

export interface ManifestEntry {
  readonly digest: string;
  /** Decoded, without a leading `./`. */
  readonly path: string;
}

export interface ParsedManifest {
  readonly entries: readonly ManifestEntry[];
  readonly errors: readonly string[];
  readonly warnings: readonly string[];
}

/** CR and LF are written as references everywhere; the per cent sign itself since 1.0. */
function decodedPath(path: string, final: boolean): string {
  const pattern = final ? /%(0A|0D|25)/gi : /%(0A|0D)/gi;
  return path.replace(pattern, (_, code: string) => String.fromCharCode(parseInt(code, 16)));
}

/** Why a path may not be in a bag; null where it may. Refused on every system: bags travel. */
export function pathFault(path: string): string | null {
  if (/^\/|^~|^[A-Za-z]:|^\\\\|^%[A-Za-z]+%/.test(path)) return 'leads out of the bag';
  const parts = path.replace(/\\(?=\.)/g, '').split(/[\\/]/);
  if (parts.includes('..')) return 'leads out of the bag';
  return null;
}

/** A payload or tag manifest (2.1.3, 2.2.1). `name` is for the sentences. */
export function parseManifest(
  name: string,
  text: string,
  declaration: BagDeclaration,
): ParsedManifest {
  const final = isFinal(declaration);
  const entries: ManifestEntry[] = [];
  const errors: string[] = [];
  const warnings = new Set<string>();
  const seen = new Map<string, string>();
  for (const line of lines(text.replace(/^\uFEFF/, ''))) {
    const found = /^([0-9A-Fa-f]+)[ \t]+(\*?)(.+)$/.exec(line);
    if (!found) {
      errors.push(`${name} has a line that is no digest and path: "${line}".`);
      continue;
    }
    const [, digest, star, written] = found;
    const path = decodedPath(written, final).replace(/^\.\//, '');
    if (star) warnings.add(`${name} marks files with "*", as checksum tools do.`);
    if (written.startsWith('./')) warnings.add(`${name} begins paths with "./".`);
    const fault = pathFault(path);
    if (fault) {
      errors.push(`${name} lists "${written}", which ${fault}.`);
      continue;
    }
    const before = seen.get(path);
    if (before !== undefined && (final || before !== digest.toLowerCase())) {
      errors.push(`${name} lists "${path}" twice.`);
    } else if (before !== undefined) {
      warnings.add(`${name} lists "${path}" twice with the same digest.`);
    }
    seen.set(path, digest.toLowerCase());
    entries.push({ digest: digest.toLowerCase(), path });
  }
  for (const sentence of alike(name, [...seen.keys()])) warnings.add(sentence);
  return { entries, errors, warnings: [...warnings] };
}

/** Paths that are one file on some systems (RFC 8493, 6.1): other case, other composition. */
function alike(name: string, paths: readonly string[]): string[] {
  const first = new Map<string, string>();
  return paths.flatMap((path) => {
    const key = sameName(path);
    const other = first.get(key);
    first.set(key, path);
    return other === undefined
      ? []
      : [`${name} lists "${other}" and "${path}", which are one file on some systems.`];
  });
}

/** What a file system may take for the same name. */
export function sameName(path: string): string {
  return path.normalize('NFC').toLowerCase();
}

/** Paths in `fetch.txt` (2.2.3): address, length, path. */
export function parseFetch(text: string): { paths: string[]; errors: string[] } {
  const errors: string[] = [];
  const paths = lines(text).flatMap((line) => {
    const path = /^\S+\s+(?:\d+|-)\s+(.+)$/.exec(line)?.[1];
    if (path === undefined) {
      errors.push(`fetch.txt has a line that is no address, length and path: "${line}".`);
      return [];
    }
    const fault = pathFault(path);
    if (fault) errors.push(`fetch.txt lists "${path}", which ${fault}.`);
    return [path];
  });
  return { paths, errors };
}

/** Fields of `bag-info.txt` (2.2.2) in order; folded lines are joined. */
export function parseInfo(text: string): (readonly [label: string, value: string])[] {
  const fields: [string, string][] = [];
  for (const line of lines(text.replace(/^\uFEFF/, ''))) {
    const found = /^([^\s:][^:]*?)\s*:\s*(.*)$/.exec(line);
    const last = fields.at(-1);
    if (/^\s/.test(line) && last) last[1] = `${last[1]} ${line.trim()}`;
    else if (found) fields.push([found[1], found[2]]);
  }
  return fields;
}

/** A manifest with sorted paths; the three signs that a path may not show are references. */
export function manifestText(entries: readonly ManifestEntry[]): string {
  const encoded = (path: string) =>
    path.replace(
      /[%\r\n]/g,
      (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase().padStart(2, '0')}`,
    );
  return [...entries]
    .sort((a, b) => (a.path < b.path ? -1 : 1))
    .map(({ digest, path }) => `${digest}  ${encoded(path)}\n`)
    .join('');
}

/** `bag-info.txt`; a value is one line. */
export function infoText(fields: readonly (readonly [label: string, value: string])[]): string {
  return fields
    .map(([label, value]) => `${label}: ${value.replace(/\s+/g, ' ').trim()}\n`)
    .join('');
}
