import { describe, expect, test } from 'vitest';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { accentCss, contrast, grounds, legible } from '../../src/components/accent.ts';

describe('contrast', () => {
  // 21 is the largest ratio by WCAG 2.2; the others were computed from its definition by another
  // program. #767676 is the lightest grey that passes 4.5 on white, #777777 the darkest that fails.
  test.each([
    ['#000000', '#ffffff', 21],
    ['#767676', '#ffffff', 4.5422],
    ['#777777', '#ffffff', 4.4781],
    ['#949494', '#ffffff', 3.0335],
    ['#959595', '#ffffff', 2.9953],
    ['#595959', '#ffffff', 7.0047],
  ])('of %s and %s is %f', (a, b, expected) => {
    expect(contrast(a, b)).toBeCloseTo(expected, 4);
    expect(contrast(b, a)).toBeCloseTo(expected, 4);
  });
});

describe('an accent', () => {
  test('that is legible stays as it was written', () => {
    expect(legible('#5a3d00', grounds.light, 4.5)).toBe('#5a3d00');
  });

  test.each(['#ffff00', '#a9823c', '#ff8080', '#000000', '#ffffff', '#0000ff'])(
    '%s becomes legible on both grounds',
    (colour) => {
      for (const ground of Object.values(grounds)) {
        expect(contrast(legible(colour, ground, 4.5), ground)).toBeGreaterThanOrEqual(4.5);
      }
    },
  );

  test('sets both themes in the rules of a page', () => {
    expect(accentCss('#a9823c')).toMatch(
      /^:root\{--accent:(#[0-9a-f]{6});--accent-dark:(#[0-9a-f]{6})\}@media \(prefers-color-scheme:dark\)\{:root\{--accent:\2\}\}$/,
    );
  });
});

test('the grounds are those of the style sheet', () => {
  const css = readFileSync(
    join(import.meta.dirname, '..', '..', 'src', 'styles', 'tokens.css'),
    'utf8',
  );
  const papers = [...css.matchAll(/--paper: (#[0-9a-f]{6});/g)].map(([, colour]) => colour);
  expect(papers).toEqual([grounds.light, grounds.dark]);
});

test('text, quiet text and the viewer’s text keep 4.5 to 1 on their grounds', () => {
  const css = readFileSync(
    join(import.meta.dirname, '..', '..', 'src', 'styles', 'tokens.css'),
    'utf8',
  );
  const [light, dark] = css.split('@media');
  const token = (part: string, name: string) =>
    new RegExp(`--${name}: (#[0-9a-f]{6});`).exec(part)?.[1] ?? 'missing';
  for (const theme of [light, dark]) {
    for (const name of ['ink', 'soft']) {
      for (const ground of ['paper', 'wash']) {
        const ratio = contrast(token(theme, name), token(theme, ground));
        expect(ratio, `${name} on ${ground}`).toBeGreaterThanOrEqual(4.5);
      }
    }
  }
  for (const name of ['on-velvet', 'on-velvet-soft']) {
    expect(contrast(token(light, name), token(light, 'velvet'))).toBeGreaterThanOrEqual(4.5);
  }
});
