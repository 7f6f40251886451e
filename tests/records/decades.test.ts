import { describe, expect, test } from 'vitest';
import { decadesOf } from '../../src/records/decades.ts';
import { sizeName, sizeOf } from '../../src/records/plate-sizes.ts';

describe('decadesOf', () => {
  test('names every decade that a date can mean', () => {
    expect(decadesOf('1852')).toEqual([1850]);
    expect(decadesOf('1847/1851')).toEqual([1840, 1850]);
    // EDTF level 1: 185X is any year of the fifties.
    expect(decadesOf('185X')).toEqual([1850]);
    expect(decadesOf('1839~')).toEqual([1830]);
  });

  test('knows no decade without a date, and only the known end of an open one', () => {
    expect(decadesOf(undefined)).toEqual([]);
    expect(decadesOf('../1860')).toEqual([1860]);
  });
});

describe('sizeName', () => {
  test('finds the trade name of measured sides, whichever way the plate is turned', () => {
    // 2.75 × 3.25 inches is a sixth plate (Library of Congress): 69.85 × 82.55 mm.
    expect(sizeName([69.9, 82.6])).toBe('sixth');
    expect(sizeName([82.6, 69.9])).toBe('sixth');
    // 4.25 × 5.5 inches is a half plate.
    expect(sizeName([139.7, 108])).toBe('half');
  });

  test('gives no name to a size that no trade used', () => {
    expect(sizeName([40, 400])).toBeNull();
    expect(sizeName(undefined)).toBeNull();
  });

  test('proposes both sides for a name', () => {
    expect(sizeOf('sixth')).toEqual([82.6, 69.9]);
    expect(sizeOf([10, 20])).toEqual([10, 20]);
  });
});
