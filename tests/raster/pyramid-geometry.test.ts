import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { imageServiceSupportsRequest, isLevel0 } from '@iiif/parser/image-3';
import { describe, expect, test } from 'vitest';
import {
  infoDocument,
  levelShapes,
  pyramidAddresses,
  tileAddress,
} from '../../src/raster/pyramid-geometry.ts';
import { tileRequests } from './viewer-requests.ts';

interface Vectors {
  readonly cases: readonly {
    width: number;
    height: number;
    tile: number;
    scaleFactors: number[];
    count: number;
    tiles: string[];
  }[];
}
// IIIF Image API 3.0, Implementation Notes, section 3, worked for six sizes; the last list is
// shortened in the middle by "...".
const file = join(import.meta.dirname, '../reference/iiif-tile-addresses.json');
const { cases } = JSON.parse(readFileSync(file, 'utf8')) as Vectors;

function tilesOf(width: number, height: number, tile: number): string[] {
  const source = { width, height };
  return levelShapes(width, height, tile).flatMap((level) =>
    Array.from({ length: Math.ceil(level.height / tile) }, (_, row) => row).flatMap((row) =>
      Array.from(
        { length: Math.ceil(level.width / tile) },
        (_, column) => `${tileAddress(source, level, tile, column, row)}/default.jpg`,
      ),
    ),
  );
}

/** Odd, tiny, tall, wide, exactly one tile, one more than a tile, and large ones. */
const sizes: readonly (readonly [number, number])[] = [
  [1, 1],
  [1, 700],
  [300, 400],
  [512, 512],
  [513, 512],
  [512, 1025],
  [1023, 513],
  [1025, 1025],
  [2048, 1024],
  [3001, 1999],
  [4097, 3001],
  [8191, 513],
  [37, 9001],
  [6035, 8212],
  [30000, 30000],
];

describe('addresses of a pyramid', () => {
  test.each(cases)('are those of the worked case $width x $height by $tile', (vector) => {
    const { width, height, tile } = vector;
    expect(levelShapes(width, height, tile).map((l) => l.factor)).toEqual(vector.scaleFactors);
    const found = tilesOf(width, height, tile);
    expect(found).toHaveLength(vector.count);
    const gap = vector.tiles.indexOf('...');
    if (gap === -1) expect(found).toEqual(vector.tiles);
    else {
      const last = vector.tiles.length - gap - 1;
      expect(found.slice(0, gap)).toEqual(vector.tiles.slice(0, gap));
      expect(found.slice(-last)).toEqual(vector.tiles.slice(-last));
    }
  });

  test.each(sizes)('cover every tile that OpenSeadragon asks for at %i x %i', (width, height) => {
    for (const [tile, maxPixels] of [
      [512, 4_200_000],
      [256, 4_200_000],
      [512, 100],
    ] as const) {
      const written = new Set(pyramidAddresses({ width, height }, tile, maxPixels));
      const info = infoDocument('http://host/plate', { width, height }, tile, maxPixels);
      const asked = tileRequests(info, 'http://host/plate');
      expect(asked.length).toBeGreaterThan(0);
      expect(asked.filter((a) => !written.has(a))).toEqual([]);
    }
  });

  test('a list of sizes rounded down would make OpenSeadragon ask for what is not there', () => {
    const written = new Set(pyramidAddresses({ width: 1023, height: 513 }, 256, 4_200_000));
    const info = infoDocument('http://host/plate', { width: 1023, height: 513 }, 256, 4_200_000);
    const down = [4, 2, 1].map((f) => ({
      width: Math.floor(1023 / f),
      height: Math.floor(513 / f),
    }));
    const asked = tileRequests({ ...info, sizes: down }, 'http://host/plate');
    expect(asked.filter((a) => !written.has(a)).length).toBeGreaterThan(0);
  });
});

describe('info.json', () => {
  test.each(sizes)('follows section 5 of the Image API 3.0 at %i x %i', (width, height) => {
    const info = infoDocument('http://host/plate', { width, height }, 512, 4_200_000);
    // 5.2: required properties and their fixed values; no final slash.
    expect(info).toMatchObject({
      '@context': 'http://iiif.io/api/image/3/context.json',
      id: 'http://host/plate',
      type: 'ImageService3',
      protocol: 'http://iiif.io/api/image',
      profile: 'level0',
      width,
      height,
    });
    const limits = info as { maxWidth?: number; maxHeight?: number };
    const listed = info['sizes'] as { width: number; height: number }[];
    const [tiles] = info['tiles'] as { width: number; scaleFactors: number[] }[];
    // 5.2: sizes must lie inside maxWidth and maxHeight; the largest is what full/max gives.
    expect(listed.at(-1)).toEqual({
      width: limits.maxWidth ?? width,
      height: limits.maxHeight ?? height,
    });
    // 5.4: positive whole factors, each once.
    expect(new Set(tiles.scaleFactors).size).toBe(tiles.scaleFactors.length);
    // Compliance 3.2: every listed size is served; level 0 requires full/max.
    const written = new Set(pyramidAddresses({ width, height }, 512, 4_200_000));
    expect(written.has('full/max/0/default.jpg')).toBe(true);
    for (const s of listed)
      expect(written.has(`full/${s.width},${s.height}/0/default.jpg`)).toBe(true);
    // Compliance 3.2: every tile that the document implies is served.
    for (const address of tilesOf(width, height, 512)) expect(written.has(address)).toBe(true);
  });

  test('is read as a level 0 service with its sizes by @iiif/parser', () => {
    const info = infoDocument('http://host/plate', { width: 3001, height: 1999 }, 512, 4_200_000);
    const service = info as unknown as Parameters<typeof imageServiceSupportsRequest>[0];
    expect(isLevel0(service)).toBe(true);
    const request = (size: { width: number; height: number }) =>
      imageServiceSupportsRequest(service, {
        type: 'image',
        scheme: 'http',
        server: 'host',
        prefix: '',
        identifier: 'plate',
        originalPath: '',
        region: { full: true },
        size: { max: false, upscaled: false, confined: false, ...size },
        rotation: { angle: 0 },
        quality: 'default',
        format: 'jpg',
      })[0];
    expect(request({ width: 1501, height: 1000 })).toBe(true);
    expect(request({ width: 1400, height: 933 })).toBe(false);
  });
});
