import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { crc32, withWords } from '../../../src/viewer/take/png-metadata.ts';

// One white pixel, made by ImageMagick: convert xc:white -strip PNG24:- | base64
const onePixel = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAIAAACQd1PeAAAADElEQVQI12P4//8/AAX+Av7czFnnAAAAAElFTkSuQmCC',
  'base64',
);

const words = {
  title: 'The basin & its <masts>',
  description: 'View Tilt, 25 November 2026',
  credit: 'Fennel Quay Museum of Light',
  rights: 'https://creativecommons.org/publicdomain/zero/1.0/',
  source: 'https://museum.example/plates/inner-basin/#view=tilt&of=a,b',
};

test('the check value of CRC-32 is the published one', () => {
  // "123456789" -> CBF43926: the check value of the CRC-32 of ISO/IEC 3309, as PNG uses it.
  expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
});

test('what is not a PNG is refused', () => {
  expect(() => withWords(new Uint8Array(40), words, null)).toThrow('This is not a PNG.');
});

const hasExiftool = spawnSync('exiftool', ['-ver']).status === 0;

test.skipIf(!hasExiftool)('exiftool reads every word and the plate’s own size', () => {
  const folder = mkdtempSync(join(tmpdir(), 'mirrorleaf-png-'));
  const file = join(folder, 'figure.png');
  // 40 pixels a millimetre.
  writeFileSync(file, withWords(onePixel, words, 40_000));
  const [read] = JSON.parse(
    execFileSync('exiftool', ['-j', '-validate', '-warning', '-all', file], { encoding: 'utf8' }),
  ) as [Record<string, unknown>];
  rmSync(folder, { recursive: true, force: true });
  expect(read).toMatchObject({
    Validate: 'OK',
    Title: words.title,
    Description: words.description,
    Credit: words.credit,
    Rights: words.rights,
    WebStatement: words.rights,
    Source: words.source,
    PixelsPerUnitX: 40_000,
    PixelUnits: 'meters',
  });
});
