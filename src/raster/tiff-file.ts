/**
 * A TIFF file in strips, with profile and EXIF. sharp writes TIFF too, but drops EXIF there.
 *
 * References
 * - TIFF Revision 6.0, sections 3, 6 (RGB) and 14 (predictor); Technical Note 2 (Deflate, 8).
 * - ICC.1:2010, annex B.4: the profile as tag 34675.
 */
import { open } from 'node:fs/promises';
import { deflateSync } from 'node:zlib';
import { exifEntries, longs, shorts } from './exif-block.ts';
import { packTiff } from './tiff-pack.ts';
import type { TiffEntry } from './tiff-directory.ts';
import type { PictureData } from './write-picture.ts';

const stripBytes = 1 << 20;

/** Write `picture` to `path`. @param profile The colour profile, as bytes. */
export async function writeTiff(
  path: string,
  picture: PictureData,
  profile: Buffer,
): Promise<void> {
  const { height, depth, channels } = picture;
  const line = (picture.width * channels * depth) / 8;
  const rowsPerStrip = Math.max(1, Math.min(height, Math.floor(stripBytes / line)));
  const strips = Math.ceil(height / rowsPerStrip);
  const offsets = new Array<number>(strips).fill(0);
  const counts = new Array<number>(strips).fill(0);
  // Offsets do not change the length of the head, so it can be measured before they are known.
  const headLength = pack(picture, profile, rowsPerStrip, offsets, counts).length;
  const file = await open(path, 'w');
  try {
    let end = headLength + (headLength % 2);
    for (let i = 0; i < strips; i += 1) {
      const bytes = strip(picture, i * rowsPerStrip, Math.min(height, (i + 1) * rowsPerStrip));
      await file.write(bytes, 0, bytes.length, end);
      offsets[i] = end;
      counts[i] = bytes.length;
      end += bytes.length + (bytes.length % 2);
    }
    const head = pack(picture, profile, rowsPerStrip, offsets, counts);
    await file.write(head, 0, head.length, 0);
  } finally {
    await file.close();
  }
}

function pack(
  picture: PictureData,
  profile: Buffer,
  rowsPerStrip: number,
  offsets: readonly number[],
  counts: readonly number[],
): Buffer {
  const { width, height, channels, depth } = picture;
  const deflated = picture.compression === 'deflate';
  const { first, exif } = exifEntries(picture.exif ?? {});
  const entries = new Map<number, TiffEntry>([
    ...first,
    [256, longs([width])],
    [257, longs([height])],
    [258, shorts(...new Array<number>(channels).fill(depth))],
    [259, shorts(deflated ? 8 : 1)],
    [262, shorts(channels === 3 ? 2 : 1)],
    [273, longs(offsets)],
    [274, shorts(1)],
    [277, shorts(channels)],
    [278, longs([rowsPerStrip])],
    [279, longs(counts)],
    [284, shorts(1)],
    [34675, { type: 7, count: profile.length, bytes: profile }],
  ]);
  if (deflated) entries.set(317, shorts(2));
  return packTiff(entries, picture.exif ? exif : null, true);
}

/** The bytes of some rows, little-endian, packed as the picture asks. */
function strip(picture: PictureData, from: number, to: number): Buffer {
  const { channels, data } = picture;
  const samples = picture.width * channels;
  const rows = data.slice(from * samples, to * samples);
  if (picture.compression === 'deflate') {
    // Predictor 2: each sample as the difference from its left neighbour, modulo the code range.
    for (let end = rows.length; end > 0; end -= samples) {
      for (let i = end - 1; i >= end - samples + channels; i -= 1) rows[i] -= rows[i - channels];
    }
  }
  const bytes = Buffer.from(rows.buffer, rows.byteOffset, rows.byteLength);
  return picture.compression === 'deflate' ? deflateSync(bytes) : bytes;
}
