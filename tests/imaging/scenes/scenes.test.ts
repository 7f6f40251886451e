import { describe, expect, test } from 'vitest';
import {
  renderScene,
  renderScenePart,
  renderSceneRows,
  sceneNames,
} from '../../../src/imaging/scenes/index.ts';

const small = { width: 96, height: 80, seed: 11 };

describe.each(sceneNames)('the scene "%s"', (name) => {
  const whole = renderScene(name, small);

  test('holds only luminances from 0 to 1, and a picture rather than one tone', () => {
    let sum = 0;
    let squares = 0;
    for (const v of whole.data) {
      expect(v >= 0 && v <= 1, `${v}`).toBe(true);
      sum += v;
      squares += v * v;
    }
    const mean = sum / whole.data.length;
    const deviation = Math.sqrt(squares / whole.data.length - mean * mean);
    expect(mean).toBeGreaterThan(0.05);
    expect(mean).toBeLessThan(0.6);
    expect(deviation).toBeGreaterThan(0.08);
  });

  test('is the same number for number when drawn again', () => {
    expect(renderScene(name, small).data).toEqual(whole.data);
  });

  test('drawn in strips equals the whole', () => {
    for (const [first, count] of [
      [0, 7],
      [7, 31],
      [60, 20],
    ]) {
      const strip = renderSceneRows(name, small, first, count);
      const same = whole.data.slice(first * small.width, (first + count) * small.width);
      expect(strip).toEqual(same);
    }
  });
});

test('another seed gives another grain', () => {
  const a = renderScene('still-life', small).data;
  const b = renderScene('still-life', { ...small, seed: 12 }).data;
  expect(a).not.toEqual(b);
});

test('strips of an enlarged picture equal the whole too', () => {
  const tall = { width: 24, height: 2000, seed: 3 };
  const whole = renderScene('window-room', tall);
  const strip = renderSceneRows('window-room', tall, 777, 50);
  expect(strip).toEqual(whole.data.slice(777 * 24, 827 * 24));
});

test('the book of the desk lies in the right half of the picture and nowhere else', () => {
  const book = renderScenePart('instrument-desk', 'book', small);
  let left = 0;
  let right = 0;
  book.data.forEach((v, k) => {
    if (k % small.width < small.width / 2) left += v;
    else right += v;
  });
  expect(left).toBe(0);
  expect(right / book.data.length).toBeGreaterThan(0.03);
});

test('a part that a scene does not name is refused with the names it has', () => {
  expect(() => renderScenePart('instrument-desk', 'lamp', small)).toThrow(
    'The scene "instrument-desk" has no part "lamp". It names: book, brass.',
  );
});
