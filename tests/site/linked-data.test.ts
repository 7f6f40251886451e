/** What other programs read from the finished folder: JSON-LD, feed, tables, previews. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import jsonld from 'jsonld';
import { describe, expect, inject, test } from 'vitest';
import { findPlaces } from '../../src/pipeline/places.ts';
import { readResults } from '../../src/pipeline/results.ts';
import { linkedArtShape } from '../publish/linked-art-shape.ts';
import { htmlOf, pageOfEachKind } from './pages.ts';

const folder = inject('siteFolder');
const plates = readdirSync(join(folder, 'plates'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);
const covered = pageOfEachKind(folder)['covered'].split('/')[1];
const address = 'https://plates.fennel-quay.example/';
const text = (...path: string[]) => readFileSync(join(folder, ...path), 'utf8');
const json = (...path: string[]) => JSON.parse(text(...path)) as Record<string, unknown>;

/** Remote contexts are not fetched: each term stands for itself. */
const documentLoader = (url: string) =>
  Promise.resolve({
    contextUrl: undefined,
    documentUrl: url,
    document: { '@context': { '@vocab': `${url}#`, id: '@id', type: '@type' } },
  });
type Node = Record<string, unknown> & { '@id': string };
const options = { documentLoader, safe: true };
const expand = async (document: object) => (await jsonld.expand(document, options)) as Node[];

test('the schema.org data of every page expands, and a plate’s pictures carry their licence', async () => {
  const data = (page: string) => {
    const found = /<script type="application\/ld\+json">(.*?)<\/script>/s.exec(
      htmlOf(folder, page),
    );
    return JSON.parse(found?.[1] ?? 'null') as Record<string, unknown>;
  };
  const plate = data('plates/inner-basin/');
  expect((await expand(plate)).length).toBe(1);
  const images = plate['image'] as Record<string, unknown>[];
  expect(images.length).toBe(2);
  for (const image of images) {
    for (const field of ['contentUrl', 'license', 'acquireLicensePage', 'creditText', 'creator']) {
      expect(image[field], field).toBeTruthy();
    }
    const file = String(image['contentUrl']).slice(address.length);
    expect(existsSync(join(folder, file)), file).toBe(true);
  }
  expect(data(`plates/${covered}/`)['image']).toEqual([]);
  expect((await expand(data(''))).length).toBe(1);
});

test('the Linked Art object of every plate expands and has the published shape', async () => {
  for (const slug of plates) {
    linkedArtShape.parse(json('plates', slug, 'object.jsonld'));
    const [object] = await expand(json('plates', slug, 'object.jsonld'));
    expect(object['@id']).toBe(`${address}plates/${slug}/`);
  }
});

test('derivations lead from every tile set to the digests of its captures', async () => {
  const results = await readResults(findPlaces());
  const derived = 'http://www.w3.org/ns/prov#wasDerivedFrom';
  let views = 0;
  let layers = 0;
  for (const { slug, sittings, views: all } of results) {
    const nodes = await expand(json('plates', slug, 'record.jsonld'));
    const digests = new Set(
      sittings.flatMap(({ captures }) =>
        captures.flatMap(({ files }) => files.map(({ sha256 }) => `urn:sha256:${sha256}`)),
      ),
    );
    for (const view of all) {
      const node = nodes.find((one) => one['@id'] === `${address}plates/${slug}/views/${view.id}`);
      const from = (node?.[derived] ?? []) as Node[];
      expect(from.length, `${slug} ${view.id}`).toBeGreaterThan(0);
      for (const source of from) expect(digests).toContain(source['@id']);
      expect(node?.['urn:mirrorleaf:tiles']).toEqual([{ '@value': view.tiles }]);
      for (const { name, folder: planes } of view.layers) {
        const id = `${address}plates/${slug}/views/${view.id}/${name}/`;
        const layer = nodes.find((one) => one['@id'] === id);
        expect(layer?.['urn:mirrorleaf:tiles'], id).toEqual([{ '@value': planes }]);
        expect(layer?.[derived], id).toEqual(from);
        layers += 1;
      }
      views += 1;
    }
  }
  expect(views).toBeGreaterThan(15);
  expect(layers).toBeGreaterThan(1);
});

describe('previews', () => {
  test('show both readings at the size that is promised; a covered plate has none', () => {
    const html = htmlOf(folder, 'plates/inner-basin/');
    expect(html).toContain(
      `property="og:image" content="${address}plates/inner-basin/preview.jpg"`,
    );
    expect(existsSync(join(folder, 'plates', covered, 'preview.jpg'))).toBe(false);
  });

  test.skipIf(!existsSync('/usr/bin/exiftool'))('say whose they are and what they show', () => {
    const said = JSON.parse(
      execFileSync(
        'exiftool',
        ['-json', '-G', join(folder, 'plates', 'inner-basin', 'preview.jpg')],
        { encoding: 'utf8' },
      ),
    ) as Record<string, unknown>[];
    expect(said[0]['File:ImageWidth']).toBe(1200);
    expect(said[0]['File:ImageHeight']).toBe(630);
    expect(String(said[0]['XMP:WebStatement'])).toContain('creativecommons.org');
    expect(String(said[0]['XMP:AltTextAccessibility'])).toContain('harbour basin');
  });
});

describe('lists for programs', () => {
  test('the sitemap names only pages that are there, and no page that keeps out of lists', () => {
    const pages = [...text('sitemap.xml').matchAll(/<loc>([^<]+)<\/loc>/g)].map(([, at]) => at);
    expect(pages.length).toBeGreaterThan(30);
    for (const page of pages) {
      const path = page.slice(address.length);
      expect(htmlOf(folder, path), path).not.toContain('name="robots" content="noindex"');
    }
  });

  test('the feed has every plate that is not covered, dated by its content', () => {
    const feed = text('feed.xml');
    expect(feed).not.toContain(`/plates/${covered}/`);
    expect(feed.match(/<entry>/g)?.length).toBe(plates.length - 1);
    expect(feed).toContain('<published>2024-02-13T00:00:00Z</published>');
  });

  test('the tables have a row for every plate', () => {
    expect(text('plates.csv').trim().split('\r\n').length).toBe(plates.length + 1);
    expect((json('plates.json') as unknown as object[]).length).toBe(plates.length);
  });
});
