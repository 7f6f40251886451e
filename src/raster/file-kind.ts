/**
 * What a file is by its first bytes, whatever its name says.
 *
 * References: the opening bytes that each format's own specification fixes (TIFF 6.0 section 2,
 * ITU-T T.81 annex B, W3C PNG 5.2, RFC 9649 section 2.4, ISO/IEC 14496-12 for the `ftyp` box).
 * Those of formats that are only named in a message are from memory.
 */
import { extname } from 'node:path';

export const captureFormats = ['tiff', 'jpeg', 'png', 'webp'] as const;
export type CaptureFormat = (typeof captureFormats)[number];

/** File name endings by format, the usual one first. */
const endings: Readonly<Record<CaptureFormat, readonly string[]>> = {
  tiff: ['.tif', '.tiff'],
  jpeg: ['.jpg', '.jpeg', '.jpe', '.jfif'],
  png: ['.png'],
  webp: ['.webp'],
};

/** Endings of camera raw files that are TIFF by their first bytes. */
const rawEndings = ['.dng', '.nef', '.nrw', '.arw', '.sr2', '.cr2', '.pef', '.3fr', '.iiq', '.erf'];

export type FileKind =
  { readonly format: CaptureFormat } | { readonly raw: true } | { readonly other: string };

/** The kind of a file from its first 32 bytes (or fewer, when it is shorter) and its name. */
export function fileKind(head: Buffer, name: string): FileKind {
  const text = head.toString('latin1');
  const ending = extname(name).toLowerCase();
  if (/^(II[*+]\0|MM\0[*+])/.test(text)) {
    return rawEndings.includes(ending) || text.startsWith('CR', 8)
      ? { raw: true }
      : { format: 'tiff' };
  }
  if (text.startsWith('\xff\xd8\xff')) return { format: 'jpeg' };
  if (text.startsWith('\x89PNG\r\n\x1a\n')) return { format: 'png' };
  if (text.startsWith('RIFF') && text.startsWith('WEBP', 8)) return { format: 'webp' };
  return { other: otherKind(text) };
}

function otherKind(text: string): string {
  if (/^GIF8[79]a/.test(text)) return 'a GIF picture';
  if (text.startsWith('%PDF')) return 'a PDF document';
  if (text.startsWith('8BPS')) return 'a layered Photoshop file';
  if (text.startsWith('BM')) return 'a BMP picture';
  if (text.startsWith('\0\0\0\x0cjP  ') || text.startsWith('\xff\x4f\xff\x51')) {
    return 'a JPEG 2000 picture';
  }
  if (text.startsWith('ftyp', 4)) {
    return /^ftyp(avif|avis)/.test(text.slice(4)) ? 'an AVIF picture' : 'an HEIF picture or a film';
  }
  if (/^\s*<(\?xml|svg|!DOCTYPE)/i.test(text)) return 'an XML, SVG or HTML text';
  if (text.startsWith('PK\x03\x04')) return 'a ZIP archive';
  return 'no kind of picture that is known here';
}

/** The ending that a file of this format should have, or null when its name has a right one. */
export function wantedEnding(format: CaptureFormat, name: string): string | null {
  const allowed = endings[format];
  return allowed.includes(extname(name).toLowerCase()) ? null : allowed[0];
}
