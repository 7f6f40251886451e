import { describe, expect, test } from 'vitest';
import { measuresIn } from '../../src/words/measures.ts';

const { bytes, count, degrees, figure, percent, pixels, shutter } = measuresIn('en');
const thin = '\u202f';

describe('numbers for a reader', () => {
  test('have the figures that they deserve and a real minus', () => {
    expect(figure(0.083456, 2)).toBe('0.083');
    expect(figure(13.3)).toBe('13.3');
    expect(figure(-2)).toBe('−2');
    expect(figure(3543, 4)).toBe('3543');
  });

  test('keep their unit on the same line', () => {
    expect(pixels(0.083, 2)).toBe(`0.083${thin}px`);
    expect(degrees(45)).toBe('45°');
  });

  test('group thousands from the right', () => {
    expect(count(12_700_000)).toBe(`12${thin}700${thin}000`);
    expect(count(999)).toBe('999');
  });
});

describe('a share', () => {
  test('of nothing is 0 %, and a little is never said to be nothing', () => {
    expect(percent(0)).toBe(`0${thin}%`);
    expect(percent(0.000_001)).toBe(`<${thin}0.01${thin}%`);
  });

  test('has two figures', () => {
    expect(percent(0.0021)).toBe(`0.21${thin}%`);
    expect(percent(0.412)).toBe(`41${thin}%`);
  });
});

test('sizes of files are decimal, as file managers show them', () => {
  expect(bytes(999)).toBe(`999${thin}B`);
  expect(bytes(12_700_000)).toBe(`12.7${thin}MB`);
});

describe('a shutter time', () => {
  test('is a fraction where a camera shows a fraction', () => {
    expect(shutter(1 / 125)).toBe(`1/125${thin}s`);
    expect(shutter(1 / 60)).toBe(`1/60${thin}s`);
  });

  test('is decimal from a quarter of a second', () => {
    expect(shutter(0.25)).toBe(`0.25${thin}s`);
    expect(shutter(4)).toBe(`4${thin}s`);
  });
});

describe('in other languages', () => {
  test('the decimal sign is the language’s own', () => {
    expect(measuresIn('de').millimetres(12.345)).toBe(`12,3${thin}mm`);
    expect(measuresIn('de-CH').millimetres(12.345)).toBe(`12.3${thin}mm`);
    expect(measuresIn('fr').fixed(-0.5, 1)).toBe('−0,5');
    expect(measuresIn('es').percent(0.0021)).toBe(`0,21${thin}%`);
  });
});
