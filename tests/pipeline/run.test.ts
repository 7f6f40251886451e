import { spawn } from 'node:child_process';
import { cp, mkdtemp, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkFreshness } from '../../src/pipeline/freshness.ts';
import { findPlaces, type Places } from '../../src/pipeline/places.ts';
import { createReporter } from '../../src/pipeline/reporter.ts';
import { readResult, recordFile } from '../../src/pipeline/results.ts';
import { runPlates } from '../../src/pipeline/run.ts';
import { resultVersion } from '../../src/records/result.ts';
import { folderDigests } from './folder-digests.ts';
import { blobs, writeCapture, writeSmallContent } from './small-content.ts';

const reporter = createReporter(process.stderr, { quiet: true });
let folder: string;
let master: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-run-'));
  master = join(folder, 'master');
  await writeSmallContent(master);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** A content folder and cache of its own. */
async function fresh(name: string): Promise<Places> {
  const content = join(folder, name, 'content');
  await cp(master, content, { recursive: true });
  return findPlaces({ content, cache: join(folder, name, 'cache') }, {});
}

const states = (summary: Awaited<ReturnType<typeof runPlates>>) =>
  Object.fromEntries(summary.plates.map((plate) => [plate.slug, plate.state]));

describe('runPlates', () => {
  test('makes every plate once, then does nothing, then only what was touched', async () => {
    const places = await fresh('twice');
    const first = await runPlates({ places, reporter });
    expect(states(first)).toEqual({ first: 'made', second: 'made' });
    expect((await readResult(places, 'first'))?.pair).toMatchObject({
      positive: 'normal',
      negative: 'axial',
    });

    const again = await runPlates({ places, reporter });
    expect(states(again)).toEqual({ first: 'unchanged', second: 'unchanged' });
    expect({ made: again.made, found: again.found }).toEqual({ made: 0, found: 0 });

    await writeCapture(join(places.content, 'plates/second/captures/normal.tif'), blobs(9));
    expect(states(await runPlates({ places, reporter }))).toEqual({
      first: 'unchanged',
      second: 'made',
    });

    // A record of another version is made again, from what is kept, with nothing decoded again.
    const file = recordFile(places, 'first');
    const record = await readFile(file, 'utf8');
    for (const other of [resultVersion - 1, resultVersion + 1]) {
      const text = record.replace(`"version": ${resultVersion}`, `"version": ${other}`);
      expect(text).not.toBe(record);
      await writeFile(file, text);
      expect(await checkFreshness(places)).toEqual(['Plate "first" has no result yet.']);
      const migrated = await runPlates({ places, reporter });
      expect(states(migrated)).toEqual({ first: 'made', second: 'unchanged' });
      expect(migrated.made).toBe(0);
      expect(await readFile(file, 'utf8')).toBe(record);
    }
  });

  test('never writes into captures/', async () => {
    const places = await fresh('untouched');
    const captures = join(places.content, 'plates/first/captures');
    const before = await folderDigests(captures);
    const { mtimeMs } = await stat(captures);
    await runPlates({ places, reporter });
    expect(await folderDigests(captures)).toEqual(before);
    expect((await stat(captures)).mtimeMs).toBe(mtimeMs);
  });

  test('fails the plate of a truncated capture with a sentence, and makes the other', async () => {
    const places = await fresh('truncated');
    const file = join(places.content, 'plates/first/captures/axial.png');
    await writeFile(file, (await readFile(file)).subarray(0, 4000));
    const summary = await runPlates({ places, reporter });
    expect(states(summary)).toEqual({ first: 'failed', second: 'made' });
    const [fault] = summary.plates[0].findings.filter((f) => f.level === 'error');
    expect(fault).toMatchObject({
      plate: 'first',
      capture: 'axial',
      file: 'captures/axial.png',
    });
    expect(fault.message).not.toBe('');
    expect(fault.remedy).not.toBe('');
    // A failure is remembered for the same input, and forgotten when the file is mended.
    expect(states(await runPlates({ places, reporter }))['first']).toBe('failed');
    await cp(join(master, 'plates/first/captures/axial.png'), file);
    expect(states(await runPlates({ places, reporter }))['first']).toBe('made');
  });

  test('makes the tiles again when somebody has removed them', async () => {
    const places = await fresh('removed');
    await runPlates({ places, reporter });
    await rm(places.tiles, { recursive: true });
    expect(states(await runPlates({ places, reporter }))).toEqual({
      first: 'made',
      second: 'made',
    });
  });

  test('takes only the plates that are named, and says which there are', async () => {
    const places = await fresh('named');
    expect(states(await runPlates({ places, reporter, slugs: ['second'] }))).toEqual({
      second: 'made',
    });
    await expect(runPlates({ places, reporter, slugs: ['third'] })).rejects.toThrow(
      'There is no plate "third". The plates are: first, second.',
    );
  });

  test('shares of a run are disjoint and together the whole', async () => {
    const places = await fresh('shares');
    const part = (n: number) => runPlates({ places, reporter, share: { part: n, of: 2 } });
    expect([states(await part(1)), states(await part(2))]).toEqual([
      { first: 'made' },
      { second: 'made' },
    ]);
  });
});

describe('checkFreshness', () => {
  test('names what is missing, stale, incomplete or of no plate, and nothing else', async () => {
    const places = await fresh('freshness');
    expect(await checkFreshness(places)).toEqual([
      'Plate "first" has no result yet.',
      'Plate "second" has no result yet.',
    ]);
    await runPlates({ places, reporter });
    expect(await checkFreshness(places)).toEqual([]);

    await writeCapture(join(places.content, 'plates/second/captures/normal.tif'), blobs(7));
    const tiles = (await readResult(places, 'first'))!.views[0].tiles;
    await rm(join(places.tiles, tiles), { recursive: true });
    expect(await checkFreshness(places)).toEqual([
      'The tiles of view "normal" of plate "first" are missing.',
      'The result of plate "second" is older than its content.',
    ]);

    await rename(join(places.content, 'plates/second'), join(places.content, 'plates/third'));
    expect(await checkFreshness(places)).toEqual([
      'The tiles of view "normal" of plate "first" are missing.',
      'Plate "third" has no result yet.',
      'There is a result for "second", but no such plate.',
    ]);
  });
});

test('a build killed at ten moments is finished by the next one, byte for byte', async () => {
  const script = join(import.meta.dirname, '../../scripts/plates.ts');
  const whole = await fresh('whole');
  const started = performance.now();
  await runPlates({ places: whole, reporter });
  const duration = performance.now() - started;
  const expected = await folderDigests(whole.tiles);
  expect(Object.keys(expected).length).toBeGreaterThan(20);

  const killed = await fresh('killed');
  for (let k = 1; k <= 10; k += 1) {
    const child = spawn(process.execPath, [script, '--quiet'], {
      env: { ...process.env, MIRRORLEAF_CONTENT: killed.content, MIRRORLEAF_CACHE: killed.cache },
      stdio: 'ignore',
    });
    const ended = new Promise((resolve) => child.on('exit', resolve));
    // From "still loading" to "about done"; a child that is done early has nothing left to kill.
    await sleep((k / 10) * (duration + 500));
    child.kill('SIGKILL');
    await ended;
    // What has a name in the store is whole at every moment.
    const partial = await folderDigests(killed.tiles);
    expect(expected).toMatchObject(partial);
  }
  await runPlates({ places: killed, reporter });
  expect(await folderDigests(killed.tiles)).toEqual(expected);
}, 120_000);
