import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { keyOf } from '../../src/pipeline/key.ts';

describe('keyOf', () => {
  test('is the SHA-256 of the parts as JSON', () => {
    const json = '{"a":[1,"two",null,true]}';
    expect(keyOf({ a: [1, 'two', null, true] })).toBe(
      createHash('sha256').update(json).digest('hex'),
    );
  });

  test('does not depend on the order of fields, nor on fields that are not there', () => {
    expect(keyOf({ a: 1, b: { c: 2, d: 3 } })).toBe(
      keyOf({ b: { d: 3, c: 2 }, a: 1, e: undefined }),
    );
  });

  test('tells apart what differs only in kind or in place', () => {
    const keys = [keyOf(1), keyOf('1'), keyOf([1]), keyOf({ 0: 1 }), keyOf(null), keyOf([1, [2]])];
    expect(new Set([...keys, keyOf([[1], 2])]).size).toBe(7);
  });

  test('refuses a number that JSON would turn into null', () => {
    expect(() => keyOf({ scale: NaN })).toThrow('A key cannot hold the number NaN');
  });
});
