import { Traverse } from '@iiif/parser';
import { describe, expect, test } from 'vitest';
import { manifestCollection } from '../../src/publish/presentation/collection.ts';
import { plateManifest } from '../../src/publish/presentation/manifest.ts';
import type { ViewWords } from '../../src/publish/presentation/view-body.ts';
import { plateSchema } from '../../src/records/plate.ts';
import { plateResult } from '../fixtures/plate-result.ts';
import { presentationErrors } from './presentation-schema.ts';

const record = plateSchema.parse({
  title: 'The inner basin',
  process: 'daguerreotype',
  date: '1850',
  description: { positive: 'Masts before a pale sky.', negative: 'Pale masts, dark sky.' },
  rights: 'https://creativecommons.org/publicdomain/zero/1.0/',
  spots: [{ id: 'mast', region: '10,20,300,400', title: 'The mast', note: 'Rigged as a brig.' }],
});
const words: ViewWords = { language: 'en', label: (view) => `${view.setupKind}, ${view.reading}` };
const exhibit = 'https://museum.example/plates-online/';
const place = {
  exhibit,
  plate: `${exhibit}plates/quay/`,
  provider: { name: 'A museum', homepage: null },
  credit: 'A museum',
  metadata: [['Made', '1850']] as const,
};

const result = plateResult();
const unregistered = {
  ...result.views[1],
  id: 'raking',
  registered: false,
  width: 900,
  height: 700,
};
const withLone = plateResult({ views: [...result.views, unregistered] });

interface Canvas {
  readonly width: number;
  readonly service?: readonly { readonly physicalScale: number }[];
  readonly items: readonly { readonly items: readonly { readonly body: Body }[] }[];
}
interface Body {
  readonly type: string;
  readonly id?: string;
  readonly items?: readonly Body[];
}
const canvases = (manifest: object) => (manifest as { items: Canvas[] }).items;
const body = (canvas: Canvas) => canvas.items[0].items[0].body;

describe('plateManifest', () => {
  test('offers registered views as one Choice, the positive first, and others apart', () => {
    const [plate, lone] = canvases(plateManifest(record, withLone, place, words));
    expect(body(plate).type).toBe('Choice');
    expect(
      body(plate).items?.map((option) => option.id?.split('/views/')[1].split('/')[0]),
    ).toEqual(['normal', 'axial']);
    expect(body(lone).id).toBe(`${place.plate}views/raking/full/375,250/0/default.jpg`);
    expect(lone.width).toBe(900);
  });

  test('states the physical scale so that 3000 px at 40 px/mm are 75 mm', () => {
    // Annex 3.3: physical size = Canvas size × physicalScale.
    const [plate] = canvases(plateManifest(record, result, place, words));
    expect(plate.width * plate.service![0].physicalScale).toBeCloseTo(75, 10);
  });

  test('leaves the scale out where it is not known', () => {
    const frame = { ...result.frame, pixelsPerMillimetre: null };
    const [plate] = canvases(plateManifest(record, plateResult({ frame }), place, words));
    expect(plate).not.toHaveProperty('service');
  });

  test('is read by a general IIIF parser, every picture found', () => {
    const pictures: string[] = [];
    const traverse = new Traverse({
      contentResource: [
        (resource: { id?: string; type: string }) => {
          if (resource.type === 'Image' && resource.id) pictures.push(resource.id);
          return resource;
        },
      ],
    });
    traverse.traverseManifest(plateManifest(record, withLone, place, words) as never);
    const base = `${place.plate}views/`;
    const named = new Set(pictures.map((id) => id.slice(base.length)));
    expect([...named].sort()).toEqual(
      ['axial', 'normal', 'raking'].map((id) => `${id}/full/375,250/0/default.jpg`),
    );
  });
});

describe.skipIf(presentationErrors === null)('the Presentation 3 schema', () => {
  const errors = presentationErrors!;

  test('accepts the manifest of a plate', () => {
    expect(errors(plateManifest(record, withLone, place, words))).toEqual([]);
  });

  test('accepts the manifest of a covered plate, which has no thumbnail', () => {
    const covered = plateManifest({ ...record, advisory: 'With care.' }, withLone, place, words);
    expect(errors(covered)).toEqual([]);
    expect(JSON.stringify(covered)).not.toContain('thumbnail');
    expect(JSON.stringify(covered)).toContain('With care. Masts before');
  });

  test('accepts the collection of the exhibit', () => {
    const entries = [{ manifest: `${place.plate}manifest.json`, title: record.title }];
    expect(errors(manifestCollection(exhibit, 'Plates', 'en', entries))).toEqual([]);
  });

  test('refuses a manifest without items, so that it can refuse', () => {
    const manifest = plateManifest(record, result, place, words);
    expect(errors({ ...manifest, items: undefined })).not.toEqual([]);
  });
});
