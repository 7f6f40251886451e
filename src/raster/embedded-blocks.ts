/**
 * Profile and EXIF put into a finished JPEG or PNG. sharp can convert to a profile but not
 * declare that pixels are in one already, and it rewrites EXIF text as ASCII.
 *
 * References
 * - ICC.1:2010, annex B.4 (JPEG: APP2 in parts) and W3C PNG 11.3.2.3 (iCCP), 11.3.4.5 (eXIf).
 * - CIPA DC-008-2019 (Exif 2.32), clause 4.7.2: APP1.
 */
import { crc32, deflateSync } from 'node:zlib';

/** Bytes of a profile in one APP2 segment: 65535 less the length field and the opening. */
const partBytes = 65_519;

function segment(marker: number, ...parts: Buffer[]): Buffer {
  const body = Buffer.concat(parts);
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}

/** A JPEG with these blocks right after its start marker. */
export function embedInJpeg(jpeg: Buffer, profile: Buffer, exif: Buffer | null): Buffer {
  const parts = Math.ceil(profile.length / partBytes);
  const profiles = Array.from({ length: parts }, (_, i) =>
    segment(
      0xe2,
      Buffer.from('ICC_PROFILE\0', 'latin1'),
      Buffer.from([i + 1, parts]),
      profile.subarray(i * partBytes, (i + 1) * partBytes),
    ),
  );
  const words = exif ? [segment(0xe1, Buffer.from('Exif\0\0', 'latin1'), exif)] : [];
  return Buffer.concat([jpeg.subarray(0, 2), ...words, ...profiles, jpeg.subarray(2)]);
}

function chunk(type: string, body: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), body]);
  const ends = Buffer.alloc(8);
  ends.writeUInt32BE(body.length, 0);
  ends.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([ends.subarray(0, 4), named, ends.subarray(4)]);
}

/** Length of the PNG signature and the IHDR chunk, which must come first. */
const pngHeadBytes = 8 + 25;

/** A PNG with these blocks right after its header chunk. */
export function embedInPng(png: Buffer, profile: Buffer, exif: Buffer | null): Buffer {
  const name = Buffer.from('profile\0\0', 'latin1');
  return Buffer.concat([
    png.subarray(0, pngHeadBytes),
    chunk('iCCP', Buffer.concat([name, deflateSync(profile)])),
    ...(exif ? [chunk('eXIf', exif)] : []),
    png.subarray(pngHeadBytes),
  ]);
}
