/**
 * What is wrong with an institution's sign. An SVG on a page runs nothing, but opened by its
 * own address it is a page of the museum's host, so one that could run something is refused,
 * and so is one that asks another host for its parts.
 *
 * References
 * - W3C (2009). Namespaces in XML 1.0, third edition, sections 3 and 4 (prefixes, names).
 * - W3C (2018). Scalable Vector Graphics 2, sections 2.2 (secure static mode) and 16 (scripting).
 * - W3C (2025). PNG, third edition, section 5.2. IETF (2024). RFC 9649, WebP, section 2.
 */

/** Bytes; a drawn sign has some thousands. */
const largest = 500_000;

/**
 * What can run, move or fetch in an SVG; a still sign needs none of it. A prefix of a name may
 * be of any letters, not of those of English alone. Elements of HTML are themselves wherever
 * they stand: a frame of theirs runs what its attribute says.
 */
const refused: readonly (readonly [pattern: RegExp, what: string])[] = [
  [/<!(?:DOCTYPE|ENTITY)/i, 'a document type declaration'],
  [
    /<\?xml\b[^>]*\bencoding\s*=\s*["'](?!utf-8["'])/i,
    'another encoding than UTF-8 in its first line',
  ],
  [/[^\P{Cc}\t\r\n]/u, 'signs that are no text'],
  [/<\s*(?:[^\s<>/:]+:)?script\b/i, 'a script'],
  [/<\s*(?:[^\s<>/:]+:)?foreignObject\b/i, 'foreign content'],
  [/<\s*(?:[^\s<>/:]+:)?(?:animate\w*|set|handler|listener)\b/i, 'an animation or a handler'],
  [/\bxmlns(?::[^\s=]+)?\s*=\s*["'][^"']*(?:xhtml|mathml|&)/i, 'parts of another kind of page'],
  [/[\s"'/]on\w+\s*=/i, 'an event attribute'],
  [/<\?xml-stylesheet/i, 'a style sheet of its own address'],
  [/@import/i, 'an imported style sheet'],
  [/\bhref\s*=\s*["']?(?!["']?(?:#|data:image\/(?:png|jpeg|webp);))/i, 'a link out of itself'],
  [/url\(\s*["']?(?!#)/i, 'an address in its style'],
];

/** A clause that completes "the logo ...", or null where nothing is wrong. */
export function logoFault(name: string, bytes: Uint8Array): string | null {
  if (bytes.length > largest) return `has ${bytes.length} bytes; a logo may have ${largest}`;
  const head = Buffer.from(bytes.subarray(0, 12)).toString('latin1');
  if (name.endsWith('.png')) {
    return head.startsWith('\x89PNG\r\n\x1a\n') ? null : 'does not begin as a PNG file does';
  }
  if (name.endsWith('.webp')) {
    return /^RIFF[\s\S]{4}WEBP/.test(head) ? null : 'does not begin as a WebP file does';
  }
  return svgFault(bytes);
}

function svgFault(bytes: Uint8Array): string | null {
  let text;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return 'is not text in UTF-8, as an SVG file is';
  }
  if (!/<svg[\s>]/.test(text)) return 'has no <svg> element';
  const found = refused.find(([pattern]) => pattern.test(text));
  return found ? `holds ${found[1]}` : null;
}
