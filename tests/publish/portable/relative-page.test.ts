import { describe, expect, test } from 'vitest';
import { folderNotice } from '../../../src/publish/portable/notice.ts';
import { relativePage } from '../../../src/publish/portable/relative-page.ts';

const page = (html: string, file = 'plates/basin/index.html', base = '/exhibit/') =>
  relativePage(html, { file, base, notice: () => '' });

describe('an address on the host becomes a path from the page’s file', () => {
  // Resolved back by the WHATWG URL parser, which is not ours: each must lead where it led.
  test.each([
    ['/exhibit/', 'index.html'],
    ['/exhibit/plates/', 'plates/index.html'],
    ['/exhibit/plates/basin/', 'plates/basin/index.html'],
    ['/exhibit/plates/basin/captures/', 'plates/basin/captures/index.html'],
    ['/exhibit/plates/basin/#mast', 'plates/basin/index.html#mast'],
    ['/exhibit/search/?q=sail#first', 'search/index.html?q=sail#first'],
    ['/exhibit/assets/a.css', 'assets/a.css'],
    [
      '/exhibit/plates/basin/views/n/full/400,/0/default.jpg',
      'plates/basin/views/n/full/400,/0/default.jpg',
    ],
  ])('%s', (from, to) => {
    for (const file of [
      'index.html',
      '404.html',
      'plates/index.html',
      'plates/basin/captures/index.html',
    ]) {
      const [, href] = /href="([^"]*)"/.exec(page(`<body><a href="${from}">x</a>`, file)) ?? [];
      expect(href).not.toMatch(/^\//);
      expect(new URL(href, `file:///folder/${file}`).href).toBe(`file:///folder/${to}`);
    }
  });

  test('in every candidate of a srcset, commas in addresses and all', () => {
    const html =
      '<body><img srcset="/exhibit/plates/basin/views/n/full/400,/0/default.jpg 400w, /exhibit/x.jpg 2x">';
    expect(page(html)).toContain('srcset="views/n/full/400,/0/default.jpg 400w, ../../x.jpg 2x"');
  });
});

describe('everything else of a page stays', () => {
  test.each([
    '<a href="https://elsewhere.example/exhibit/">x</a>',
    '<a href="mailto:a@b.example">x</a>',
    '<a href="#here">x</a>',
    '<a href="other/">x</a>',
    '<p data-stage="/exhibit/plates/basin/stage.json">x</p>',
    '<p>/exhibit/plates/</p>',
    '<script>const a = "/exhibit/";</script>',
    '<style>a { background: url(/exhibit/a.png) }</style>',
  ])('%s', (html) => {
    const whole = `<!doctype html><html lang="en"><head><meta property="og:url" content="/exhibit/"></head><body>${html}</body></html>`;
    const made = page(whole);
    expect(made.replace('<link rel="stylesheet" href="/exhibit/served.css">', '')).toBe(whole);
  });

  test('also letters that HTML writes as entities', () => {
    expect(
      page('<body><a title="a &amp; b" href="/exhibit/search/?a=1&amp;b=2">&lt;</a>'),
    ).toContain('<a title="a &amp; b" href="../../search/index.html?a=1&amp;b=2">&lt;</a>');
  });
});

describe('a page from a folder', () => {
  test('says so in its own language, until a server gives the sheet that hides it', () => {
    const html = '<!doctype html><html lang="de"><head></head><body><main></main></body></html>';
    const made = relativePage(html, { file: 'index.html', base: '/', notice: folderNotice });
    expect(made).toMatch(/<body><p class="from-folder" lang="de">Diese Seite/);
    expect(made).toContain('<link rel="stylesheet" href="/served.css"></head>');
  });

  test('says it in English where the language is none of ours', () => {
    expect(folderNotice('cy')).toMatch(/^<p class="from-folder" lang="en">This page/);
  });
});
