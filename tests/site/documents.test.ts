/**
 * The built pages as documents: valid HTML, links that lead somewhere, nothing from elsewhere,
 * light enough.
 */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { HtmlValidate } from 'html-validate';
import { describe, expect, inject, test } from 'vitest';
import { allPages, fileOf, htmlOf, pageOfEachKind, pagesToWalk } from './pages.ts';

const folder = inject('siteFolder');
const base = inject('siteBase');
const pages = allPages(folder);
const kinds = pageOfEachKind(folder);

/** Values of an attribute in a document, as a browser reads them. */
function attribute(html: string, name: string): string[] {
  return [...html.matchAll(new RegExp(`\\s${name}="([^"]*)"`, 'g'))].map(([, value]) =>
    value.replaceAll('&amp;', '&').replaceAll('&#38;', '&'),
  );
}

test(
  'pages are valid HTML: all of the first language, and each kind of every other',
  { timeout: 120_000 },
  async () => {
    const checker = new HtmlValidate({
      extends: ['html-validate:recommended', 'html-validate:document'],
      rules: {
        // House style of the rule set, not validity: Astro writes void elements and empty
        // attributes in the short form, and a plate's title may be long.
        'void-style': 'off',
        'attribute-boolean-style': 'off',
        'attribute-empty-style': 'off',
        'doctype-style': 'off',
        'long-title': 'off',
        // The questions of the index are answered where they stand; there is nothing to submit.
        'wcag/h32': 'off',
        'no-trailing-whitespace': 'off',
        // Our own files come from the host that the page itself comes from.
        'require-sri': ['error', { target: 'crossorigin' }],
      },
    });
    const faults: string[] = [];
    for (const page of pagesToWalk(folder)) {
      const report = await checker.validateString(htmlOf(folder, page), fileOf(folder, page));
      for (const { line, column, ruleId, message } of report.results.flatMap((r) => r.messages)) {
        faults.push(`${page}:${line}:${column} ${ruleId} ${message}`);
      }
    }
    expect(faults).toEqual([]);
  },
);

test('the HTML checker of this test finds a planted fault', async () => {
  const checker = new HtmlValidate({ extends: ['html-validate:recommended'] });
  const report = await checker.validateString('<p id="a"></p><p id="a"></p>');
  expect(report.results[0].messages.map(({ ruleId }) => ruleId)).toContain('no-dup-id');
});

test('every link inside the exhibit leads to a file, and to an id that is there', () => {
  const broken: string[] = [];
  for (const page of pages) {
    const here = new URL(`${base}${page}`, 'http://exhibit.example');
    for (const href of attribute(htmlOf(folder, page), 'href')) {
      const target = new URL(href, here);
      if (target.origin !== here.origin || !target.protocol.startsWith('http')) continue;
      const path = decodeURIComponent(target.pathname);
      const file = join(folder, path.slice(base.length), path.endsWith('/') ? 'index.html' : '');
      if (!path.startsWith(base) || !existsSync(file) || !statSync(file).isFile()) {
        broken.push(`${page || 'home'} -> ${href}`);
        continue;
      }
      // A fragment with "=" is a state of the viewer, not the id of an element.
      const id = decodeURIComponent(target.hash.slice(1));
      if (id === '' || id.includes('=') || !file.endsWith('.html')) continue;
      if (!attribute(readFileSync(file, 'utf8'), 'id').includes(id)) {
        broken.push(`${page || 'home'} -> ${href} (no such id)`);
      }
    }
  }
  expect(broken).toEqual([]);
});

test('nothing that a page loads comes from another host', () => {
  const outside: string[] = [];
  for (const page of pages) {
    const html = htmlOf(folder, page);
    const loads = [
      ...attribute(html, 'src'),
      ...attribute(html, 'srcset').flatMap((set) => set.split(', ').map((s) => s.split(' ')[0])),
      ...[
        ...html.matchAll(/<link\b[^>]*rel="(?:stylesheet|preload|icon|modulepreload)"[^>]*>/g),
      ].flatMap(([tag]) => attribute(tag, 'href')),
      ...[...html.matchAll(/url\("?([^")]+)"?\)/g)].map(([, url]) => url),
    ];
    for (const url of loads)
      if (!url.startsWith(base) && !url.startsWith('data:')) outside.push(`${page}: ${url}`);
  }
  expect(outside).toEqual([]);
});

test('every page carries a policy that lets only its own files in', () => {
  for (const page of pages) {
    const policy =
      /http-equiv="content-security-policy" content="([^"]*)"/i.exec(htmlOf(folder, page))?.[1] ??
      '';
    expect(policy, page).toContain("default-src 'self'");
    expect(policy, page).not.toMatch(/unsafe-inline|unsafe-eval|https?:/);
  }
});

test('no page carries a style attribute, which the policy would refuse', () => {
  expect(pages.filter((page) => /<[^>]+\sstyle="/.test(htmlOf(folder, page)))).toEqual([]);
});

/** Scripts that a page loads at once: its own and those that they import at their top. */
function scriptsOf(files: readonly string[], seen = new Set<string>()): Set<string> {
  for (const file of files) {
    if (seen.has(file)) continue;
    seen.add(file);
    const text = readFileSync(file, 'utf8');
    const imports = [...text.matchAll(/\bimport\s*(?:[\w*{}\s,$]+\s*from\s*)?["'](\.[^"']+)["']/g)];
    scriptsOf(
      imports.map(([, path]) => join(file, '..', path)),
      seen,
    );
  }
  return seen;
}

describe('script and style before the viewer is asked for stay under 60 kB, gzip', () => {
  test.each(Object.entries(kinds))('%s', (_, page) => {
    const html = htmlOf(folder, page);
    const local = (url: string) => join(folder, url.slice(base.length));
    const styles = [...html.matchAll(/<link\b[^>]*rel="stylesheet"[^>]*>/g)]
      .flatMap(([tag]) => attribute(tag, 'href'))
      .map(local);
    const scripts = scriptsOf(
      [...html.matchAll(/<script\b[^>]*\ssrc="([^"]+)"/g)].map(([, src]) => local(src)),
    );
    const inline = [...html.matchAll(/<(style|script)\b[^>]*>([\s\S]*?)<\/\1>/g)].map(
      ([, , t]) => t,
    );
    const weight =
      [...styles, ...scripts].reduce((sum, file) => sum + gzipSync(readFileSync(file)).length, 0) +
      gzipSync(inline.join('\n')).length;
    expect(styles.length).toBeGreaterThan(0);
    expect(weight).toBeLessThan(60_000);
  });
});

test('a covered plate is in no preview and in no picture of another page', () => {
  const slug = kinds['covered'].split('/')[1];
  const own = new RegExp(`^([a-z]{2}/)?plates/${slug}/`);
  const views = `${base}plates/${slug}/views/`;
  const shown = pages.filter((page) => !own.test(page) && htmlOf(folder, page).includes(views));
  expect(shown).toEqual([]);
  expect(htmlOf(folder, kinds['covered'])).not.toContain('property="og:image"');
});
