import { execFileSync } from 'node:child_process';
import { copyFileSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { rightsPacket, type PictureRights } from '../../src/raster/rights-packet.ts';
import { tilePicture } from '../../src/raster/tile-picture.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import { hasProgram, run } from './other-programs.ts';
import { scratchFolder } from './scratch-folder.ts';
import { platePicture } from './test-pictures.ts';

const folder = scratchFolder();

const rights: PictureRights = {
  title: { en: 'Portrait of a clockmaker', fr: 'Portrait d’un horloger' },
  alt: { en: 'A man with a watch; A & B <"é">', fr: 'Un homme, une montre' },
  rights: { en: 'No Copyright - United States' },
  credit: 'Museum of Invented Plates',
  creator: ['Ada Example', 'B. Sample'],
  statement: 'http://rightsstatements.org/vocab/NoC-US/1.0/',
  publicDomain: true,
};

type Tags = Record<string, unknown>;
/** Tags of a file, or of each JPEG below a folder by its relative name. */
function tagsBelow(path: string): Map<string, Tags> {
  const output = run('exiftool', ['-j', '-a', '-G1', '-struct', '-r', path]).toString();
  return new Map(
    (JSON.parse(output) as Tags[]).map((t) => [String(t['SourceFile']).slice(path.length + 1), t]),
  );
}

describe.skipIf(!hasProgram('exiftool'))(
  'published files, read by exiftool (skipped without it)',
  async () => {
    const capture = join(folder, 'capture.jpg');
    const [width, height] = [1400, 1100];
    await writePicture(join(folder, 'bare.jpg'), {
      width,
      height,
      channels: 3,
      depth: 8,
      data: Uint8Array.from(platePicture(width, height), (v) => v >> 8),
      profile: 'srgb',
      exif: { make: 'Invented Works', model: 'Plate 1', taken: '2026-03-14T09:30:00' },
      format: 'jpeg',
    });
    copyFileSync(join(folder, 'bare.jpg'), capture);
    if (hasProgram('exiftool')) {
      execFileSync('exiftool', [
        '-q',
        '-overwrite_original',
        '-GPSLatitude=48.8566',
        '-GPSLatitudeRef=N',
        '-EXIF:SerialNumber=SN-4711',
        '-LensSerialNumber=LS-0815',
        '-OwnerName=Jane Doe',
        '-Artist=Jane Doe',
        '-UserComment=ask Jane',
        '-XMP-dc:Creator=Jane Doe',
        '-HostComputer=jane-laptop',
        capture,
      ]);
    }
    const out = join(folder, 'tiles');
    const job = { path: capture, folder: out, scratch: folder, id: 'http://host/plate' };
    await tilePicture({ ...job, metadata: rights });
    const files = readdirSync(out, { recursive: true, encoding: 'utf8' }).filter((f) =>
      f.endsWith('.jpg'),
    );
    const tags = hasProgram('exiftool') ? tagsBelow(out) : new Map<string, Tags>();

    test('the capture does hold what must not leak', () => {
      expect(readFileSync(capture).toString('latin1')).toMatch(/SN-4711/);
      expect(JSON.stringify([...tagsBelow(capture).values()])).toMatch(/GPS.*Jane Doe/s);
    });

    test('hold no place, serial number, owner, camera or profile', () => {
      expect(files.length).toBeGreaterThan(8);
      for (const file of files) {
        const text = readFileSync(join(out, file)).toString('latin1');
        expect(text).not.toMatch(
          /SN-4711|LS-0815|Jane|jane-laptop|Invented Works|ICC_PROFILE|Exif/,
        );
        const groups = Object.keys(tags.get(file)!).map((k) => k.split(':')[0]);
        expect(groups.filter((g) => /GPS|ExifIFD|IFD0|MakerNotes|ICC|IPTC/.test(g))).toEqual([]);
      }
    });

    test('carry rights, credit, makers, title and text alternative where they are whole', () => {
      const whole = files.filter((f) => f.startsWith('full/'));
      expect(whole.length).toBeGreaterThanOrEqual(4);
      for (const file of whole) {
        expect(tags.get(file)).toMatchObject({
          'XMP-dc:Title': rights.title['en'],
          'XMP-dc:Title-fr': rights.title['fr'],
          'XMP-dc:Rights': rights.rights['en'],
          'XMP-dc:Creator': rights.creator,
          'XMP-iptcCore:AltTextAccessibility': rights.alt['en'],
          'XMP-iptcCore:AltTextAccessibility-fr': rights.alt['fr'],
          'XMP-photoshop:Credit': rights.credit,
          'XMP-xmpRights:WebStatement': rights.statement,
          'XMP-xmpRights:Marked': false,
        });
      }
    });

    test('carry none of it in tiles, which would only grow', () => {
      const tiles = files.filter((f) => !f.startsWith('full/'));
      expect(tiles.length).toBeGreaterThan(4);
      for (const file of tiles) {
        expect(readFileSync(join(out, file)).includes('xmpmeta')).toBe(false);
      }
    });
  },
);

describe('the packet', () => {
  test('is refused when a JPEG would lose it in silence', () => {
    const long = { ...rights, alt: { en: 'x'.repeat(60_000) } };
    expect(() => rightsPacket(long)).toThrow('only 60000 survive in a JPEG. Shorten the text');
  });

  test('leaves out what XML cannot hold', () => {
    expect(rightsPacket({ ...rights, credit: 'a\u0000b\u0007c' })).toContain('Credit="abc"');
  });
});
