/**
 * A grey profile with the sRGB curve, made here because none comes with libvips.
 *
 * References
 * - ICC.1:2010 (profile version 4.3), clauses 7.2 (header), 7.3 (tag table), 8.4.2 (what a grey
 *   profile needs), 10.13 (multiLocalizedUnicodeType), 10.18 (parametricCurveType).
 */

/** The profile, the same bytes each time. */
export function greySrgbProfile(): Buffer {
  const text = (words: string): Buffer => {
    const utf16 = Buffer.from(words, 'utf16le').swap16();
    const head = Buffer.alloc(28);
    head.write('mluc', 0, 'latin1');
    head.writeUInt32BE(1, 8);
    head.writeUInt32BE(12, 12);
    head.write('enUS', 16, 'latin1');
    head.writeUInt32BE(utf16.length, 20);
    head.writeUInt32BE(28, 24);
    return Buffer.concat([head, utf16]);
  };
  const numbers = (type: string, ...values: number[]): Buffer => {
    const bytes = Buffer.alloc(8 + values.length * 4);
    bytes.write(type, 0, 'latin1');
    for (const [i, v] of values.entries()) bytes.writeInt32BE(Math.round(v * 65536), 8 + i * 4);
    return bytes;
  };
  // The curve's parameters g a b c d, after the number of its kind (3) in the upper half-word.
  const curve = numbers('para', 3, 2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045);
  const tags = new Map<string, Buffer>([
    ['desc', text('Grey with the sRGB curve')],
    ['cprt', text('No copyright')],
    ['wtpt', numbers('XYZ ', 0.9642, 1, 0.8249)],
    ['kTRC', curve],
  ]);
  return packProfile(tags);
}

function packProfile(tags: ReadonlyMap<string, Buffer>): Buffer {
  const head = Buffer.alloc(128);
  head.writeUInt32BE(0x04300000, 8);
  head.write('mntrGRAYXYZ ', 12, 'latin1');
  for (const [i, v] of [2026, 1, 1, 0, 0, 0].entries()) head.writeUInt16BE(v, 24 + i * 2);
  head.write('acsp', 36, 'latin1');
  for (const [i, v] of [0.9642, 1, 0.8249].entries()) {
    head.writeInt32BE(Math.round(v * 65536), 68 + i * 4);
  }
  const table = Buffer.alloc(4 + tags.size * 12);
  table.writeUInt32BE(tags.size, 0);
  const values: Buffer[] = [];
  let end = head.length + table.length;
  for (const [i, [name, bytes]] of [...tags].entries()) {
    table.write(name, 4 + i * 12, 'latin1');
    table.writeUInt32BE(end, 8 + i * 12);
    table.writeUInt32BE(bytes.length, 12 + i * 12);
    const padding = Buffer.alloc((4 - (bytes.length % 4)) % 4);
    values.push(bytes, padding);
    end += bytes.length + padding.length;
  }
  const profile = Buffer.concat([head, table, ...values]);
  profile.writeUInt32BE(profile.length, 0);
  return profile;
}
