import { mkdtemp, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ownIdentity } from '../../src/pipeline/lock-owner.ts';
import { withLock } from '../../src/pipeline/lock.ts';

let folder: string;
let file: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-lock-'));
  file = join(folder, 'lock');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const owner = async (pid: number, host: string, since: Date) =>
  writeFile(
    file,
    JSON.stringify({ ...(await ownIdentity()), born: '', pid, host, since: since.toISOString() }),
  );

test('lets one in at a time, and all of them in the end', async () => {
  let inside = 0;
  let most = 0;
  let total = 0;
  const work = async () => {
    inside += 1;
    most = Math.max(most, inside);
    await new Promise((done) => setTimeout(done, 20));
    inside -= 1;
    total += 1;
  };
  await Promise.all([withLock(file, work), withLock(file, work), withLock(file, work)]);
  expect({ most, total }).toEqual({ most: 1, total: 3 });
  expect(await readdir(folder)).toEqual([]);
});

test('gives the lock back when the work fails', async () => {
  await expect(withLock(file, () => Promise.reject(new Error('no film')))).rejects.toThrow();
  expect(await withLock(file, () => Promise.resolve('in'))).toBe('in');
});

test('takes over from an owner that no longer lives', async () => {
  // Process numbers end well below this on every system that Node runs on.
  await owner(2 ** 30, hostname(), new Date());
  expect(await withLock(file, () => Promise.resolve('in'))).toBe('in');
});

test('takes over an unreadable lock', async () => {
  await writeFile(file, '{"pid":');
  expect(await withLock(file, () => Promise.resolve('in'))).toBe('in');
});

test('gives a lock without a name ten seconds to get one, as a slow network folder needs', async () => {
  await writeFile(file, '');
  const young = withLock(file, () => Promise.resolve('in'));
  await new Promise((done) => setTimeout(done, 500));
  await expect(readFile(file, 'utf8')).resolves.toBe('');
  const silent = new Date(Date.now() - 11_000);
  await utimes(file, silent, silent);
  expect(await young).toBe('in');
});

test('leaves the lock to whoever took it over in the meantime', async () => {
  const other = JSON.stringify({ pid: 1, host: 'another-machine', since: '2026-01-01T00:00:00Z' });
  await withLock(file, () => writeFile(file, other));
  expect(await readFile(file, 'utf8')).toBe(other);
});

test.skipIf(process.platform !== 'linux')(
  'knows a process from a later one with the same number',
  async () => {
    const me = await ownIdentity();
    await writeFile(file, JSON.stringify({ ...me, born: '12' }));
    expect(await withLock(file, () => Promise.resolve('in'))).toBe('in');
  },
);

test.skipIf(process.platform !== 'linux')(
  'does not take a process of another container for one of its own, nor its silence for death',
  async () => {
    // The same host name, and a number that nobody has here: only its touching tells.
    const space = 'd0f4 pid:[4026539999]';
    await writeFile(file, JSON.stringify({ ...(await ownIdentity()), pid: 2 ** 30, space }));
    await expect(withLock(file, () => Promise.resolve(), { patience: 0 })).rejects.toThrow('holds');
    const silent = new Date(Date.now() - 200_000);
    await utimes(file, silent, silent);
    expect(await withLock(file, () => Promise.resolve('in'))).toBe('in');
  },
);

test('waits for an owner that lives and says who it is', async () => {
  await owner(process.pid, hostname(), new Date(Date.now() - 5 * 60_000));
  const said: string[] = [];
  const attempt = withLock(file, () => Promise.resolve(), {
    patience: 300,
    onWait: (sentence) => said.push(sentence),
  });
  await expect(attempt).rejects.toThrow(
    `process ${process.pid} on ${hostname()} (for 5 min) holds the lock`,
  );
  expect(said).toEqual([
    `Waiting: process ${process.pid} on ${hostname()} (for 5 min) is building with the same cache folder.`,
  ]);
});

test('believes a stranger that has touched its lock within three minutes, and no other', async () => {
  const ago = (seconds: number) => new Date(Date.now() - seconds * 1000);
  // A build may take days: what counts is the last sign of life.
  await owner(1, 'another-machine', ago(3 * 86_400));
  await utimes(file, ago(150), ago(150));
  await expect(withLock(file, () => Promise.resolve(), { patience: 0 })).rejects.toThrow(
    'another-machine',
  );
  await utimes(file, ago(200), ago(200));
  expect(await withLock(file, () => Promise.resolve('in'))).toBe('in');
});

test('is not misled by an owner whose clock is wrong', async () => {
  await owner(1, 'another-machine', new Date('2049-01-01'));
  const silent = new Date(Date.now() - 200_000);
  await utimes(file, silent, silent);
  expect(await withLock(file, () => Promise.resolve('in'))).toBe('in');
});
