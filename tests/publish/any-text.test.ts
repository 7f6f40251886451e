/** Files that others wrote, read by the doors of `src/publish`: any text at all, in bounded time. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  parseDeclaration,
  parseFetch,
  parseInfo,
  parseManifest,
  pathFault,
} from '../../src/publish/deposit/tag-files.ts';
import { readStyleSheet } from '../../src/publish/theme/style-sheet.ts';

const mixed = (...pieces: string[]) =>
  fc.oneof(
    fc.string(),
    fc.array(fc.constantFrom(...pieces), { maxLength: 50 }).map((parts) => parts.join('')),
  );

describe('whatever a bag of somebody else says of itself', () => {
  const text = mixed(
    ...[
      'BagIt-Version: ',
      '1.0',
      '0.97',
      'Tag-File-Character-Encoding: ',
      'UTF-8',
      ': ',
      ' ',
      '\t',
    ],
    ...['\n', '\r\n', '\r', '\uFEFF', 'abc0123', 'data/', '../', '..', '/', '\\', './', '~', 'C:'],
    ...['%0A', '%25', '%2e%2e', '*', 'é', 'e\u0301', '-', '12', 'https://e.example/x'],
  );

  test('gives entries that stay in the bag, and a sentence for the others', () => {
    fc.assert(
      fc.property(text, (one) => {
        for (const version of ['0.97', '1.0']) {
          const declared = parseDeclaration(
            `BagIt-Version: ${version}\nTag-File-Character-Encoding: UTF-8\n`,
          );
          if (!declared.ok) throw new Error(declared.reason);
          const { entries, errors } = parseManifest('manifest-sha256.txt', one, declared.value);
          for (const { path, digest } of entries) {
            expect(pathFault(path)).toBeNull();
            expect(path.split(/[\\/]/)).not.toContain('..');
            expect(digest).toMatch(/^[0-9a-f]+$/);
          }
          for (const error of errors) expect(error).toMatch(/^manifest-sha256\.txt /);
        }
        for (const error of parseFetch(one).errors) expect(error).toMatch(/^fetch\.txt /);
        for (const [label] of parseInfo(one)) expect(label).not.toBe('');
        const declaration = parseDeclaration(one);
        if (!declaration.ok) expect(declaration.reason).toMatch(/\.$/);
      }),
      { numRuns: 800 },
    );
  });
});

describe('whatever a style sheet holds', () => {
  const css = mixed(
    ...[
      '{',
      '}',
      '(',
      ')',
      ';',
      ':',
      '--paper: #fff',
      ':root',
      '@media (prefers-color-scheme: dark)',
    ],
    ...['@import "x.css"', 'url(', 'url("https://e.example/x")', '/*', '*/', '"', '\\', '\n', ' '],
    ...['</style>', '<script>', 'image-set(', '\0', '@font-face', 'src:', ','],
  );

  test('it is read, or refused with its line', () => {
    fc.assert(
      fc.property(css, (one) => {
        const read = readStyleSheet(one);
        const lines = one.split(/\r\n|[\n\f\r]/).length;
        if (read.ok) {
          for (const { line } of [...read.sheet.addresses, ...read.sheet.unread])
            expect(line).toBeLessThanOrEqual(lines);
        } else {
          expect(read.line).toBeLessThanOrEqual(lines);
          expect(read.reason).not.toBe('');
        }
      }),
      { numRuns: 800 },
    );
  });
});
