import fc from 'fast-check';
import { parseFragment, type DefaultTreeAdapterTypes as Tree } from 'parse5';
import { describe, expect, test } from 'vitest';
import { page } from './harbour.ts';

describe('directives', () => {
  test('a plate reference is a link under the base path', async () => {
    expect(await page('See :plate[the basin]{slug=harbour}.')).toBe(
      '<p>See <a href="/museum/plates/harbour/">the basin</a>.</p>',
    );
  });

  test('a plate reference without words has the title of the plate', async () => {
    expect(await page('See :plate{slug=harbour}.')).toContain('>The harbour</a>');
  });

  test('a view state is a fragment on the own page and an address on another', async () => {
    const text = ':show[the masts]{spot=masts view=tilt of="normal,axial" plate=harbour}';
    expect(await page(text)).toContain(
      '<a href="#view=tilt&#x26;of=normal,axial&#x26;xywh=pixel:1,2,3,4">the masts</a>',
    );
    expect(await page(text, 'en', 'lessons/a.md')).toContain(
      'href="/museum/plates/harbour/#view=tilt',
    );
  });

  test('a spot is a figure cut from the view that the spot names, in base pixels', async () => {
    const html = await page('::spot[The quay wall]{id=quay}');
    expect(html).toContain('<svg viewBox="5 6 7 8" role="img" aria-label="The quay">');
    expect(html).toContain(
      '<image href="/museum/plates/harbour/views/raking/full/800,600/0/default.jpg" width="1600" height="1200"',
    );
    expect(html).toContain(
      '<figcaption><a href="#view=look&#x26;of=raking&#x26;xywh=pixel:5,6,7,8">',
    );
  });

  test('a spot of a plate that is covered has no picture', async () => {
    const html = await page('::spot[x]{id=masts plate=covered}');
    expect(html).toContain('<figure');
    expect(html).not.toContain('<svg');
  });

  test('a guided look is a section with an id, and an empty one a link to it', async () => {
    const html = await page(
      ':::look[Round]{#mine}\n1. :show[Go]{spot=masts}.\n:::\n\n:::look{#round}\n:::',
    );
    expect(html).toContain('<section class="look" id="look-mine"><h3 id="round">Round</h3>');
    expect(html).toContain('<a href="#look-round">Round the basin</a>');
  });

  test.each([
    ['10:30', '<p>10:30</p>'],
    ['at 10:30, a:b and :c', '<p>at 10:30, a:b and :c</p>'],
    ['1850:Made', '<p>1850:Made</p>'],
    ['::foo[*bar*]{id=1}', '<p>::foo[*bar*]{id=1}</p>'],
    [':::note{a=b}\n*Body*\n:::', '<p>:::note{a=b}</p>\n<p><em>Body</em></p>\n<p>:::</p>'],
  ])('%j, which is none of ours, stays as it was written', async (text, html) => {
    expect(await page(text)).toBe(html);
  });
});

/** Words for a reader may say anything; an address may not. */
const leadsToScript = (name: string, value: string) =>
  name !== 'alt' && name !== 'title' && /^\s*javascript:/i.test(value);

/** Elements that run or frame something, attributes that would, as a browser's parser sees them. */
function harmful(node: Tree.Node): string[] {
  const own =
    'attrs' in node
      ? [
          ...(/^(script|iframe|style)$/.test(node.tagName) ? [node.tagName] : []),
          ...node.attrs
            .filter(({ name, value }) => /^on/.test(name) || leadsToScript(name, value))
            .map(({ name, value }) => `${node.tagName} ${name}="${value}"`),
        ]
      : [];
  return [...own, ...('childNodes' in node ? node.childNodes.flatMap(harmful) : [])];
}

describe('what must not get into a page does not', () => {
  test.each([
    ['<script>alert(1)</script>'],
    ['a <img src=x onerror=alert(1)> b'],
    ['<iframe src="https://elsewhere.example"></iframe>'],
    ['<style>body{display:none}</style>'],
    ['<svg onload=alert(1)>'],
    ['[x](javascript:alert(1))'],
    ['[x](JaVaScRiPt:alert(1))'],
    ['[x](data:text/html,<script>alert(1)</script>)'],
    ['[x](&#106;avascript:alert(1))'],
    ['![x](https://elsewhere.example/a.png)'],
    ['![x](//elsewhere.example/a.png)'],
    [':plate[x]{slug="javascript:alert(1)"}'],
    ['::spot[x]{id="\\"><script>alert(1)</script>"}'],
  ])('%j', async (text) => {
    const html = await page(text);
    expect(html).not.toMatch(/<(script|iframe|style|svg|img)|onerror|onload|elsewhere\.example\//i);
    expect(html).not.toMatch(/(href|src)="(javascript|data|\/\/)/i);
  });

  test('any mixture of such pieces', async () => {
    const bad = '<a onclick=x href="javascript:y"><script></script></a>';
    expect(harmful(parseFragment(bad))).toHaveLength(3);
    const piece = fc.constantFrom(
      ...['<', '>', '"', '[x]', '(javascript:alert(1))', '(//e.example/)', '<script>', '</script>'],
      ...['<img src=x onerror=y>', '\n\n', ':plate', ':show', '::spot', ':::look', '{id=masts}'],
      ...['{slug=harbour}', '`', '- ', '1850: ', '## Provenance\n', '&lt;', '![', '](', ')'],
    );
    await fc.assert(
      fc.asyncProperty(fc.array(piece, { maxLength: 25 }), async (pieces) => {
        const html = await page(pieces.join(''));
        expect(harmful(parseFragment(html))).toEqual([]);
      }),
      { numRuns: 200 },
    );
  }, 60_000);
});

test('links within the exhibit get the base path and the slash of a folder', async () => {
  const html = await page('[a](/lessons/x) [b](/glossary/#haze) [c](#d) [e](https://f.example/g)');
  expect([...html.matchAll(/href="([^"]*)"/g)].map((m) => m[1])).toEqual([
    '/museum/lessons/x/',
    '/museum/glossary/#haze',
    '#d',
    'https://f.example/g',
  ]);
});

test('headings have their ids once, footnotes their prefix once', async () => {
  const html = await page('## Haze\n\n## Haze\n\nx[^1]\n\n[^1]: note\n');
  expect(html).toContain('<h2 id="haze">');
  expect(html).toContain('<h2 id="haze-1">');
  expect(html).toContain('id="user-content-fn-1"');
  expect(html).not.toContain('user-content-user-content');
});

describe('the text of a translation', () => {
  test('leads to pages in its language, and to files where they are', async () => {
    const text = '[Links](/lessons/left/) [Liste](/plates.csv) :plate[das Becken]{slug=harbour}';
    const html = await page(text, 'en', 'lessons/a.de.md');
    expect(html).toContain('href="/museum/de/lessons/left/"');
    expect(html).toContain('href="/museum/plates.csv"');
    expect(html).toContain('href="/museum/de/plates/harbour/"');
  });

  test('is about the plate in whose folder it lies', async () => {
    const html = await page(':show[Masten]{spot=masts}', 'en', 'plates/harbour/plate.de.md');
    expect(html).toContain('href="#view=look');
  });

  test('has the dates of its provenance in its language', async () => {
    const text = '## Provenienz\n\n- 1850~: Aufgenommen.\n- 1860: Verkauft.\n';
    const html = await page(text, 'en', 'plates/harbour/plate.de.md');
    expect(html).toContain('um 1850');
    expect(html).toContain('Für 1851–1859 ist nichts belegt.');
  });
});
