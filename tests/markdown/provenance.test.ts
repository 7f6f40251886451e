import { remark } from 'remark';
import { describe, expect, test } from 'vitest';
import { leadingDate, provenanceLists } from '../../src/markdown/provenance.ts';
import { page } from './harbour.ts';

function read(items: readonly string[]) {
  const text = `## Provenance\n\n${items.map((item) => `- ${item}\n`).join('')}`;
  const [list] = provenanceLists(remark().parse(text));
  return list.items.map(({ date, text: words, gapBefore }) => ({
    date: date?.text ?? null,
    text: words,
    gap: gapBefore ? `${gapBefore.from}-${gapBefore.to}` : null,
  }));
}

describe('the list under "Provenance"', () => {
  test('is read as dates, words and the gaps between them', () => {
    expect(
      read(['1850~: Made.', '1850~/1911: The family.', '1934-05: Sold.', '1994/..: The museum.']),
    ).toEqual([
      { date: '1850~', text: 'Made.', gap: null },
      { date: '1850~/1911', text: 'The family.', gap: null },
      { date: '1934-05', text: 'Sold.', gap: '1912-1933' },
      { date: '1994/..', text: 'The museum.', gap: '1935-1993' },
    ]);
  });

  test.each([
    ['neighbouring years leave no gap', ['1850: a', '1851: b'], null],
    ['one year without record is a gap', ['1850: a', '1852: b'], '1851-1851'],
    ['an open end covers everything after it', ['1850/..: a', '1900: b'], null],
    ['an unknown end covers its beginning alone', ['1850/: a', '1900: b'], '1851-1899'],
    ['an unknown start covers its end alone', ['1850: a', '/1900: b'], '1851-1899'],
    ['a decade covers all its years', ['185X: a', '1861: b'], '1860-1860'],
    ['an entry within an earlier one opens no gap', ['1850/1911: a', '1860: b', '1912: c'], null],
  ])('%s', (_, items, gap) => {
    expect(read(items).at(-1)?.gap).toBe(gap);
  });

  test('keeps an entry without a date, and counts the gap across it', () => {
    expect(read(['1850: a', 'Not known.', '1900: b'])).toEqual([
      { date: '1850', text: 'a', gap: null },
      { date: null, text: 'Not known.', gap: null },
      { date: '1900', text: 'b', gap: '1851-1899' },
    ]);
  });

  test('ends with its section and is no other list', () => {
    const text = '- 1850: a\n\n## Provenance\n\nWords.\n\n## Notes\n\n- 1860: b\n';
    expect(provenanceLists(remark().parse(text))).toEqual([]);
  });
});

test.each([
  ['1850~/1911: x', '1850~/1911', 12],
  ['1850 – x', '1850', 7],
  ['../1860 x', '../1860', 8],
  ['1850', '1850', 4],
])('%j begins with the date %s', (text, date, length) => {
  expect(leadingDate(text)).toMatchObject({ date: { text: date }, length });
});

test.each(['about 1850: x', '12 plates', '1851-02-29: x', ''])('%j begins with no date', (text) => {
  expect(leadingDate(text)).toBeNull();
});

describe('on the page', () => {
  const text =
    '## Provenance\n\n- 1850~: Made, *probably* here.\n- 1850~/1911: The family.\n- 1934: Sold.\n';

  test('the timeline has times, words for intervals, and gaps that are shown', async () => {
    expect(await page(text)).toBe(
      '<h2 id="provenance">Provenance</h2>\n' +
        '<ol class="provenance">\n' +
        '<li><time class="date" datetime="1850">about 1850</time> Made, <em>probably</em> here.</li>\n' +
        '<li><span class="date">about 1850 – 1911</span> The family.</li>\n' +
        '<li class="gap">No record for 1912–1933.</li>\n' +
        '<li><time class="date" datetime="1934">1934</time> Sold.</li>\n' +
        '</ol>',
    );
  });

  test('dates and gaps are in the language of the collection', async () => {
    const html = await page(text.replace('Provenance', 'Provenienz'), 'de');
    expect(html).toContain('>um 1850</time>');
    expect(html).toContain('<li class="gap">Für 1912–1933 ist nichts belegt.</li>');
  });
});
