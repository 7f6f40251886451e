import { expect, test } from 'vitest';
import { factorFor, tilesOver } from '../../../src/viewer/take/region-picture.ts';
import { brokenLines } from '../../../src/viewer/take/figure-picture.ts';

const info = { width: 3155, height: 2749, tiles: [{ width: 512, scaleFactors: [1, 2, 4, 8] }] };

test('asks for exactly the tiles that a region touches, under their canonical addresses', () => {
  const region = { x: 500, y: 2600, width: 30, height: 149 };
  // IIIF Image API 3.0, 4.7 (canonical form): region in full pixels, size `w,h`.
  expect(tilesOver(info, region, 1)).toEqual([
    { address: '0,2560,512,189/512,189/0/default.jpg', x: 0, y: 2560 },
    { address: '512,2560,512,189/512,189/0/default.jpg', x: 512, y: 2560 },
  ]);
});

test('the last column of a coarser level is rounded up', () => {
  const region = { x: 3100, y: 2100, width: 55, height: 10 };
  expect(tilesOver(info, region, 2)).toEqual([
    { address: '3072,2048,83,701/42,351/0/default.jpg', x: 1536, y: 1024 },
  ]);
});

test('a level that fits one tile is the whole picture', () => {
  const region = { x: 0, y: 0, width: 10, height: 10 };
  expect(tilesOver(info, region, 8)[0].address).toBe('full/395,344/0/default.jpg');
});

test('the resolution is halved until the region fits, and no further', () => {
  const region = { x: 0, y: 0, width: 3000, height: 2000 };
  expect(factorFor(region, 6e6, 8)).toBe(1);
  expect(factorFor(region, 5.9e6, 8)).toBe(2);
  expect(factorFor(region, 10, 8)).toBe(8);
});

test('words are broken at spaces and none is lost', () => {
  const lines = brokenLines('one two three four', 9, (text) => text.length);
  const address = brokenLines('see https://museum.example/plates/ now', 10, (t) => t.length);
  expect(address).toEqual(['see', 'https://mu', 'seum.examp', 'le/plates/', 'now']);
  expect(lines).toEqual(['one two', 'three', 'four']);
});
