/**
 * Words that travel with a picture: title, caption, credit, rights and address.
 *
 * References
 * - ISO 16684-1:2019 (XMP), serialization as RDF/XML; Dublin Core and xmpRights names as in 8.3
 *   and 8.4.
 */

export interface PictureWords {
  readonly title: string;
  readonly description: string;
  readonly credit: string;
  /** Address of the rights statement. */
  readonly rights: string;
  /** Address that opens the same view. */
  readonly source: string;
}

const escaped = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** The XMP packet. */
export function xmpPacket(words: PictureWords): string {
  const plain = (name: string, text: string) => `<${name}>${escaped(text)}</${name}>`;
  const alternative = (name: string, text: string) =>
    `<${name}><rdf:Alt><rdf:li xml:lang="x-default">${escaped(text)}</rdf:li></rdf:Alt></${name}>`;
  return `<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmpRights="http://ns.adobe.com/xap/1.0/rights/" xmlns:photoshop="http://ns.adobe.com/photoshop/1.0/">${[
    alternative('dc:title', words.title),
    alternative('dc:description', words.description),
    alternative('dc:rights', words.rights),
    plain('dc:source', words.source),
    plain('photoshop:Credit', words.credit),
    plain('xmpRights:WebStatement', words.rights),
  ].join('')}</rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end="r"?>`;
}
