import { readFileSync, readdirSync } from 'node:fs';
import Ajv from 'ajv-draft-04';
import addFormats from 'ajv-formats';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import {
  fromAnnotations,
  ownSpotFrom,
  toAnnotations,
} from '../../../src/viewer/spots/annotations.ts';
import { outlineRegion } from '../../../src/viewer/spots/spot-shape.ts';
import { hasShared, sharedPath } from '../../shared.ts';
import { data } from '../stage-fixture.ts';
import '../english.ts';

const page = 'https://museum.example/plates/quay/';
const rectangle = {
  id: 'own-1',
  title: 'A rope',
  note: 'Frayed.',
  view: 'axial',
  region: { x: 10, y: 20, width: 30, height: 40 },
  made: '2026-01-02T03:04:05.000Z',
};
const corners = [
  [100, 200],
  [340, 210],
  [220, 500],
] as const;
const outlined = {
  ...rectangle,
  id: 'own-2',
  region: outlineRegion(corners),
  outline: corners,
};

const written = JSON.stringify(toAnnotations(data, [rectangle, outlined], page));
const { items } = JSON.parse(written) as { items: Record<string, unknown>[] };

test('written and read again are the same spots, rectangle and outline', () => {
  expect(fromAnnotations(written, data)).toEqual({ ok: true, value: [rectangle, outlined] });
});

test('a rectangle points at the picture with a Media Fragments selector', () => {
  expect(items[0]['target']).toEqual({
    type: 'SpecificResource',
    source: 'https://museum.example/base/plates/quay/views/axial/full/max/0/default.jpg',
    selector: {
      type: 'FragmentSelector',
      conformsTo: 'http://www.w3.org/TR/media-frags/',
      value: 'xywh=pixel:10,20,30,40',
    },
  });
});

// The W3C's own test suite (w3c/web-annotation-tests): draft-04 schemas of what an annotation
// must be, with definitions that they refer to by file name, listed in annotationMusts.test.
describe.skipIf(!hasShared('data', 'annotations'))('the W3C schemas', () => {
  const read = <T = Record<string, unknown>>(...parts: string[]) =>
    JSON.parse(readFileSync(sharedPath('data', 'annotations', ...parts), 'utf8')) as T;
  let faults: (value: object) => unknown[];
  // Compiled once: sixty schemas that refer to one another.
  beforeAll(() => {
    const ajv = new Ajv({ strict: false });
    addFormats(ajv);
    for (const name of readdirSync(sharedPath('data', 'annotations', 'definitions')))
      if (name.endsWith('.json')) ajv.addSchema(read('definitions', name));
    const listed = read<{ assertions: string[] }>('annotations', 'annotationMusts.test').assertions;
    const schemas = listed.map((name) => read(name));
    faults = (value) =>
      schemas
        .filter((s) => ajv.validate(s, value) !== (s['expectedResult'] !== 'invalid'))
        .map((s) => s['title']);
  });

  test('have no fault to find in a rectangle and in an outline', () => {
    const context = { '@context': 'http://www.w3.org/ns/anno.jsonld' };
    for (const item of items) expect(faults({ ...context, ...item })).toEqual([]);
  });

  test.each([
    ['without a target', { target: undefined }],
    ['whose moment is none', { created: 'yesterday' }],
    ['whose selector has an unknown type', { target: { source: page, selector: { type: 'Box' } } }],
  ])('notice an annotation %s', (_, change) => {
    const changed = { '@context': 'http://www.w3.org/ns/anno.jsonld', ...items[0], ...change };
    const plain = JSON.parse(JSON.stringify(changed)) as object;
    expect(faults(plain).length).toBeGreaterThan(0);
  });
});

const nothing =
  'This file holds no annotation with a rectangle or an outline on a view of this plate.';
const hostile = (change: object) => JSON.stringify([{ ...items[0], ...change }]);
const selecting = (selector: unknown) => {
  const source = (items[0]['target'] as { source: string }).source;
  return hostile({ target: { type: 'SpecificResource', source, selector } });
};

test.each([
  ['not JSON', '{', 'This file is not JSON, so no spots could be read from it.'],
  ['of another plate', written.replaceAll('/views/axial/', '/views/elsewhere/'), nothing],
  ['empty', '[]', nothing],
  ['a number', '7', nothing],
  ['of nulls', '[null, null]', nothing],
  ['nested without end', `${'['.repeat(2000)}${']'.repeat(2000)}`, nothing],
  ['of a place beside the plate', selecting({ value: 'xywh=9999999,9999999,10,10' }), nothing],
  ['of a region without size', selecting({ value: 'xywh=10,10,0,10' }), nothing],
  [
    'of an outline with a million corners',
    selecting({
      type: 'SvgSelector',
      value: `<svg><polygon points="${'1,1 '.repeat(1e6)}"/></svg>`,
    }),
    nothing,
  ],
  [
    'of an outline that is a script',
    selecting({ type: 'SvgSelector', value: '<svg onload="alert(1)"><script/></svg>' }),
    nothing,
  ],
  ['of titles that are no text', hostile({ body: [{ purpose: 'tagging', value: {} }] }), nothing],
])('a file that is %s is refused in words', (_, text, reason) => {
  expect(fromAnnotations(text, data)).toEqual({ ok: false, reason });
});

describe('of a file that means harm', () => {
  const only = (text: string) => {
    const read = fromAnnotations(text, data);
    if (!read.ok) throw new Error(read.reason);
    return read.value;
  };

  test('no spot takes the name of the author’s', () => {
    expect(only(hostile({ id: `${page}#spot=mast` }))[0].id).toMatch(/^own-/);
  });

  test('a region ends where the plate ends', () => {
    const [spot] = only(selecting({ value: 'xywh=3990,2990,9999999,9999999' }));
    expect(spot.region).toEqual({ x: 3990, y: 2990, width: 10, height: 10 });
  });

  test('a thousand spots are taken at most, and each name once', () => {
    const many = Array.from({ length: 3000 }, (_, n) => ({
      ...items[0],
      id: `${page}#spot=own-${n}`,
    }));
    expect(only(JSON.stringify(many)).length).toBe(1000);
    expect(only(JSON.stringify([items[0], items[0]])).length).toBe(1);
  });

  test('a moment that is none is left out, so that the spot can be exported again', () => {
    expect(only(hostile({ created: '<b>now</b>' }))[0].made).toBe('');
  });
});

test('what the browser kept before spots had outlines and moments is still read', () => {
  const { id, title, note, view, region } = rectangle;
  const old = { id, title, note, view, region };
  expect(ownSpotFrom(old)).toEqual({ ...old, made: '' });
});

test('what the browser kept and somebody changed is passed over', () => {
  expect(ownSpotFrom({ ...rectangle, region: { x: 1, y: 2, width: -3, height: 4 } })).toBeNull();
  expect(ownSpotFrom('a word')).toBeNull();
  expect(ownSpotFrom(rectangle)).toEqual(rectangle);
});

describe('a file of spots that anybody may have written', () => {
  const { width, height } = data.frame;
  const check = (text: string) => {
    const read = fromAnnotations(text, data);
    for (const spot of read.ok ? read.value : []) {
      const { x, y, width: across, height: down } = spot.region;
      expect(spot.id).toMatch(/^own-[a-z0-9-]+$/);
      expect(data.views.map(({ id }) => id)).toContain(spot.view);
      expect(Math.min(x, y, width - x - across, height - y - down)).toBeGreaterThanOrEqual(0);
      expect(typeof spot.title).toBe('string');
      expect(spot.title).not.toBe('');
      // What is read is what the browser keeps, and is read again from there.
      expect(ownSpotFrom(JSON.parse(JSON.stringify(spot)))).not.toBeNull();
    }
    return read.ok;
  };

  test('any text, and any JSON, is spots of this plate or a sentence', () => {
    const text = fc.oneof(fc.string(), fc.json());
    fc.assert(
      fc.property(text, (one) => {
        check(one);
      }),
      { numRuns: 500 },
    );
  });

  test('a good one with any value in any place likewise', () => {
    const good = JSON.parse(written) as object;
    const places: (string | number)[][] = [];
    const walk = (value: unknown, path: (string | number)[]) => {
      places.push(path);
      if (typeof value !== 'object' || value === null) return;
      const keys = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
      for (const key of keys)
        walk((value as Record<string | number, unknown>)[key], [...path, key]);
    };
    walk(good, []);
    const strange = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.constantFrom(
        ...[
          'xywh=pixel:9999999,0,1,1',
          'xywh=0,0,0,0',
          '<svg onload=x><polygon points="1,1 2,2"/>',
        ],
        ...['<polygon points="-1e9,0 5,5 9,1"', '__proto__', '#spot=own-<b>', '\u0000'],
      ),
    );
    let read = 0;
    fc.assert(
      fc.property(fc.constantFrom(...places), strange, (path, value) => {
        const copy = JSON.parse(written) as Record<string | number, unknown>;
        const last = path.at(-1);
        if (last === undefined) return;
        const parent = path.slice(0, -1).reduce((at, key) => at[key] as typeof copy, copy);
        parent[last] = value;
        read += check(JSON.stringify(copy)) ? 1 : 0;
      }),
      { numRuns: 1000 },
    );
    // Most changes leave one of the two spots whole.
    expect(read).toBeGreaterThan(300);
  });
});
