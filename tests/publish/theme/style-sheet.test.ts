import { describe, expect, test } from 'vitest';
import { readStyleSheet } from '../../../src/publish/theme/style-sheet.ts';

function sheetOf(css: string) {
  const read = readStyleSheet(css);
  if (!read.ok) throw new Error(read.reason);
  return read.sheet;
}

describe('a museum’s style sheet', () => {
  test('sets our colours by day and by night', () => {
    const { overrides, unread } = sheetOf(`
      :root { --paper: #FFF; --ink: #123456; --edge: 2rem; }
      @media (prefers-color-scheme: dark) { :root { --paper: #000000 } }
    `);
    expect(overrides).toEqual({
      light: { paper: '#ffffff', ink: '#123456' },
      dark: { paper: '#000000', ink: '#123456' },
    });
    expect(unread).toEqual([]);
  });

  test('whose colour cannot be read is told of with its line', () => {
    expect(sheetOf(`:root {\n  --ink: oklch(20% 0.1 30);\n}`).unread).toEqual([
      { name: 'ink', value: 'oklch(20% 0.1 30)', line: 2 },
    ]);
  });

  test('names everything that it loads, however it is quoted', () => {
    const { addresses, imports } = sheetOf(`@import url("other.css");
      @font-face { font-family: X; src: url(fonts/x.woff2) format("woff2"), url( 'fonts/y.woff2' ) }
      body { background: image-set("a.png" 1x, 'b.png' 2x) }
      header { background: URL("https://elsewhere.example/p.gif") }`);
    expect(imports).toEqual([1]);
    expect(addresses.map(({ address }) => address)).toEqual([
      'fonts/x.woff2',
      'fonts/y.woff2',
      'a.png',
      'b.png',
      'https://elsewhere.example/p.gif',
    ]);
  });

  test('that is not CSS gives the reason and the line', () => {
    expect(readStyleSheet('a {\n  color: red;\n')).toMatchObject({
      ok: false,
      line: 1,
      reason: 'Unclosed block',
    });
  });
});
