import { expect, test } from 'vitest';
import { headersFile, htaccessFile, redirectsFile } from '../../src/publish/host-files.ts';

const settings = { base: '/exhibit/', moved: [['old', 'new']] as const };

test('other sites may read plates, and assets are kept', () => {
  const text = headersFile(settings);
  expect(text).toContain('/exhibit/plates/*\n  Access-Control-Allow-Origin: *');
  expect(text).toMatch(/\/exhibit\/assets\/\*\n {2}Cache-Control: .*immutable/);
});

test('no header forbids what the embedded page and the search need', () => {
  // A policy in a header adds to that of the page: script-src would stop the search's wasm,
  // frame-ancestors the page that is meant for frames.
  expect(headersFile(settings) + htaccessFile(settings)).not.toMatch(
    /content-security-policy|x-frame-options/i,
  );
});

test('a former address leads to the same part of the plate’s folder of today', () => {
  expect(redirectsFile(settings)).toBe('/exhibit/plates/old/* /exhibit/plates/new/:splat 301\n');
  const rule = /RedirectMatch 301 "(.*)" "(.*)"/.exec(htaccessFile(settings))!;
  const address = '/exhibit/plates/old/captures/';
  expect(address.replace(new RegExp(rule[1]), rule[2])).toBe('/exhibit/plates/new/captures/');
});
