/**
 * A bag from a list of files: copied and digested in one reading, described, checked by the
 * same checker that looks at other people's bags, and only then given its name.
 *
 * References
 * - RFC 8493, section 2.
 */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { infoText, manifestText } from '../../publish/deposit/tag-files.ts';
import type { DepositFile } from '../../publish/deposit/premis.ts';
import { digestsOf } from './bag-files.ts';
import { checkBag } from './check-bag.ts';

export interface BagSource {
  /** Within `data/`. */
  readonly path: string;
  /** A file, or the text itself. */
  readonly from: { readonly file: string } | { readonly text: string };
  /** What its SHA-256 must be, where that is known. */
  readonly sha256?: string | undefined;
}

export interface BagPlan {
  readonly sources: readonly BagSource[];
  /** One more payload file, made when the digests of all others are known. */
  readonly last: { path: string; text: (files: readonly DepositFile[]) => string };
  readonly info: readonly (readonly [label: string, value: string])[];
}

/** @throws Error if a file is not what it must be, or the finished bag is not whole. */
export async function writeBag(target: string, plan: BagPlan): Promise<readonly DepositFile[]> {
  const draft = `${target}.part`;
  await rm(draft, { recursive: true, force: true });
  try {
    const files: DepositFile[] = [];
    for (const source of plan.sources) files.push(await put(draft, source));
    const text = plan.last.text(files);
    files.push(await put(draft, { path: plan.last.path, from: { text } }));
    await describe(draft, files, plan.info);
    const verdict = await checkBag(draft);
    if (!verdict.valid) throw new Error(`The bag is not whole: ${verdict.errors.join(' ')}`);
    await rename(draft, target);
    return files;
  } finally {
    await rm(draft, { recursive: true, force: true });
  }
}

async function put(bag: string, { path, from, sha256 }: BagSource): Promise<DepositFile> {
  const name = `data/${path}`;
  const target = join(bag, name);
  await mkdir(dirname(target), { recursive: true });
  const file =
    'file' in from ? await copyDigested(from.file, target) : await wrote(from.text, target);
  if (sha256 !== undefined && sha256 !== file.sha256) {
    throw new Error(
      `${path} is not the file of the last build: its SHA-256 is ${file.sha256.slice(0, 12)}…, expected ${sha256.slice(0, 12)}…. Find out why it changed; \`npm run build\` takes the file of today.`,
    );
  }
  return { path: name, ...file };
}

async function wrote(text: string, target: string) {
  await writeFile(target, text);
  return both(await digestsOf(target, ['sha256', 'sha512']));
}

function both({ bytes, digests }: { bytes: number; digests: Readonly<Record<string, string>> }) {
  return { bytes, sha256: digests['sha256'], sha512: digests['sha512'] };
}

/** Digests of what was read; the checker reads what was written. */
async function copyDigested(source: string, target: string) {
  const hashes = [createHash('sha256'), createHash('sha512')] as const;
  const handle = await open(target, 'wx');
  let bytes = 0;
  try {
    for await (const chunk of createReadStream(source, { highWaterMark: 4 << 20 })) {
      const part = chunk as Buffer;
      for (const hash of hashes) hash.update(part);
      await handle.write(part);
      bytes += part.length;
    }
    await handle.sync();
  } finally {
    await handle.close();
  }
  return { bytes, sha256: hashes[0].digest('hex'), sha512: hashes[1].digest('hex') };
}

async function describe(
  bag: string,
  files: readonly DepositFile[],
  info: BagPlan['info'],
): Promise<void> {
  const bytes = files.reduce((sum, file) => sum + file.bytes, 0);
  const oxum = ['Payload-Oxum', `${bytes}.${files.length}`] as const;
  const tags: Readonly<Record<string, string>> = {
    'bagit.txt': 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n',
    'bag-info.txt': infoText([...info, oxum]),
    'manifest-sha256.txt': manifestText(
      files.map(({ path, sha256 }) => ({ path, digest: sha256 })),
    ),
    'manifest-sha512.txt': manifestText(
      files.map(({ path, sha512 }) => ({ path, digest: sha512 })),
    ),
  };
  for (const [name, text] of Object.entries(tags)) await writeFile(join(bag, name), text);
  for (const algorithm of ['sha256', 'sha512']) {
    const entries = Object.entries(tags).map(([path, text]) => ({
      path,
      digest: createHash(algorithm).update(text).digest('hex'),
    }));
    await writeFile(join(bag, `tagmanifest-${algorithm}.txt`), manifestText(entries));
  }
}
