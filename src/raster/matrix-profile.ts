/**
 * Colour profiles of the matrix kind: three primaries and one tone curve, or one curve for grey.
 * They are a table and nine numbers, so the conversion needs no pass of its own. Every other
 * kind of profile (look-up tables, curves that differ between channels) is left to LittleCMS,
 * through sharp.
 *
 * References
 * - ICC.1:2010 (profile version 4.3), clauses 7.2 (header), 7.3 (tag table), 9.2 (tags),
 *   10.6 (curveType), 10.18 (parametricCurveType), 10.31 (XYZType).
 */
import { multiply3, type Matrix3 } from '../imaging/colour/matrix3.ts';
import { connectionToSrgb } from '../imaging/colour/rgb-primaries.ts';

export interface MatrixProfile {
  /** Encoded to linear, both 0 to 1, the same for all channels. */
  readonly curve: (encoded: number) => number;
  /** Linear source primaries to linear sRGB; null for grey. */
  readonly matrix: Matrix3 | null;
}

const tagTable = 128;
const tagLimit = 256;

/** The tags of a profile by name; null when the profile is damaged. */
function tagsOf(profile: Buffer): Map<string, Buffer> | null {
  if (profile.length < tagTable + 4 || profile.toString('latin1', 36, 40) !== 'acsp') return null;
  const count = profile.readUInt32BE(tagTable);
  if (count > tagLimit || tagTable + 4 + count * 12 > profile.length) return null;
  const tags = new Map<string, Buffer>();
  for (let i = 0; i < count; i += 1) {
    const at = tagTable + 4 + i * 12;
    const offset = profile.readUInt32BE(at + 4);
    const size = profile.readUInt32BE(at + 8);
    if (offset + size > profile.length) return null;
    tags.set(profile.toString('latin1', at, at + 4), profile.subarray(offset, offset + size));
  }
  return tags;
}

const fixed = (from: Buffer, at: number): number => from.readInt32BE(at) / 65536;

/** A profile of the matrix kind or a grey one with a curve; null for any other, or a damaged one. */
export function readMatrixProfile(profile: Buffer): MatrixProfile | null {
  const tags = tagsOf(profile);
  if (!tags || tags.has('A2B0') || tags.has('A2B1') || tags.has('D2B0')) return null;
  // The matrix kind is defined on XYZ alone (clause 8.3.3).
  if (profile.toString('latin1', 20, 24) !== 'XYZ ') return null;
  const space = profile.toString('latin1', 16, 20);
  if (space === 'GRAY') {
    const curve = readCurve(tags.get('kTRC'));
    return curve && { curve, matrix: null };
  }
  if (space !== 'RGB ') return null;
  const curves = [tags.get('rTRC'), tags.get('gTRC'), tags.get('bTRC')];
  if (curves.some((c) => c === undefined || !c.equals(curves[0]!))) return null;
  const curve = readCurve(curves[0]);
  const primaries = [tags.get('rXYZ'), tags.get('gXYZ'), tags.get('bXYZ')];
  if (!curve || primaries.some((p) => p === undefined || p.length < 20)) return null;
  const [r, g, b] = primaries.map((p) => [fixed(p!, 8), fixed(p!, 12), fixed(p!, 16)]);
  const toConnection: Matrix3 = [r[0], g[0], b[0], r[1], g[1], b[1], r[2], g[2], b[2]];
  return { curve, matrix: multiply3(connectionToSrgb, toConnection) };
}

function readCurve(tag: Buffer | undefined): ((encoded: number) => number) | null {
  if (!tag || tag.length < 12) return null;
  const type = tag.toString('latin1', 0, 4);
  if (type === 'curv') return sampledCurve(tag);
  if (type === 'para') return parametricCurve(tag);
  return null;
}

/** Clause 10.6: no entry is the identity, one is an exponent, more are samples to join by lines. */
function sampledCurve(tag: Buffer): ((encoded: number) => number) | null {
  const count = tag.readUInt32BE(8);
  if (count > 65536 || tag.length < 12 + 2 * count) return null;
  if (count === 0) return (v) => v;
  if (count === 1) {
    const exponent = tag.readUInt16BE(12) / 256;
    return (v) => v ** exponent;
  }
  const samples = Array.from({ length: count }, (_, i) => tag.readUInt16BE(12 + 2 * i) / 65535);
  return (v) => {
    const x = v * (count - 1);
    const i = Math.min(count - 2, Math.floor(x));
    return samples[i] + (x - i) * (samples[i + 1] - samples[i]);
  };
}

/** Clause 10.18, table 68: function types 0 to 4, parameters g a b c d e f. */
function parametricCurve(tag: Buffer): ((encoded: number) => number) | null {
  const kind = tag.readUInt16BE(8);
  const count = [1, 3, 4, 5, 7][kind] ?? 0;
  if (count === 0 || tag.length < 12 + 4 * count) return null;
  const p = Array.from({ length: 7 }, (_, i) => (i < count ? fixed(tag, 12 + 4 * i) : 0));
  const [g, a, b, c, d, e, f] = p;
  switch (kind) {
    case 0:
      return (v) => v ** g;
    case 1:
      return (v) => (v >= -b / a ? (a * v + b) ** g : 0);
    case 2:
      return (v) => (v >= -b / a ? (a * v + b) ** g + c : c);
    case 3:
      return (v) => (v >= d ? (a * v + b) ** g : c * v);
    default:
      return (v) => (v >= d ? (a * v + b) ** g + e : c * v + f);
  }
}

/**
 * Whether a profile is whole and speaks of pictures with this number of channels. Files carry
 * profiles of printers and of other pictures; those say nothing about their numbers.
 */
export function profileFits(profile: Buffer, channels: 1 | 3): boolean {
  return (
    tagsOf(profile) !== null &&
    profile.toString('latin1', 16, 20) === (channels === 3 ? 'RGB ' : 'GRAY')
  );
}

/** The profile's own name for itself, for people; null where it has none that can be read. */
export function profileName(profile: Buffer): string | null {
  const tag = tagsOf(profile)?.get('desc');
  if (!tag || tag.length < 12) return null;
  const type = tag.toString('latin1', 0, 4);
  // Names in old profiles end in zero bytes.
  const clean = (text: string): string | null => text.replace(/\p{Cc}/gu, '').trim() || null;
  if (type === 'desc') {
    // ICC.1:2001-04, clause 6.5.17: a length, then that many ASCII bytes.
    const length = tag.readUInt32BE(8);
    return 12 + length <= tag.length ? clean(tag.toString('latin1', 12, 12 + length)) : null;
  }
  if (type !== 'mluc' || tag.length < 28) return null;
  const [length, offset] = [tag.readUInt32BE(20), tag.readUInt32BE(24)];
  if (length % 2 !== 0 || offset + length > tag.length) return null;
  return clean(
    Buffer.from(tag.subarray(offset, offset + length))
      .swap16()
      .toString('utf16le'),
  );
}
