/** Small XML documents from nested lists: name, attributes, then text or parts. */

export type XmlPart = readonly [
  name: string,
  attributes: Readonly<Record<string, string>>,
  ...content: (string | XmlPart)[],
];

/** What XML 1.0 does not allow is left out; the five signs are written as references. */
export function escapeXml(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

/** A whole document, one part a line. */
export function xml(root: XmlPart): string {
  return `<?xml version="1.0" encoding="utf-8"?>\n${written(root, '')}\n`;
}

function written([name, attributes, ...content]: XmlPart, indent: string): string {
  const pairs = Object.entries(attributes).map(([key, value]) => ` ${key}="${escapeXml(value)}"`);
  const open = `${indent}<${name}${pairs.join('')}`;
  if (content.length === 0) return `${open}/>`;
  if (content.every((part) => typeof part === 'string')) {
    return `${open}>${content.map(escapeXml).join('')}</${name}>`;
  }
  const inner = content.map((part) =>
    typeof part === 'string' ? `${indent} ${escapeXml(part)}` : written(part, `${indent} `),
  );
  return `${open}>\n${inner.join('\n')}\n${indent}</${name}>`;
}
