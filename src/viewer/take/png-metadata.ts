/**
 * Words and size written into a PNG: an XMP packet, so that title, credit, rights and address
 * travel with the file, and pixels per metre, so that it prints at the plate's own size.
 *
 * References
 * - W3C PNG (Third Edition, 2025), 5.3 (chunk layout), annex D (CRC), 11.3.3.4 (iTXt),
 *   11.3.4.3 (pHYs).
 * - ISO 16684-2: keyword `XML:com.adobe.xmp` for an iTXt chunk.
 */
import { xmpPacket, type PictureWords } from './xmp-packet.ts';

const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

/** CRC-32 as PNG uses it. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = table[(crc ^ byte) & 255] ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

function chunk(type: string, data: Uint8Array): Uint8Array {
  const made = new Uint8Array(12 + data.length);
  const view = new DataView(made.buffer);
  view.setUint32(0, data.length);
  made.set(new TextEncoder().encode(type), 4);
  made.set(data, 8);
  view.setUint32(8 + data.length, crc32(made.subarray(4, 8 + data.length)));
  return made;
}

/**
 * @param pixelsPerMetre Of the plate; null where its scale is not known.
 * @throws RangeError if the bytes are not a PNG.
 */
export function withWords(
  png: Uint8Array,
  words: PictureWords,
  pixelsPerMetre: number | null,
): Uint8Array<ArrayBuffer> {
  const signature = [137, 80, 78, 71, 13, 10, 26, 10];
  if (!signature.every((byte, i) => png[i] === byte)) throw new RangeError('This is not a PNG.');
  const headEnd = 8 + 25; // The signature and IHDR, which is always 25 bytes.
  const text = new TextEncoder();
  const keyword = text.encode('XML:com.adobe.xmp\0');
  const packet = text.encode(xmpPacket(words));
  const international = new Uint8Array(keyword.length + 4 + packet.length);
  international.set(keyword);
  international.set(packet, keyword.length + 4); // Not compressed, no language, no translation.
  const own = [chunk('iTXt', international)];
  if (pixelsPerMetre !== null) {
    const data = new Uint8Array(9);
    const view = new DataView(data.buffer);
    view.setUint32(0, Math.round(pixelsPerMetre));
    view.setUint32(4, Math.round(pixelsPerMetre));
    data[8] = 1;
    own.unshift(chunk('pHYs', data));
  }
  const parts = [png.subarray(0, headEnd), ...own, png.subarray(headEnd)];
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
