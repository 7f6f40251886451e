/**
 * A page that can be opened from a folder. Addresses on the host become paths from the page's
 * own file, and a folder's address becomes that of its `index.html`, which only a server would
 * know to send. Every other byte of the page stays, so that the digests in its content security
 * policy still hold.
 *
 * References
 * - WHATWG. HTML, sections 4.2 to 4.8 (attributes that hold addresses), 4.8.4.2.1 (srcset).
 * - IETF (2005). RFC 3986, section 5, reference resolution.
 */
import { parse, type DefaultTreeAdapterTypes as Tree } from 'parse5';

export interface PortablePage {
  /** Path of the page's file below the exhibit, `plates/harbour/index.html`. */
  readonly file: string;
  /** Path of the exhibit on its host, with both slashes. */
  readonly base: string;
  /** A paragraph put first into the body of a page opened from a folder. */
  readonly notice: (language: string) => string;
}

/** A style sheet that only a server gives: it hides the notice. */
export const servedStyle = 'served.css';

interface Change {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** The page's text with addresses below `base` made relative. */
export function relativePage(html: string, page: PortablePage): string {
  const changes: Change[] = [];
  let language = '';
  const visit = (node: Tree.Node) => {
    if ('attrs' in node) {
      if (node.nodeName === 'html') language = attribute(node, 'lang');
      changes.push(...changesOf(node, page));
      const opened = node.sourceCodeLocation;
      if (node.nodeName === 'head' && opened?.endTag) {
        const text = `<link rel="stylesheet" href="${page.base}${servedStyle}">`;
        const at = opened.endTag.startOffset;
        changes.push({ from: at, to: at, text });
      }
      if (node.nodeName === 'body' && opened?.startTag) {
        const at = opened.startTag.endOffset;
        changes.push({ from: at, to: at, text: page.notice(language) });
      }
    }
    if ('childNodes' in node) node.childNodes.forEach(visit);
    if ('content' in node) visit(node.content);
  };
  visit(parse(html, { sourceCodeLocationInfo: true }));
  let done = '';
  let at = 0;
  for (const { from, to, text } of changes.sort((a, b) => a.from - b.from)) {
    done += html.slice(at, from) + text;
    at = to;
  }
  return done + html.slice(at);
}

/** Attributes that a browser follows by itself or at a click. */
const single = new Set(['href', 'src', 'poster', 'data', 'action']);

function attribute(element: Tree.Element, name: string): string {
  return element.attrs.find((attr) => attr.name === name)?.value ?? '';
}

function changesOf(element: Tree.Element, page: PortablePage): Change[] {
  // Names of the page itself in the world, not places to go to.
  if (element.nodeName === 'meta') return [];
  return element.attrs.flatMap((attr) => {
    const place = element.sourceCodeLocation?.attrs?.[attr.name];
    if (!place) return [];
    const value = single.has(attr.name)
      ? relativeAddress(attr.value, page)
      : attr.name === 'srcset'
        ? relativeSet(attr.value, page)
        : attr.value;
    if (value === attr.value) return [];
    const text = `${attr.name}="${value.replaceAll('&', '&amp;').replaceAll('"', '&quot;')}"`;
    return [{ from: place.startOffset, to: place.endOffset, text }];
  });
}

/** Candidates are separated by a comma and white space; our addresses may hold commas (IIIF). */
function relativeSet(value: string, page: PortablePage): string {
  return value
    .split(/,\s+/)
    .map((candidate) => {
      const [address, ...rest] = candidate.trim().split(/\s+/);
      return [relativeAddress(address, page), ...rest].join(' ');
    })
    .join(', ');
}

function relativeAddress(address: string, { file, base }: PortablePage): string {
  if (!address.startsWith(base)) return address;
  const [, path, rest] = /^([^?#]*)(.*)$/s.exec(address.slice(base.length)) ?? ['', '', ''];
  const target = path === '' || path.endsWith('/') ? `${path}index.html` : path;
  return `${relativePath(file, target)}${rest}`;
}

/** The way from one file to another, both by their paths below one folder. */
function relativePath(from: string, to: string): string {
  const [folders, parts] = [from.split('/').slice(0, -1), to.split('/')];
  let shared = 0;
  while (shared < parts.length - 1 && folders[shared] === parts[shared]) shared++;
  return [...folders.slice(shared).map(() => '..'), ...parts.slice(shared)].join('/');
}
