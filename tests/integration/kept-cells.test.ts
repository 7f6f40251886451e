import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openKeptCells } from '../../src/integration/kept-cells.ts';
import { findPlaces, type Places } from '../../src/pipeline/places.ts';

let places: Places;
beforeAll(async () => {
  const folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-cells-'));
  places = findPlaces({ content: join(folder, 'content'), cache: join(folder, 'cache') });
});
afterAll(() => rm(join(places.cache, '..'), { recursive: true, force: true }));

/** A build that shows these plates in English and French; gives what it had to render. */
async function build(keys: Readonly<Record<string, string>>): Promise<string[]> {
  const cells = await openKeptCells(places, new Map(Object.entries(keys)));
  const rendered: string[] = [];
  const show = (language: string, slug: string) =>
    cells.cellOf(language, slug, () => {
      rendered.push(`${slug} ${language}`);
      return Promise.resolve(`${slug} in ${language}, ${keys[slug]}`);
    });
  // Two orders of the index.
  for (const slugs of [Object.keys(keys), Object.keys(keys).reverse()]) {
    for (const slug of slugs) {
      expect(await show('en', slug)).toBe(`${slug} in en, ${keys[slug]}`);
      expect(await show('fr', slug)).toBe(`${slug} in fr, ${keys[slug]}`);
    }
  }
  await cells.save();
  return rendered;
}

test('cells are rendered once, kept for the next build, and rendered again under another key', async () => {
  expect(await build({ arch: '1', bell: '1' })).toEqual([
    'arch en',
    'arch fr',
    'bell en',
    'bell fr',
  ]);
  expect(await build({ arch: '1', bell: '1' })).toEqual([]);
  expect(await build({ arch: '2', bell: '1' })).toEqual(['arch en', 'arch fr']);
  expect(await build({ arch: '2', bell: '1' })).toEqual([]);
});

test('the cells of a plate that is gone are forgotten', async () => {
  await build({ arch: '3', bell: '3' });
  expect(await build({ arch: '3' })).toEqual([]);
  expect(await build({ arch: '3', bell: '3' })).toEqual(['bell en', 'bell fr']);
});
