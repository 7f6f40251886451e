import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { captureFaultCodes } from '../../src/raster/capture-fault.ts';
import { readCapture, type ReadCapture } from '../../src/raster/read-capture.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import { hasShared, sharedPath } from '../shared.ts';
import { hasProgram, run } from './other-programs.ts';
import { scratchFolder } from './scratch-folder.ts';
import { platePicture } from './test-pictures.ts';

const folder = scratchFolder();
const scratch = join(folder, 'scratch');
const read = (name: string, pixelLimit?: number): Promise<ReadCapture> =>
  readCapture(join(folder, name), { scratch, pixelLimit });

const [width, height] = [120, 90];
const data = platePicture(width, height);
const exif = {
  make: 'Invented Works',
  model: 'Plate 1',
  lens: '100 mm macro',
  focalLength: 100,
  aperture: 8,
  iso: 100,
  seconds: 1 / 125,
  taken: '2026-03-14T09:30:00',
};
const picture = { width, height, channels: 3, depth: 16, data, profile: 'srgb', exif } as const;
await writePicture(join(folder, 'plain.tif'), { ...picture, format: 'tiff' });
await writePicture(join(folder, 'packed.tif'), {
  ...picture,
  format: 'tiff',
  compression: 'deflate',
});
await writePicture(join(folder, 'deep.png'), { ...picture, format: 'png' });

describe('a capture that is whole', () => {
  test.each(['plain.tif', 'packed.tif', 'deep.png'])('%s gives its facts', async (name) => {
    const found = await read(name);
    if (!found.ok) throw new Error(found.message);
    const bytes = readFileSync(join(folder, name));
    // Mean of the closed form over all samples; weights of IEC 61966-2-1.
    const linear = (c: number): number =>
      c / 65535 <= 0.04045 ? c / 65535 / 12.92 : ((c / 65535 + 0.055) / 1.055) ** 2.4;
    let mean = 0;
    for (let i = 0; i < data.length; i += 3) {
      mean +=
        0.2126 * linear(data[i]) + 0.7152 * linear(data[i + 1]) + 0.0722 * linear(data[i + 2]);
    }
    expect(found.value).toMatchObject({
      name,
      sha256: createHash('sha256').update(bytes).digest('hex'),
      bytes: bytes.length,
      width,
      height,
      channels: 3,
      depth: 16,
      profile: 'sRGB',
      exif,
      clippedShare: 0,
    });
    expect(found.value.meanLuminance).toBeCloseTo(mean / (width * height), 5);
  });

  test('lies as its orientation says, and counts clipped pixels', async () => {
    const grey = new Uint8Array(40 * 20).fill(100);
    grey.fill(255, 0, 8);
    await sharp(grey, { raw: { width: 40, height: 20, channels: 1 } })
      .toColourspace('b-w')
      .withMetadata({ orientation: 6 })
      .png()
      .toFile(join(folder, 'turned.png'));
    const found = await read('turned.png');
    expect(found).toMatchObject({
      ok: true,
      value: { width: 20, height: 40, clippedShare: 0.01 },
    });
  });

  test('may have an alpha channel that is opaque everywhere', async () => {
    const opaque = new Uint8Array(10 * 10 * 4).fill(255);
    const raw = { width: 10, height: 10, channels: 4 } as const;
    await sharp(opaque, { raw }).png().toFile(join(folder, 'opaque.png'));
    expect(await read('opaque.png')).toMatchObject({ ok: true, value: { channels: 3 } });
  });

  test('leaves nothing in the scratch folder', async () => {
    await read('packed.tif');
    expect(readdirSync(scratch)).toEqual([]);
  });

  test.skipIf(!hasProgram('exiftool'))(
    'is described without its place, serial numbers and owner (skipped without exiftool)',
    async () => {
      copyFileSync(join(folder, 'plain.tif'), join(folder, 'private.tif'));
      execFileSync('exiftool', [
        '-q',
        '-overwrite_original',
        '-GPSLatitude=48.8',
        '-GPSLatitudeRef=N',
        '-SerialNumber=SN-4711',
        '-OwnerName=Jane Doe',
        join(folder, 'private.tif'),
      ]);
      const found = await read('private.tif');
      expect(found).toMatchObject({ ok: true, value: { exif } });
      expect(JSON.stringify(found)).not.toMatch(/SN-4711|Jane|48\.8/);
    },
  );
});

async function spoiled(name: string, make: (path: string) => unknown): Promise<ReadCapture> {
  const path = join(folder, name);
  await make(path);
  return read(name);
}

/** Every failure is a code of the list and two sentences, the first with the file's name in it. */
function expectFailure(found: ReadCapture, code: string, message: string | RegExp): void {
  expect(found).toMatchObject({ ok: false, code });
  if (found.ok) return;
  expect(found.message).toMatch(message);
  expect(found.message).toMatch(/\.$/);
  expect(found.remedy).toMatch(/^[A-Z].*\.$/);
}

const rgb = sharp({ create: { width: 30, height: 20, channels: 3, background: '#a98' } });

describe('a file that is no capture is refused with a sentence:', () => {
  test('missing', async () => {
    expectFailure(
      await read('gone.tif'),
      'file-missing',
      'gone.tif is not in the captures folder.',
    );
  });

  test('a folder', async () => {
    const found = await spoiled('folder.tif', (p) => mkdirSync(p));
    expectFailure(found, 'file-unreadable', 'folder.tif is a folder or a device');
  });

  test('empty', async () => {
    const found = await spoiled('empty.tif', (p) => {
      writeFileSync(p, '');
    });
    expectFailure(found, 'file-empty', 'empty.tif is empty: 0 bytes.');
  });

  test('another kind of file', async () => {
    const found = await spoiled('notes.tif', (p) => {
      writeFileSync(p, '%PDF-1.7 and so on');
    });
    expectFailure(found, 'file-type', /^notes\.tif is a PDF document, judged by its first bytes/);
  });

  test('named as another format', async () => {
    const found = await spoiled('jpeg.tif', (p) => rgb.clone().jpeg().toFile(p));
    expectFailure(found, 'file-misnamed', 'jpeg.tif is a JPEG file by its content');
    if (!found.ok) expect(found.remedy).toContain('end in .jpg');
  });

  test.each([
    ['cut.jpg', 'jpeg'],
    ['cut.png', 'png'],
    ['cut.webp', 'webp'],
  ] as const)('cut short, %s', async (name, format) => {
    const path = join(folder, name);
    const big = sharp(Buffer.from(platePicture(200, 150).buffer), {
      raw: { width: 200, height: 300, channels: 3 },
    });
    await big.toFormat(format).toFile(path);
    truncateSync(path, Math.floor(readFileSync(path).length / 2));
    expectFailure(await read(name), 'file-damaged', `${name} cannot be decoded to its last pixel`);
  });

  test.each(['plain.tif', 'packed.tif'])('cut short, a copy of %s', async (name) => {
    const found = await spoiled(`cut-${name}`, (p) => {
      copyFileSync(join(folder, name), p);
      truncateSync(p, Math.floor(readFileSync(p).length * 0.9));
    });
    expectFailure(found, 'file-damaged', `cut-${name}`);
  });

  test('CMYK', async () => {
    const found = await spoiled('inks.jpg', (p) =>
      rgb.clone().toColourspace('cmyk').jpeg().toFile(p),
    );
    expectFailure(found, 'colour-space', 'inks.jpg holds CMYK numbers; a capture is grey or RGB.');
  });

  test('transparent', async () => {
    const found = await spoiled('clear.png', (p) => rgb.clone().ensureAlpha(0.5).png().toFile(p));
    expectFailure(found, 'transparent', 'clear.png has transparent pixels');
  });

  test.skipIf(!hasProgram('convert'))('floating-point (skipped without ImageMagick)', async () => {
    const float = ['-compress', 'Zip', '-define', 'quantum:format=floating-point', '-depth', '32'];
    const found = await spoiled('float.tif', (p) =>
      run('convert', [join(folder, 'plain.tif'), ...float, p]),
    );
    expectFailure(found, 'pixel-format', 'float.tif has floating-point samples of 32 bits');
  });

  test('one bit', async () => {
    const found = await spoiled('one-bit.tif', (p) =>
      rgb.clone().toColourspace('b-w').tiff({ bitdepth: 1, compression: 'none' }).toFile(p),
    );
    expectFailure(found, 'pixel-format', 'one-bit.tif has unsigned samples of 1 bits');
  });

  test('animated', async () => {
    const two = { width: 8, height: 16, channels: 3, pageHeight: 8 } as const;
    const frames = new Uint8Array(8 * 16 * 3).map((_, i) => (i < 192 ? 0 : 255));
    const found = await spoiled('film.webp', (p) => sharp(frames, { raw: two }).webp().toFile(p));
    expectFailure(found, 'several-pages', 'film.webp holds 2 pictures; a capture is one.');
  });

  test('over the pixel limit, which the caller may raise', async () => {
    const found = await read('plain.tif', 10_000);
    expectFailure(found, 'over-pixel-limit', 'plain.tif is 120 x 90 pixels, 0.01 megapixels');
    expect((await read('plain.tif', 10_800)).ok).toBe(true);
  });

  test('a small file that would swell to billions of pixels', async () => {
    const found = await spoiled('bomb.png', (p) => {
      // A PNG header alone: 60000 x 60000, 8-bit RGB (W3C PNG 11.2.1), no pixels at all.
      const png = Buffer.from(
        '89504e470d0a1a0a0000000d494844520000ea600000ea6008020000003a2d6d9d0000000049454e44ae426082',
        'hex',
      );
      writeFileSync(p, png);
    });
    expect(found.ok).toBe(false);
    if (!found.ok) expect(['over-pixel-limit', 'file-damaged']).toContain(found.code);
  });
});

describe.skipIf(!hasShared('data', 'decoders'))(
  'the test files of image decoders (skipped where they do not lie beside the project)',
  () => {
    const root = sharedPath('data', 'decoders');

    test('are each decoded, or refused with a sentence; none stops or crashes the program', async () => {
      const files = readdirSync(root, { recursive: true, withFileTypes: true })
        .filter((e) => e.isFile())
        .map((e) => join(e.parentPath, e.name));
      expect(files.length).toBeGreaterThan(300);
      const codes = new Set<string>();
      let decoded = 0;
      for (const path of files) {
        const found = await readCapture(path, { scratch });
        if (found.ok) {
          decoded += 1;
          expect(found.value.meanLuminance).toBeGreaterThanOrEqual(0);
          expect(found.value.meanLuminance).toBeLessThanOrEqual(1);
        } else {
          codes.add(found.code);
          expectFailure(found, found.code, /\S/);
          expect(captureFaultCodes).toContain(found.code);
          // No path of this machine in a sentence for the reader.
          expect(found.message).not.toMatch(/\/(tmp|work|home|root)\//);
        }
      }
      expect(decoded).toBeGreaterThan(100);
      for (const code of ['colour-space', 'file-damaged', 'pixel-format', 'transparent']) {
        expect(codes).toContain(code);
      }
      expect(readdirSync(scratch)).toEqual([]);
    }, 600_000);
  },
);
