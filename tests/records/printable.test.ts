import { expect, test } from 'vitest';
import { printable } from '../../src/records/printable.ts';

test('what a terminal would obey is shown as its picture, what is text stays', () => {
  // U+241B and U+2407 are the pictures of ESC and BEL in the Unicode code charts.
  expect(printable('a\u001b]0;title\u0007\u009b31m\u007f')).toBe('a␛]0;title␇\uFFFD31m␡');
  expect(printable('Plénière 銀板 🪞\n\tx')).toBe('Plénière 銀板 🪞\n\tx');
});
