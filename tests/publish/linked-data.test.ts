import jsonld from 'jsonld';
import { describe, expect, test } from 'vitest';
import { atomFeed } from '../../src/publish/feed.ts';
import { plateIdentifier } from '../../src/publish/identifier.ts';
import { linkedArtObject } from '../../src/publish/linked-art.ts';
import { plateDates } from '../../src/publish/plate-dates.ts';
import { csvTable, plateRow } from '../../src/publish/plate-table.ts';
import { sitemap } from '../../src/publish/sitemap.ts';
import { plateSchema } from '../../src/records/plate.ts';
import { plateResult } from '../fixtures/plate-result.ts';
import { linkedArtShape } from './linked-art-shape.ts';

const written = {
  title: 'A "boat", with nets',
  objectNumber: 'M 1',
  process: 'daguerreotype',
  maker: [{ name: 'A. Maker' }],
  date: '1849/1851',
  size: [69.9, 82.6],
  description: { positive: 'Nets & oars.', negative: 'The same, reversed.' },
  rights: 'https://creativecommons.org/publicdomain/zero/1.0/',
};
const record = plateSchema.parse(written);
const result = plateResult();
const exhibit = 'https://museum.example/plates/';
const place = {
  identifier: `${exhibit}plates/quay/`,
  page: `${exhibit}plates/quay/`,
  exhibit,
  language: 'en',
  institution: { name: 'A museum', homepage: null },
  credit: null,
  process: 'daguerreotype',
  date: '1849 to 1851',
  makers: 'A. Maker',
  further: [],
};

describe('linkedArtObject', () => {
  const plain = JSON.parse(JSON.stringify(linkedArtObject(record, result, place))) as object;

  test('names its context and expands, every node with an address or a type', async () => {
    // The context lives on another host: here every term stands for itself, which is enough to
    // find a value that is no JSON-LD.
    const context = { '@vocab': 'https://linked.art/ns/terms/', id: '@id', type: '@type' };
    const documentLoader = (url: string) => {
      expect(url).toBe('https://linked.art/ns/v1/linked-art.json');
      return Promise.resolve({
        contextUrl: undefined,
        documentUrl: url,
        document: { '@context': context },
      });
    };
    const options = { documentLoader, safe: true };
    const [object] = (await jsonld.expand(plain, options)) as Record<string, unknown>[];
    expect(object['@id']).toBe(place.identifier);
    expect(object['@type']).toEqual(['https://linked.art/ns/terms/HumanMadeObject']);
    const dimensions = object['https://linked.art/ns/terms/dimension'] as object[];
    expect(JSON.stringify(dimensions)).toContain('69.9');
    expect(dimensions.length).toBe(2);
  });

  test('has the published shape, also where place, maker and process are words alone', () => {
    linkedArtShape.parse(plain);
    const poor = plateSchema.parse({
      ...written,
      maker: [],
      date: undefined,
      place: 'A yard',
      process: { name: 'other', text: 'silvered glass' },
    });
    const words = { ...place, date: undefined, makers: undefined, language: 'cy' };
    linkedArtShape.parse(JSON.parse(JSON.stringify(linkedArtObject(poor, result, words))));
    const loose = { ...plain, current_owner: [{ type: 'Group', _label: 'A museum' }] };
    expect(linkedArtShape.safeParse(loose).success).toBe(false);
  });

  test('says title and descriptions in each language that has them', () => {
    const further = [
      { language: 'fr', title: 'Un bateau', descriptions: ['Filets et rames.'] },
      { language: 'de', title: undefined, descriptions: [] },
    ];
    const told = JSON.parse(
      JSON.stringify(linkedArtObject(record, result, { ...place, further })),
    ) as Record<string, { content: string; language?: { id: string; notation: string[] }[] }[]>;
    linkedArtShape.parse(told);
    const [own, french, ...more] = told['identified_by'];
    // Getty AAT, "Languages and writing systems": English 300388277, French 300388306.
    expect(own.language?.[0].id).toBe('http://vocab.getty.edu/aat/300388277');
    expect(french).toMatchObject({ type: 'Name', content: 'Un bateau' });
    expect(french.language?.[0]).toMatchObject({
      id: 'http://vocab.getty.edu/aat/300388306',
      notation: ['fr'],
    });
    expect(more.map(({ content }) => content)).toEqual(['M 1']);
    const said = told['referred_to_by'].map(({ content, language }) => [
      content,
      language?.[0].notation[0],
    ]);
    expect(said).toContainEqual(['Filets et rames.', 'fr']);
  });

  test('spans the interval to the last second, as EDTF means it', () => {
    const { produced_by: made } = plain as { produced_by: { timespan: Record<string, unknown> } };
    expect(made.timespan['begin_of_the_begin']).toBe('1849-01-01T00:00:00Z');
    expect(made.timespan['end_of_the_end']).toBe('1851-12-31T23:59:59Z');
  });

  test('shows no picture of a covered plate', () => {
    const covered = { ...record, advisory: 'A word of care.' };
    expect(JSON.stringify(linkedArtObject(covered, result, place))).not.toContain('/views/');
    expect(JSON.stringify(plain)).toContain('/views/normal');
  });
});

describe('plateDates', () => {
  test('takes the changes that are told, and else the day of the sitting or description', () => {
    const told = plateSchema.parse({
      ...written,
      changes: [
        { date: '2025-03-01', note: 'Published.' },
        { date: '2025-06-02', note: 'A raking view was added.' },
      ],
    });
    expect(plateDates(told, result)).toEqual({
      published: '2025-03-01',
      changed: '2025-06-02',
      note: 'A raking view was added.',
    });
    expect(plateDates(record, result)?.changed).toBe('2026-05-04');
  });
});

describe('atomFeed', () => {
  const entry = (name: string, changed: string) => ({
    identifier: `${exhibit}plates/${name}/`,
    page: `${exhibit}plates/${name}/`,
    title: `${name} & <co>`,
    summary: 'In words.',
    further: [] as (readonly [string, string])[],
    dates: { published: '2020-01-01', changed, note: null },
    picture: null,
  });
  const feed = {
    exhibit,
    title: 'Plates',
    subtitle: 'New and changed',
    author: 'A museum',
    language: 'en',
    rights: null,
    further: [] as (readonly [string, string])[],
  };

  test('lists the newest change first, is dated by it, and escapes its words', () => {
    const text = atomFeed(feed, [entry('old', '2021-01-01'), entry('new', '2024-05-06')]);
    expect(text.indexOf('new &#38; &#60;co&#62;')).toBeLessThan(text.indexOf('old &#38;'));
    expect(/<updated>([^<]+)/.exec(text)?.[1]).toBe('2024-05-06T00:00:00Z');
    // RFC 4287, 4.1.1 and 4.1.2: what a feed and an entry must have.
    for (const name of ['id', 'title', 'updated']) {
      expect(text.match(new RegExp(`<${name}>`, 'g'))?.length, name).toBe(3);
    }
    expect(text).toContain('<author>');
  });
});

test('a feed leads to a page in each language, of each no more than one', () => {
  const further = [['fr', `${exhibit}fr/`]] as const;
  const about = { exhibit, title: 'P', subtitle: 'S', author: 'A', language: 'en', rights: null };
  const text = atomFeed({ ...about, further }, []);
  const links = [...text.matchAll(/<link rel="alternate"([^>]*hreflang[^>]*)\/>/g)];
  expect(links.map(([, rest]) => rest.trim())).toEqual([
    `type="text/html" hreflang="en" href="${exhibit}"`,
    `type="text/html" hreflang="fr" href="${exhibit}fr/"`,
  ]);
});

test('sitemap lists each page once, sorted, with its change', () => {
  const page = (address: string, changed: string | null) => ({ address, changed, languages: [] });
  const text = sitemap([page(`${exhibit}b/`, null), page(`${exhibit}a/`, '2024-01-02')]);
  expect(text.indexOf('/a/')).toBeLessThan(text.indexOf('/b/'));
  expect(text.match(/<lastmod>/g)?.length).toBe(1);
});

describe('csvTable', () => {
  test('quotes as RFC 4180 asks', () => {
    const row = plateRow(record, result, { ...place, credit: null });
    const lines = csvTable([row]).split('\r\n');
    expect(lines[0].startsWith('\uFEFFslug,identifier,title,')).toBe(true);
    expect(lines[1]).toContain('"A ""boat"", with nets"');
    expect(lines[1]).toContain(',1849/1851,1849,1851,');
    expect(lines.length).toBe(3);
  });
});

describe('plateIdentifier', () => {
  test('stays when the slug changes, and gives way to the museum’s own', () => {
    const before = plateIdentifier({ identifier: undefined, formerly: [] }, 'old', exhibit);
    const after = plateIdentifier({ identifier: undefined, formerly: ['old'] }, 'new', exhibit);
    expect(after).toBe(before);
    const ark = 'https://n2t.net/ark:/12345/x1';
    expect(plateIdentifier({ identifier: ark, formerly: ['old'] }, 'new', exhibit)).toBe(ark);
  });
});
