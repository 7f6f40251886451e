/**
 * Colour against LittleCMS as ImageMagick runs it (Debian imagemagick) and against Argyll's own
 * colour engine (Debian argyll), with profiles from Debian argyll-ref and icc-profiles-free.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { openRows } from '../../src/raster/capture-rows.ts';
import { paintPyramid } from '../../src/raster/pyramid.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import { memorySink } from './memory-sink.ts';
import { hasProgram, run } from './other-programs.ts';
import { scratchFolder } from './scratch-folder.ts';

const folder = scratchFolder();
const argyll = '/usr/share/color/argyll/ref';
const free = '/usr/share/color/icc';
const srgb = join(argyll, 'sRGB.icm');

const [columns, rows] = [17, 289];

/** A 17-step grid of colours, kept where sRGB can show them: paths to grey, so that little clips. */
function colours(depth: 8 | 16): Uint8Array | Uint16Array {
  const top = depth === 16 ? 65535 : 255;
  const data = depth === 16 ? new Uint16Array(4913 * 3) : new Uint8Array(4913 * 3);
  for (let i = 0; i < 4913; i += 1) {
    const [r, g, b] = [i % 17, Math.floor(i / 17) % 17, Math.floor(i / 289)];
    const grey = (r + g + b) / 3;
    for (const [c, v] of [r, g, b].entries()) {
      data[i * 3 + c] = Math.round(((grey + (v - grey) * 0.35) / 16) * top);
    }
  }
  return data;
}

/** Our sRGB bytes, as they go to the encoder. */
async function painted(path: string): Promise<Uint8Array> {
  const source = await openRows(path, { scratch: folder });
  const sink = memorySink();
  try {
    await paintPyramid(source, { tile: 512, maxPixels: 1e9 }, sink);
  } finally {
    await source.close();
  }
  const [picture] = sink.pictures.values();
  return picture.data.subarray(0, columns * rows * 3);
}

function worst(a: Uint8Array, b: Uint8Array): number {
  expect(a.length).toBe(b.length);
  return a.reduce((most, v, i) => Math.max(most, Math.abs(v - b[i])), 0);
}

/** Relative colorimetric, no black point compensation, 8 bits out. */
function byImageMagick(path: string, target: string): Uint8Array {
  const options = ['-intent', 'Relative', '+black-point-compensation', '-profile', target];
  return run('convert', [path, ...options, '-depth', '8', 'rgb:-']);
}

async function byArgyll(path: string, profile: string, name: string): Promise<Uint8Array> {
  const out = join(folder, `${name}-argyll.tif`);
  run('cctiff', ['-p', '-i', 'r', profile, '-i', 'r', srgb, path, out]);
  const raw = await sharp(out, { ignoreIcc: true })
    .toColourspace('rgb16')
    .raw({ depth: 'ushort' })
    .toBuffer();
  const codes = new Uint16Array(raw.buffer, raw.byteOffset, raw.length / 2);
  return Uint8Array.from(codes, (v) => Math.round(v / 257));
}

const profiles = [
  { name: 'AdobeRGB-like', file: join(argyll, 'ClayRGB1998.icm') },
  { name: 'AdobeRGB-like (free)', file: join(free, 'compatibleWithAdobeRGB1998.icc') },
  { name: 'ProPhoto-like', file: join(argyll, 'ProPhoto.icm') },
  { name: 'L-star', file: join(free, 'LStar-RGB.icc') },
  { name: 'P3', file: join(argyll, 'DisplayP3.icm') },
].filter((p) => existsSync(p.file));

const hasConvert = hasProgram('convert') && existsSync(srgb) && profiles.length > 0;
const hasArgyll = hasProgram('cctiff') && existsSync(srgb) && profiles.length > 0;

describe.skipIf(!hasConvert)(
  'colours against LittleCMS (skipped without ImageMagick and the profiles of argyll-ref)',
  () => {
    test.each(profiles)(
      'of a 16-bit $name TIFF are right within 2 of 255',
      async ({ name, file }) => {
        const path = join(folder, `${name}.tif`);
        const profile = readFileSync(file);
        const data = colours(16);
        await writePicture(path, {
          width: columns,
          height: rows,
          channels: 3,
          depth: 16,
          data,
          profile,
          format: 'tiff',
        });
        const reference = byImageMagick(path, srgb);
        expect(worst(await painted(path), reference)).toBeLessThanOrEqual(2);
        // Ignoring the profile must not pass for honouring it.
        expect(
          worst(
            Uint8Array.from(data, (v) => Math.round(v / 257)),
            reference,
          ),
        ).toBeGreaterThan(4);
      },
    );

    test.each(profiles.slice(0, 3))('of an 8-bit $name PNG too', async ({ name, file }) => {
      const path = join(folder, `${name}.png`);
      await writePicture(path, {
        width: columns,
        height: rows,
        channels: 3,
        depth: 8,
        data: colours(8),
        profile: readFileSync(file),
        format: 'png',
      });
      expect(worst(await painted(path), byImageMagick(path, srgb))).toBeLessThanOrEqual(2);
    });
  },
);

describe.skipIf(!hasArgyll)(
  'colours against Argyll (skipped without argyll and argyll-ref)',
  () => {
    test.each(profiles.slice(0, 3))(
      'of a 16-bit $name TIFF are right within 2 of 255',
      async (p) => {
        const path = join(folder, `${p.name}-a.tif`);
        await writePicture(path, {
          width: columns,
          height: rows,
          channels: 3,
          depth: 16,
          data: colours(16),
          profile: readFileSync(p.file),
          format: 'tiff',
        });
        expect(
          worst(await painted(path), await byArgyll(path, p.file, p.name)),
        ).toBeLessThanOrEqual(2);
      },
    );
  },
);

describe('colours without a profile, or in sRGB', () => {
  test('are the codes of the file, rounded', async () => {
    const path = join(folder, 'srgb.tif');
    const data = colours(16);
    await writePicture(path, {
      width: columns,
      height: rows,
      channels: 3,
      depth: 16,
      data,
      profile: 'srgb',
      format: 'tiff',
    });
    expect(
      worst(
        await painted(path),
        Uint8Array.from(data, (v) => Math.round(v / 257)),
      ),
    ).toBe(0);
  });
});
