import { cp, mkdir, mkdtemp, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { diskLookup, pictureOf } from '../../src/markdown/disk-lookup.ts';
import type { PlateResult, ViewResult } from '../../src/records/result.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-lookup-'));
  const good = join(import.meta.dirname, '..', 'fixtures', 'content-good');
  await cp(good, join(folder, 'content'), { recursive: true });
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

const view = (id: string, parts: Partial<ViewResult>): ViewResult => ({
  id,
  sitting: 'sitting',
  captures: [id],
  sources: [],
  kind: 'capture',
  setupKind: 'normal',
  reading: 'none',
  width: 4000,
  height: 3000,
  registered: true,
  tiles: '0'.repeat(64),
  sizes: [
    { width: 500, height: 375 },
    { width: 2000, height: 1500 },
    { width: 4000, height: 3000 },
  ],
  made: 'x',
  caution: null,
  step: null,
  settings: [],
  figures: [],
  layers: [],
  archive: [],
  ...parts,
});
const result = (views: readonly ViewResult[]) =>
  ({ slug: 'basin', frame: { width: 4000, height: 3000 }, views }) as unknown as PlateResult;

test('knows a plate by its folder, and knows it anew when its record has changed', async () => {
  const lookup = diskLookup(join(folder, 'content'), join(folder, 'records'));
  expect(lookup.plates()).toEqual(['alley', 'basin']);
  expect(lookup.plate('basin')).toMatchObject({ title: 'A harbour', covered: false });
  const file = join(folder, 'content', 'plates', 'basin', 'plate.md');
  await writeFile(
    file,
    '---\ntitle: Other\nprocess: tintype\nadvisory: A cast of a face.\n' +
      'description: { positive: a, negative: b }\nrights: http://rightsstatements.org/vocab/NKC/1.0/\n---\n',
  );
  await utimes(file, 1, 1);
  expect(lookup.plate('basin')).toMatchObject({ title: 'Other', covered: true });
});

test('knows a plate as a translation calls it, and else by its original', async () => {
  const lookup = diskLookup(join(folder, 'content'), join(folder, 'records'));
  const overlay = join(folder, 'content', 'plates', 'basin', 'plate.fr.md');
  await writeFile(overlay, '---\ntitle: Un port\n---\n');
  expect(lookup.plate('basin', 'fr')).toMatchObject({ title: 'Un port' });
  for (const language of ['de', null, undefined])
    expect(lookup.plate('basin', language)).toMatchObject({ title: 'A harbour' });
});

test('knows nothing of a plate that is not there, whatever it is called', async () => {
  await mkdir(join(folder, 'secret'));
  const lookup = diskLookup(join(folder, 'content'), join(folder, 'records'));
  for (const slug of ['nowhere', '../secret', '', 'constructor']) {
    expect(lookup.plate(slug)).toBeNull();
    expect(lookup.picture(slug, undefined)).toBeNull();
  }
});

test('takes the view asked for, and a size that a page can carry', () => {
  const views = [view('axial', { reading: 'negative' }), view('normal', { reading: 'positive' })];
  expect(pictureOf(result(views), 'axial')).toEqual({
    view: 'axial',
    path: 'plates/basin/views/axial/full/2000,1500/0/default.jpg',
    frame: { width: 4000, height: 3000 },
  });
  expect(pictureOf(result(views), undefined)?.view).toBe('normal');
});

test('never cuts a figure from a view that is not in register', () => {
  const views = [view('loose', { registered: false }), view('axial', {})];
  expect(pictureOf(result(views), 'loose')?.view).toBe('axial');
  expect(pictureOf(result([views[0]]), 'loose')).toBeNull();
});
