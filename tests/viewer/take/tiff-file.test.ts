import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { asciiText, tiffFile } from '../../../src/viewer/take/tiff-file.ts';

const words = {
  title: 'The basin & its <masts>',
  description: 'View “Tilt”, 25 November 2026 – 8.0°, café',
  credit: 'Fennel Quay Museum of Light',
  rights: 'https://creativecommons.org/publicdomain/zero/1.0/',
  source: 'https://museum.example/plates/inner-basin/#view=tilt&of=a,b',
};

/** Wide and high enough for several strips, the last one shorter. */
const [width, height] = [301, 203];
const rgba = Uint8Array.from({ length: 4 * width * height }, (_, i) =>
  i % 4 === 3 ? 255 : (i * 7 + (i >> 9)) % 256,
);
const rgb = Buffer.from(rgba.filter((_, i) => i % 4 !== 3));

let folder: string;
let file: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'mirrorleaf-tiff-'));
  file = join(folder, 'figure.tif');
  // 40 pixels a millimetre.
  writeFileSync(file, tiffFile({ width, height, rgba, pixelsPerCentimetre: 400, words }));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a TIFF taken away', () => {
  test('is read by libvips (in sharp) to the same codes, at the plate’s own size', async () => {
    const { data, info } = await sharp(file).raw().toBuffer({ resolveWithObject: true });
    expect([info.width, info.height, info.channels]).toEqual([width, height, 3]);
    expect(data.equals(rgb)).toBe(true);
    // 400 to the centimetre are 1016 to the inch.
    expect((await sharp(file).metadata()).density).toBe(1016);
  });

  const has = (program: string, flag: string) => spawnSync(program, [flag]).status === 0;

  test.skipIf(!has('exiftool', '-ver'))('has every word for exiftool, and no fault', () => {
    const [read] = JSON.parse(
      execFileSync('exiftool', ['-j', '-G', '-validate', '-warning', '-all', file], {
        encoding: 'utf8',
      }),
    ) as [Record<string, unknown>];
    expect(read).toMatchObject({
      'ExifTool:Validate': 'OK',
      'EXIF:ImageDescription': `${words.title}. View "Tilt", 25 November 2026 - 8.0 deg, cafe`,
      'EXIF:Copyright': `${words.credit}. ${words.rights}`,
      'EXIF:Software': 'Mirrorleaf',
      'EXIF:XResolution': 400,
      'EXIF:ResolutionUnit': 'cm',
      'XMP:Title': words.title,
      'XMP:Description': words.description,
      'XMP:Rights': words.rights,
      'XMP:WebStatement': words.rights,
      'XMP:Credit': words.credit,
      'XMP:Source': words.source,
    });
  });

  test.skipIf(!has('identify', '-version'))('is read by ImageMagick to the same codes', () => {
    // https://imagemagick.org: raw codes of the file as it decodes it.
    const read = execFileSync('convert', [file, '-depth', '8', 'rgb:-'], { maxBuffer: 1e7 });
    expect(read.equals(rgb)).toBe(true);
  });

  test('without a scale states no unit', async () => {
    const plain = tiffFile({ width, height, rgba, pixelsPerCentimetre: null, words });
    const { data } = await sharp(plain).raw().toBuffer({ resolveWithObject: true });
    expect(data.equals(rgb)).toBe(true);
    const view = new DataView(plain.buffer);
    const directory = view.getUint32(4, true);
    const tags = Array.from({ length: view.getUint16(directory, true) }, (_, n) => {
      const at = directory + 2 + 12 * n;
      return [view.getUint16(at, true), view.getUint16(at + 8, true)] as const;
    });
    expect(tags.find(([tag]) => tag === 296)?.[1]).toBe(1);
    // TIFF 6.0, section 2: in ascending order.
    expect(tags.map(([tag]) => tag)).toEqual(tags.map(([tag]) => tag).sort((a, b) => a - b));
  });

  test.each([
    [1, 1],
    [30_000, 3],
  ])('of %d by %d pixels is whole', async (w, h) => {
    const codes = Uint8Array.from({ length: 4 * w * h }, (_, i) => i % 251);
    const made = tiffFile({ width: w, height: h, rgba: codes, pixelsPerCentimetre: 1, words });
    const { data } = await sharp(made).raw().toBuffer({ resolveWithObject: true });
    expect(data.equals(Buffer.from(codes.filter((_, i) => i % 4 !== 3)))).toBe(true);
  });
});

test('text is told in seven bits', () => {
  expect(asciiText('Ångström “µm” — 3 × 4 中')).toBe('Angstrom "um" - 3 x 4 ?');
});
