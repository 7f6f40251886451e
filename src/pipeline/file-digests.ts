/**
 * SHA-256 of capture files, remembered by size and times: reading gigabytes again to learn
 * that nothing has changed would be the slowest part of a build with nothing to do.
 */
import { createHash } from 'node:crypto';
import { createReadStream, statSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { z } from 'zod';
import { readJson, writeWhole, type Store } from './store.ts';

const entry = z.strictObject({
  size: z.number(),
  /** Milliseconds; a file restored with its old mtime still has a new ctime. */
  mtime: z.number(),
  ctime: z.number(),
  inode: z.number(),
  sha256: z.string(),
});
const indexSchema = z.record(z.string(), entry);
type Index = z.output<typeof indexSchema>;

export interface FileDigests {
  /** SHA-256 of a file, 64 hex digits. */
  of(path: string): Promise<string>;
  /** Keep what was learnt for the next build. */
  save(): Promise<void>;
}

/** A file changed within this time of being digested could change again without a new mtime. */
const settledMilliseconds = 2_000;

/** Files that are asked for, without a promise each, between two turns of other work. */
const turnEvery = 32;

export async function openFileDigests(store: Store): Promise<FileDigests> {
  const place = join(store.root, 'file-digests.json');
  const kept = await readJson(place, (value) => indexSchema.parse(value));
  const index: Index = kept.ok ? kept.value : {};
  const seen: Index = {};
  let changed = false;
  const young: Index = {};
  let asked = 0;

  async function of(path: string): Promise<string> {
    asked += 1;
    if (asked % turnEvery === 0) await setImmediate();
    const { size, mtimeMs, ctimeMs, ino } = statSync(path);
    const now = { size, mtime: mtimeMs, ctime: ctimeMs, inode: ino };
    const before = index[path] as Index[string] | undefined;
    if (before && same(before, now)) {
      seen[path] = before;
      return before.sha256;
    }
    const sha256 = await digestFile(path);
    if (isSettled(now)) {
      seen[path] = { ...now, sha256 };
      changed = true;
    } else {
      young[path] = { ...now, sha256 };
    }
    return sha256;
  }

  async function save(): Promise<void> {
    for (const [path, before] of Object.entries(young)) {
      const found = await stat(path).catch(() => null);
      if (!found || !isSettled(before)) continue;
      const now = {
        size: found.size,
        mtime: found.mtimeMs,
        ctime: found.ctimeMs,
        inode: found.ino,
      };
      if (!same(before, now)) continue;
      seen[path] = before;
      changed = true;
    }
    if (!changed) return;
    await writeWhole(store, place, `${JSON.stringify({ ...index, ...seen })}\n`);
  }

  return { of, save };
}

function isSettled({ mtime, ctime }: { mtime: number; ctime: number }): boolean {
  return Date.now() - Math.max(mtime, ctime) > settledMilliseconds;
}

function same(a: Omit<Index[string], 'sha256'>, b: Omit<Index[string], 'sha256'>): boolean {
  return a.size === b.size && a.mtime === b.mtime && a.ctime === b.ctime && a.inode === b.inode;
}

/** SHA-256 of a file's bytes, streamed. */
export async function digestFile(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path, { highWaterMark: 4 << 20 })) {
    hash.update(chunk as Buffer);
  }
  return hash.digest('hex');
}
