/** Files that were damaged, or made to do harm: each is read or refused with a sentence. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { captureFaultCodes } from '../../src/raster/capture-fault.ts';
import { readCapture } from '../../src/raster/read-capture.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import { scratchFolder } from './scratch-folder.ts';
import { platePicture, seeded } from './test-pictures.ts';

const folder = scratchFolder();
const scratch = join(folder, 'scratch');
const [width, height] = [64, 48];
const exif = {
  make: '<script>alert(1)</script>',
  model: '"><img src=x onerror=alert(1)>',
  lens: "'; DROP TABLE plates; --",
  focalLength: 100,
  aperture: 8,
  iso: 100,
  seconds: 0.01,
  taken: '2026-03-14T09:30:00',
};
const data = platePicture(width, height);
const picture = { width, height, channels: 3, depth: 16, data, profile: 'srgb', exif } as const;
await writePicture(join(folder, 'a.tif'), { ...picture, format: 'tiff' });
await writePicture(join(folder, 'b.tif'), { ...picture, format: 'tiff', compression: 'deflate' });
await writePicture(join(folder, 'c.png'), { ...picture, format: 'png' });
const eight = sharp(readFileSync(join(folder, 'c.png'))).toColourspace('srgb');
await eight
  .clone()
  .jpeg()
  .withExif({ IFD0: { Artist: '<b>x</b>' } })
  .toFile(join(folder, 'd.jpg'));
await eight.clone().webp().toFile(join(folder, 'e.webp'));

/** A few bytes replaced, removed, doubled, or numbers of the header turned to extremes. */
function mutate(bytes: Buffer, random: () => number): Buffer {
  let changed = Buffer.from(bytes);
  const times = 1 + Math.floor(random() * 6);
  for (let k = 0; k < times; k += 1) {
    // Half of the changes fall into the first 200 bytes, where sizes and offsets stand.
    const span = random() < 0.5 ? Math.min(200, changed.length) : changed.length;
    const at = Math.floor(random() * span);
    const kind = random();
    if (kind < 0.4) changed[at] = Math.floor(random() * 256);
    else if (kind < 0.6)
      changed.fill(random() < 0.5 ? 0xff : 0, at, Math.min(at + 4, changed.length));
    else if (kind < 0.75) changed = changed.subarray(0, at);
    else if (kind < 0.9)
      changed = Buffer.concat([changed.subarray(0, at), changed.subarray(at + 3)]);
    else changed = Buffer.concat([changed.subarray(0, at), changed.subarray(at >> 1)]);
    if (changed.length < 4) break;
  }
  return changed;
}

describe('a capture with damaged bytes', () => {
  test.each(['a.tif', 'b.tif', 'c.png', 'd.jpg', 'e.webp'])(
    '%s, damaged in 300 ways, is read or refused with a sentence, and leaves nothing behind',
    async (name) => {
      const bytes = readFileSync(join(folder, name));
      const random = seeded(name.charCodeAt(0));
      const verdicts = new Set<string>();
      for (let k = 0; k < 300; k += 1) {
        const path = join(folder, `hurt-${k}-${name}`);
        writeFileSync(path, mutate(bytes, random));
        const found = await readCapture(path, { scratch, pixelLimit: 50e6 });
        if (found.ok) {
          verdicts.add('read');
          expect(found.value.width * found.value.height).toBeLessThanOrEqual(50e6);
          expect(found.value.meanLuminance).toBeGreaterThanOrEqual(0);
          expect(found.value.meanLuminance).toBeLessThanOrEqual(1);
        } else {
          verdicts.add('refused');
          expect(captureFaultCodes).toContain(found.code);
          expect(found.message).toMatch(/^.{10,400}\.$/s);
          expect(found.message).not.toContain(folder);
          expect(found.remedy).toMatch(/\.$/);
        }
      }
      expect([...verdicts].sort()).toContain('refused');
      expect(readdirSync(folder).includes('scratch') ? readdirSync(scratch) : []).toEqual([]);
    },
    60_000,
  );
});

describe('a capture that is made to do harm', () => {
  test('markup in EXIF stays text', async () => {
    const found = await readCapture(join(folder, 'a.tif'), { scratch });
    if (!found.ok) throw new Error(found.message);
    expect(found.value.exif.make).toBe(exif.make);
    expect(found.value.exif.model).toBe(exif.model);
  });

  test.each([
    ['with a script', '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'],
    [
      'that would read a file of the machine',
      '<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]><svg xmlns="http://www.w3.org/2000/svg"><text>&x;</text></svg>',
    ],
  ])('an SVG %s is not a photograph, whatever its name', async (_, text) => {
    for (const name of ['drawing.svg', 'drawing.png', 'drawing.tif']) {
      writeFileSync(join(folder, name), text);
      const found = await readCapture(join(folder, name), { scratch });
      expect(found).toMatchObject({ ok: false, code: 'file-type' });
    }
  });
});
