/**
 * Who may use a picture, whom to credit and what it shows, as the XMP packet that is written into
 * published files. Nothing else from a capture goes there: no place, no serial number, no owner.
 *
 * References
 * - ISO 16684-1:2012 (XMP), serialisation in clause 7; Dublin Core properties in clause 8.3;
 *   xmpRights in clause 8.4.
 * - IPTC Photo Metadata Standard 2021.1: Alt Text (Accessibility), Credit Line.
 */

/** Text by language tag; the first is the default. */
export type TextByLanguage = Readonly<Record<string, string>>;

export interface PictureRights {
  readonly title: TextByLanguage;
  /** Text alternative. */
  readonly alt: TextByLanguage;
  /** Copyright notice or name of the statement, in words. */
  readonly rights: TextByLanguage;
  readonly credit: string | null;
  readonly creator: readonly string[];
  /** Rights statement or licence, a URI. */
  readonly statement: string;
  /** Whether it says that there is no copyright. */
  readonly publicDomain: boolean;
}

/** Bytes of the largest packet that sharp writes into a JPEG; a larger one vanishes in silence. */
const packetLimit = 60_000;

function escaped(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);
}

function alternatives(name: string, texts: TextByLanguage): string {
  const all = Object.entries(texts);
  if (all.length === 0) return '';
  const items = [['x-default', all[0][1]], ...all]
    .map(([language, text]) => `<rdf:li xml:lang="${escaped(language)}">${escaped(text)}</rdf:li>`)
    .join('');
  return `<${name}><rdf:Alt>${items}</rdf:Alt></${name}>`;
}

/**
 * The packet for one picture.
 *
 * @throws RangeError if it would be too large to survive in a JPEG.
 */
export function rightsPacket(rights: PictureRights): string {
  const creators = rights.creator.map((c) => `<rdf:li>${escaped(c)}</rdf:li>`).join('');
  const body = [
    alternatives('dc:title', rights.title),
    alternatives('dc:rights', rights.rights),
    creators && `<dc:creator><rdf:Seq>${creators}</rdf:Seq></dc:creator>`,
    alternatives('Iptc4xmpCore:AltTextAccessibility', rights.alt),
  ].join('');
  const attributes = [
    'rdf:about=""',
    'xmlns:dc="http://purl.org/dc/elements/1.1/"',
    'xmlns:xmpRights="http://ns.adobe.com/xap/1.0/rights/"',
    'xmlns:photoshop="http://ns.adobe.com/photoshop/1.0/"',
    'xmlns:Iptc4xmpCore="http://iptc.org/std/Iptc4xmpCore/1.0/xmlns/"',
    `xmpRights:Marked="${rights.publicDomain ? 'False' : 'True'}"`,
    `xmpRights:WebStatement="${escaped(rights.statement)}"`,
    ...(rights.credit === null ? [] : [`photoshop:Credit="${escaped(rights.credit)}"`]),
  ].join(' ');
  const packet =
    '<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>' +
    '<x:xmpmeta xmlns:x="adobe:ns:meta/">' +
    '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">' +
    `<rdf:Description ${attributes}>${body}</rdf:Description>` +
    '</rdf:RDF></x:xmpmeta><?xpacket end="r"?>';
  const bytes = Buffer.byteLength(packet);
  if (bytes > packetLimit) {
    throw new RangeError(
      `Rights and text alternative take ${bytes} bytes, and only ${packetLimit} survive in a JPEG. Shorten the text alternative.`,
    );
  }
  return packet;
}
