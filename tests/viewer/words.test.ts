import { readdirSync, readFileSync } from 'node:fs';
import Ajv from 'ajv-draft-04';
import { describe, expect, test } from 'vitest';
import { fromAnnotations, ownSpotFrom, toAnnotations } from '../../src/viewer/annotations.ts';
import { citation } from '../../src/viewer/cite-tool.ts';
import { nameViews } from '../../src/viewer/view-words.ts';
import { firstState, parseViewState, settleState } from '../../src/viewer/view-state.ts';
import { hasShared, sharedPath } from '../shared.ts';
import { data } from './stage-fixture.ts';

const page = 'https://museum.example/plates/quay/';
const own = {
  id: 'own-1',
  title: 'A rope',
  note: 'Frayed.',
  view: 'axial',
  region: { x: 10, y: 20, width: 30, height: 40 },
  made: '2026-01-02T03:04:05.000Z',
};

describe('names of views', () => {
  test('say the reading and the light', () => {
    const names = nameViews([
      { id: 'n', reading: 'positive', setupKind: 'normal' },
      { id: 'u', reading: 'none', setupKind: 'ultraviolet' },
      { id: 'back', reading: 'none', setupKind: 'other' },
    ]);
    expect([...names.values()]).toEqual(['Positive, side lamp', 'Ultraviolet', 'back']);
  });

  test('that would be the same carry their ids', () => {
    const raking = { reading: 'positive', setupKind: 'raking' } as const;
    const names = nameViews([
      { id: 'east', ...raking },
      { id: 'west', ...raking },
    ]);
    expect(names.get('west')).toBe('Positive, raking lamp (west)');
  });
});

describe('a citation', () => {
  const state = {
    ...firstState(data, false),
    mode: 'look' as const,
    region: { x: 1, y: 2, width: 3, height: 4 },
  };
  const words = citation(data, state, page, '2026-11-24');

  test('names the owner, the plate, the view, the region, the picture and the day', () => {
    expect(words).toBe(
      'The museum, FQ 1, “A quay”, view Look (normal), region 1,2,3,4 in pixels of the plate’s frame. ' +
        `Picture ${data.views[0].digest}, read 2026-11-24. ` +
        `${page}#view=look&of=normal&xywh=pixel:1,2,3,4&was=${data.views[0].digest}`,
    );
  });

  test('holds an address that opens what it describes, and notices a changed picture', () => {
    const fragment = words.slice(words.indexOf('#'));
    const same = settleState(data, parseViewState(fragment)!, firstState(data, false));
    expect(same.state.region).toEqual(state.region);
    expect(same.said).toEqual([]);
    const views = data.views.map((v) => ({ ...v, digest: 'ffffffffffff' }));
    const later = settleState({ ...data, views }, parseViewState(fragment)!, state);
    expect(later.said[0]).toMatch(/has changed/);
  });
});

describe('spots as Web Annotations', () => {
  const written = JSON.stringify(toAnnotations(data, [own], page));

  test('written and read again are the same spots', () => {
    expect(fromAnnotations(written, data)).toEqual({ ok: true, value: [own] });
  });

  test('point at the picture with a Media Fragments selector', () => {
    const [annotation] = (JSON.parse(written) as { items: { target: object }[] }).items;
    expect(annotation.target).toEqual({
      type: 'SpecificResource',
      source: 'https://museum.example/base/plates/quay/views/axial/full/max/0/default.jpg',
      selector: {
        type: 'FragmentSelector',
        conformsTo: 'http://www.w3.org/TR/media-frags/',
        value: 'xywh=pixel:10,20,30,40',
      },
    });
  });

  // The W3C's own test suite: draft-04 schemas of what an annotation must be, with definitions
  // that they refer to by file name.
  test.skipIf(!hasShared('data', 'annotations'))(
    'pass every top-level MUST schema of the W3C test suite; without a target they do not',
    () => {
      const read = (...parts: string[]) =>
        JSON.parse(readFileSync(sharedPath('data', 'annotations', ...parts), 'utf8')) as Record<
          string,
          unknown
        >;
      const ajv = new Ajv({ strict: false, validateFormats: false });
      for (const name of readdirSync(sharedPath('data', 'annotations', 'definitions')))
        if (name.endsWith('.json')) ajv.addSchema(read('definitions', name));
      const musts = readdirSync(sharedPath('data', 'annotations', 'annotations'))
        .filter((name) => name.endsWith('.json'))
        .map((name) => read('annotations', name))
        .filter((schema) => schema['assertionType'] === 'must');
      expect(musts.length).toBeGreaterThanOrEqual(14);
      const { items } = JSON.parse(written) as { items: object[] };
      const context = { '@context': 'http://www.w3.org/ns/anno.jsonld' };
      const annotation = { ...context, ...items[0] };
      const { target, ...without } = annotation as unknown as { target: object };
      expect(target).toBeDefined();
      const fails = (value: object) =>
        musts.filter(
          (schema) => ajv.validate(schema, value) !== (schema['expectedResult'] !== 'invalid'),
        );
      expect(fails(annotation).map((schema) => schema['title'])).toEqual([]);
      expect(fails(without).length).toBeGreaterThan(0);
    },
  );

  test.each([
    ['not JSON', '{', 'This file is not JSON, so no spots could be read from it.'],
    [
      'of another plate',
      written.replaceAll('/views/axial/', '/views/elsewhere/'),
      'This file holds no annotation with a rectangle or an outline on a view of this plate.',
    ],
  ])('a file that is %s is refused in words', (_, text, reason) => {
    expect(fromAnnotations(text, data)).toEqual({ ok: false, reason });
  });

  test('what the browser kept and somebody changed is passed over', () => {
    expect(ownSpotFrom({ ...own, region: { x: 1, y: 2, width: -3, height: 4 } })).toBeNull();
    expect(ownSpotFrom('a word')).toBeNull();
    expect(ownSpotFrom(own)).toEqual(own);
  });
});
