import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ensureDemonstration, renderedMark } from '../../src/pipeline/demonstration.ts';
import { type DemonstrationObject } from '../../src/pipeline/demonstration/object.ts';
import { demonstrationObjects } from '../../src/pipeline/demonstration/objects.ts';
import { shootsOf } from '../../src/pipeline/demonstration/shots.ts';
import { readSittings } from '../../src/pipeline/demonstration/sittings.ts';
import { findPlaces } from '../../src/pipeline/places.ts';
import { createReporter } from '../../src/pipeline/reporter.ts';

const object: DemonstrationObject = {
  slug: 'small-plate',
  seed: 5,
  scene: 'tool-bench',
  sceneSide: 60,
  width: 20,
  height: 15,
  laterallyReversed: true,
  margin: 3,
  density: 0.7,
  polish: 0.1,
  undulation: 0.1,
  tarnish: { openings: [], rim: 0, reach: 1, haze: 10, edge: 30 },
  wear: { scratches: 6, specks: 10, fibres: 1 },
};

const sitting = `
date: 2024-05-06
camera: { make: Tarnwick Optical, model: TW-4, focalLength: 100, distance: 600 }
scale: { pixelsPerMillimetre: 8 }
base: normal
setups:
  side-lamp: { kind: normal, surround: dark, lamps: [{ bearing: 315, height: 45, distance: 600, size: 60 }] }
  glass: { kind: axial, surround: bright, glass: { index: 1.52, thickness: 1, angle: 45 }, lamps: [{ distance: 400, size: 280 }] }
captures:
  - { id: normal, file: normal.jpg, setup: side-lamp, reading: positive, exposure: { seconds: 0.25 } }
  - { id: axial, file: axial.tif, setup: glass, reading: negative, exposure: { seconds: 0.125 } }
  - { id: bracket, kind: bracket, setup: side-lamp, reading: positive, frames: [{ file: b1.jpg, seconds: 0.1 }, { file: b2.jpg, seconds: 0.4 }] }
`;

const quiet = createReporter(process.stderr, { quiet: true });
let root = '';

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'demonstration-'));
});
afterAll(() => rm(root, { recursive: true, force: true }));

/** A content folder with the small plate in it; ours where `mark` is true. */
async function contentFolder(name: string, mark = true) {
  const plate = join(root, name, 'content', 'plates', object.slug);
  await mkdir(plate, { recursive: true });
  await writeFile(join(plate, 'sitting.yaml'), sitting);
  if (mark) await writeFile(join(plate, '.gitignore'), `${renderedMark}\ncaptures/\n`);
  const places = findPlaces({
    content: join(root, name, 'content'),
    cache: join(root, name, 'cache'),
  });
  return { plate, captures: join(plate, 'captures'), places };
}

async function digests(folder: string): Promise<Record<string, string>> {
  const names = (await readdir(folder)).sort();
  const pairs = names.map(async (name) => {
    const bytes = await readFile(join(folder, name));
    return [name, createHash('sha256').update(bytes).digest('hex')] as const;
  });
  return Object.fromEntries(await Promise.all(pairs));
}

describe('the demonstration', () => {
  test('gives the same bytes with one worker and with two', async () => {
    const one = await contentFolder('one');
    const two = await contentFolder('two');
    expect(await ensureDemonstration(one.places, quiet, { objects: [object], jobs: 1 })).toBe(1);
    expect(await ensureDemonstration(two.places, quiet, { objects: [object], jobs: 2 })).toBe(1);
    const files = await digests(one.captures);
    expect(Object.keys(files)).toEqual(['axial.tif', 'b1.jpg', 'b2.jpg', 'normal.jpg']);
    expect(await digests(two.captures)).toEqual(files);
  });

  test('leaves what is current alone, mends what is missing, and clears what a kill left', async () => {
    const { places, captures, plate } = await contentFolder('one');
    const file = join(captures, 'normal.jpg');
    const before = await stat(file);
    expect(await ensureDemonstration(places, quiet, { objects: [object] })).toBe(0);
    expect((await stat(file)).mtimeMs).toBe(before.mtimeMs);
    await rm(file);
    await mkdir(join(plate, 'captures.99999.part'));
    expect(await ensureDemonstration(places, quiet, { objects: [object] })).toBe(1);
    expect((await stat(file)).size).toBe(before.size);
    expect((await readdir(plate)).sort()).toEqual(['.gitignore', 'captures', 'sitting.yaml']);
  });

  test('never touches a plate that does not say its captures are rendered', async () => {
    const { places, plate } = await contentFolder('museum', false);
    await mkdir(join(plate, 'captures'));
    await writeFile(join(plate, 'captures', 'normal.jpg'), 'irreplaceable');
    expect(await ensureDemonstration(places, quiet, { objects: [object], again: true })).toBe(0);
    expect(await readFile(join(plate, 'captures', 'normal.jpg'), 'utf8')).toBe('irreplaceable');
    expect(await readdir(plate)).toEqual(['captures', 'sitting.yaml']);
  });

  test('writes the truth beside, outside the content folder, when asked', async () => {
    const { places, plate } = await contentFolder('truth');
    const truth = join(root, 'truth-out');
    await ensureDemonstration(places, quiet, { objects: [object], truth });
    const told = JSON.parse(await readFile(join(truth, object.slug, 'axial.tif.json'), 'utf8')) as {
      homography: number[];
      lamps: number[][];
    };
    expect(told.homography).toHaveLength(9);
    expect(told.homography[2]).not.toBe(0);
    const base = JSON.parse(
      await readFile(join(truth, object.slug, 'normal.jpg.json'), 'utf8'),
    ) as { homography: number[]; lamps: number[][] };
    [1, 0, 0, 0, 1, 0, 0, 0, 1].forEach((value, i) => {
      expect(base.homography[i]).toBeCloseTo(value, 9);
    });
    // Bearing 315, height 45: from the upper left.
    expect(base.lamps[0][0]).toBeCloseTo(-0.5, 6);
    expect(base.lamps[0][1]).toBeCloseTo(0.5, 6);
    expect((await readdir(plate)).sort()).toEqual(['.gitignore', 'captures', 'sitting.yaml']);
  });

  test('renders every file that the eight sittings name, each once', async () => {
    const content = join(import.meta.dirname, '..', '..', 'content', 'plates');
    for (const each of demonstrationObjects) {
      const sittings = await readSittings(join(content, each.slug));
      expect(sittings.length, each.slug).toBeGreaterThan(0);
      const made = sittings
        .flatMap((s) => shootsOf(each, s, sittings[0]))
        .flatMap((shoot) => shoot.frames.map((frame) => frame.file));
      const named = sittings
        .flatMap((s) => s.captures)
        .flatMap((c) => (c.frames ? c.frames.map((f) => f.file) : [c.file]));
      expect([...made].sort(), each.slug).toEqual([...named].sort());
      expect(new Set(made).size).toBe(made.length);
    }
  });
});
