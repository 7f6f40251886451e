import { Traverse } from '@iiif/parser';
import { describe, expect, test } from 'vitest';
import { manifestCollection } from '../../src/publish/presentation/collection.ts';
import { plateManifest, type PlateTelling } from '../../src/publish/presentation/manifest.ts';
import { plateSchema } from '../../src/records/plate.ts';
import type { PlateResult } from '../../src/records/result.ts';
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
const exhibit = 'https://museum.example/plates-online/';
const place = { plate: `${exhibit}plates/quay/`, provider: exhibit };
const english: PlateTelling = {
  language: 'en',
  record,
  label: (view) => `${view.setupKind}, ${view.reading}`,
  page: place.plate,
  provider: 'A museum',
  credit: 'A museum',
  metadata: [['Made', '1850']],
  words: {
    credit: 'Credit',
    processing: 'Processing record',
    objectRecord: 'Object record',
    how: 'How it was photographed',
    apart: (view) => `${view}, not in register`,
  },
};
const french: PlateTelling = {
  ...english,
  language: 'fr',
  record: {
    ...record,
    title: 'Le bassin',
    spots: [{ ...record.spots[0], title: 'Le mât' }],
  },
  page: `${exhibit}fr/plates/quay/`,
  metadata: [['Date', '1850']],
};
const told = [english];
const manifestOf = (of: PlateResult, tellings = told) => plateManifest(of, place, tellings);

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
    const [plate, lone] = canvases(manifestOf(withLone));
    expect(body(plate).type).toBe('Choice');
    expect(
      body(plate).items?.map((option) => option.id?.split('/views/')[1].split('/')[0]),
    ).toEqual(['normal', 'axial']);
    expect(body(lone).id).toBe(`${place.plate}views/raking/full/375,250/0/default.jpg`);
    expect(lone.width).toBe(900);
  });

  test('states the physical scale so that 3000 px at 40 px/mm are 75 mm', () => {
    // Annex 3.3: physical size = Canvas size × physicalScale.
    const [plate] = canvases(manifestOf(result));
    expect(plate.width * plate.service![0].physicalScale).toBeCloseTo(75, 10);
  });

  test('leaves the scale out where it is not known', () => {
    const frame = { ...result.frame, pixelsPerMillimetre: null };
    const [plate] = canvases(manifestOf(plateResult({ frame })));
    expect(plate).not.toHaveProperty('service');
  });

  test('says what is translated in both languages, and what is not in the first alone', () => {
    // Presentation API 3.0, 4.1: a map from language tag to a list of strings.
    const manifest = manifestOf(withLone, [english, french]) as unknown as Record<string, object>;
    expect(manifest['label']).toEqual({ en: ['The inner basin'], fr: ['Le bassin'] });
    expect(manifest['summary']).toEqual({ en: ['Masts before a pale sky.'] });
    expect(manifest['metadata']).toEqual([
      { label: { en: ['Made'], fr: ['Date'] }, value: { en: ['1850'] } },
    ]);
    expect(manifest['homepage']).toMatchObject([
      { id: english.page, language: ['en'] },
      { id: french.page, language: ['fr'] },
    ]);
    const spots = JSON.stringify(canvases(manifest)[0]);
    expect(spots).toContain('"value":"The mast. Rigged as a brig.","format":"text/plain"');
    expect(spots).toContain(
      '{"type":"TextualBody","value":"Le mât. Rigged as a brig.","format":"text/plain","language":"fr"}',
    );
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
    traverse.traverseManifest(manifestOf(withLone) as never);
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
    expect(errors(manifestOf(withLone))).toEqual([]);
  });

  test('accepts a manifest in two languages', () => {
    expect(errors(manifestOf(withLone, [english, french]))).toEqual([]);
  });

  test('accepts the manifest of a covered plate, which has no thumbnail', () => {
    const advised = { ...english, record: { ...record, advisory: 'With care.' } };
    const covered = manifestOf(withLone, [advised]);
    expect(errors(covered)).toEqual([]);
    expect(JSON.stringify(covered)).not.toContain('thumbnail');
    expect(JSON.stringify(covered)).toContain('With care. Masts before');
  });

  test('accepts the collection of the exhibit', () => {
    const whole = [
      { language: 'en', title: 'Plates', plates: [record.title] },
      { language: 'fr', title: 'Plaques', plates: ['Le bassin'] },
    ];
    const collection = manifestCollection(exhibit, [`${place.plate}manifest.json`], whole);
    expect(errors(collection)).toEqual([]);
    expect(collection['label']).toEqual({ en: ['Plates'], fr: ['Plaques'] });
  });

  test('refuses a manifest without items, so that it can refuse', () => {
    const manifest = manifestOf(result);
    expect(errors({ ...manifest, items: undefined })).not.toEqual([]);
  });
});
