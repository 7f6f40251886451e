/**
 * Every manifest of the built exhibit, and the collection of them, as other institutions'
 * programs read them: valid, every resource on the disk, and no picture offered as another
 * state of the plate that does not lie in its frame.
 */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { Traverse } from '@iiif/parser';
import { presentation3StrictUpgrade } from '@iiif/parser/strict';
import { describe, expect, inject, test } from 'vitest';
import { readContent } from '../../src/pipeline/content.ts';
import { findPlaces } from '../../src/pipeline/places.ts';
import { readResults } from '../../src/pipeline/results.ts';
import type { PlateResult } from '../../src/records/result.ts';
import { presentationErrors } from '../publish/presentation-schema.ts';

const folder = inject('siteFolder');
const address = 'https://plates.fennel-quay.example/';
const results = await readResults(findPlaces());
const { plates, overlays } = await readContent(findPlaces().content);

interface Picture {
  readonly id: string;
  readonly type: string;
  readonly width?: number;
  readonly height?: number;
  readonly service?: readonly { readonly id: string; readonly type: string }[];
}
interface Body extends Picture {
  readonly items?: readonly Picture[];
}
interface Canvas {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly service?: readonly { readonly physicalScale: number }[];
  readonly items: readonly { readonly items: readonly { readonly body: Body }[] }[];
  readonly annotations?: readonly { readonly items: readonly Spot[] }[];
}
interface Comment {
  readonly language: string;
  readonly value: string;
}
interface Spot {
  readonly motivation: string;
  /** A Choice where there are several languages. */
  readonly body: Comment | { readonly type: 'Choice'; readonly items: readonly Comment[] };
  readonly target: { readonly source: string; readonly selector: { readonly value: string } };
}
interface Manifest {
  readonly id: string;
  readonly items: readonly Canvas[];
  readonly seeAlso: readonly { readonly id: string }[];
  readonly rendering: readonly { readonly id: string }[];
}

const read = (...path: string[]) =>
  JSON.parse(readFileSync(join(folder, ...path), 'utf8')) as object;
const manifestOf = (slug: string) => read('plates', slug, 'manifest.json') as Manifest;
/** The file behind an address of the exhibit. */
const fileOf = (id: string) => {
  expect(id.startsWith(address), id).toBe(true);
  const path = join(folder, id.slice(address.length));
  return id.endsWith('/') ? join(path, 'index.html') : path;
};
const viewOf = (picture: Picture) => /\/views\/([^/]+)\//.exec(picture.id)?.[1];
const commentsOf = ({ body }: Spot) => ('items' in body ? body.items : [body]);
const bodyOf = (canvas: Canvas) => canvas.items[0].items[0].body;

test('there is a manifest for every plate, and the collection names each once', () => {
  const slugs = readdirSync(join(folder, 'plates'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name);
  const { items } = read('collection.json') as { items: { id: string; type: string }[] };
  expect(items.map(({ id }) => id).sort()).toEqual(
    slugs.map((slug) => `${address}plates/${slug}/manifest.json`).sort(),
  );
  for (const { id } of items) expect((read(id.slice(address.length)) as Manifest).id).toBe(id);
});

describe.skipIf(presentationErrors === null)('the Presentation 3 schema', () => {
  test.each(results.map(({ slug }) => slug))('accepts the manifest of %s', (slug) => {
    expect(presentationErrors?.(manifestOf(slug))).toEqual([]);
  });

  test('accepts the collection', () => {
    expect(presentationErrors?.(read('collection.json'))).toEqual([]);
  });
});

describe.each(results.map((result): [string, PlateResult] => [result.slug, result]))(
  'the manifest of %s',
  (slug, result) => {
    const manifest = manifestOf(slug);
    const [frame] = manifest.items;

    test('is read by a strict IIIF parser without a remark but one that is not ours', () => {
      const state = { warnings: [] as string[] };
      presentation3StrictUpgrade(structuredClone(manifest) as never, state);
      // It wants a list of languages in the body of a comment too, where the schema and the
      // examples of the Web Annotation Data Model (3.2.2) have one word.
      const comments = (frame.annotations?.[0].items ?? []).flatMap(commentsOf);
      expect(state.warnings).toEqual(comments.map(() => '"language" should be Array of values'));
    });

    test('leads to files that are there, each picture as large as it says', () => {
      let found = 0;
      const look = new Traverse({
        contentResource: [
          (resource) => {
            const { id, type, service } = resource as unknown as Picture;
            if (type !== 'Image') return resource;
            expect(existsSync(fileOf(id)), id).toBe(true);
            for (const { id: own } of service ?? []) {
              const info = JSON.parse(readFileSync(join(fileOf(own), 'info.json'), 'utf8')) as {
                id: string;
                sizes: { width: number; height: number }[];
              };
              expect(info.id).toBe(own);
              const { width, height } = resource as unknown as Picture;
              expect(info.sizes).toContainEqual({ width, height });
            }
            found += 1;
            return resource;
          },
        ],
      });
      look.traverseManifest(structuredClone(manifest) as never);
      expect(found).toBeGreaterThanOrEqual(result.views.length);
      for (const { id } of [...manifest.seeAlso, ...manifest.rendering]) {
        expect(existsSync(fileOf(id)), id).toBe(true);
      }
    });

    test('offers as states of the plate what is in register and nothing else', () => {
      const registered = result.views.filter((view) => view.registered).map(({ id }) => id);
      const body = bodyOf(frame);
      const offered = body.items ?? [body];
      expect(offered.map(viewOf).sort()).toEqual([...registered].sort());
      if (result.pair) {
        expect(viewOf(offered[0])).toBe(result.pair.positive);
        expect(viewOf(offered[1])).toBe(result.pair.negative);
      }
      expect([frame.width, frame.height]).toEqual([result.frame.width, result.frame.height]);
      const alone = manifest.items.slice(1).map((canvas) => viewOf(bodyOf(canvas)));
      const others = result.views.filter((view) => !view.registered).map(({ id }) => id);
      expect(alone.sort()).toEqual(others.sort());
    });

    test('says how large the plate’s frame is', () => {
      const scale = result.frame.pixelsPerMillimetre;
      expect(frame.service?.[0].physicalScale ?? null).toBe(scale === null ? null : 1 / scale);
    });

    test('has a comment for every spot, in the plate’s frame and in each language it is told in', () => {
      const spots = frame.annotations?.[0].items ?? [];
      const written = plates.find((plate) => plate.slug === slug)?.record?.spots ?? [];
      expect(spots.length).toBe(written.length);
      for (const [k, spot] of spots.entries()) {
        const { motivation, target } = spot;
        const { id, title, region } = written[k];
        expect(motivation).toBe('commenting');
        const told = overlays.flatMap(({ plate, language, record }) => {
          const list = plate === slug && 'spots' in record ? (record.spots ?? []) : [];
          return list.flatMap((one) => (one.id === id ? [[language, one.title]] : []));
        });
        const titles = Object.fromEntries([['en', title], ...told]) as Record<string, string>;
        const comments = commentsOf(spot);
        expect(comments.map(({ language }) => language).sort()).toEqual(Object.keys(titles).sort());
        for (const { language, value } of comments)
          expect(value.startsWith(titles[language]), value).toBe(true);
        expect(target.source).toBe(frame.id);
        const xywh = [region.x, region.y, region.width, region.height].join(',');
        expect(target.selector.value).toBe(`xywh=${xywh}`);
        expect(region.x + region.width).toBeLessThanOrEqual(frame.width);
        expect(region.y + region.height).toBeLessThanOrEqual(frame.height);
      }
    });
  },
);

test('a merge, a relit surface and a mosaic of the demonstration are among what is read here', () => {
  const kinds = new Set(results.flatMap(({ views }) => views.map(({ kind }) => kind)));
  for (const kind of ['merge', 'relight', 'mosaic']) expect([...kinds]).toContain(kind);
});
