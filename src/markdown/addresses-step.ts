/**
 * Addresses as the host will have them: `/lessons/x/` becomes `<base>lessons/x/`, pictures from
 * elsewhere become their description (no page makes a request to anybody else), and figures of
 * spots get their picture, a part of a view that is published anyway.
 */
import type { Element, ElementContent, Root } from 'hast';
import { visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import type { MarkdownLookup } from './lookup.ts';
import { textFile } from './text-file.ts';

/** Whether an address leads to another host or is no address of a page at all. */
export function isOutside(address: string): boolean {
  return /^([a-z][a-z0-9+.-]*:|[/\\]{2})/i.test(address.trim());
}

/**
 * An address that begins with one slash, under the base path, with the slash at its end.
 *
 * @param pages Where the pages of the text's language are; files are the same in all of them.
 */
export function underBase(address: string, base: string, pages = base): string {
  const [, path, rest] = /^\/([^?#]*)(.*)$/.exec(address) ?? [];
  if (path === undefined) return address;
  const isFile = /\.[a-z0-9]+$/i.test(path);
  const isPage = path !== '' && !path.endsWith('/') && !isFile;
  return `${isFile ? base : pages}${path}${isPage ? '/' : ''}${rest}`;
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : '';
}

/** A part of a picture without cutting it: the file is the view's own. */
function crop(
  node: Element,
  base: string,
  { lookup, language }: { readonly lookup: MarkdownLookup; readonly language: string | null },
): ElementContent | null {
  const plate = text(node.properties['dataPlate']);
  const region = text(node.properties['dataRegion']);
  const known = lookup.plate(plate, language);
  // A plate that is covered until asked for is not shown in a text either.
  if (!known || known.covered || region === '') return null;
  const spot = known.spots.find(({ id }) => id === node.properties['dataSpot']);
  const picture = lookup.picture(plate, spot?.view);
  if (!picture) return null;
  const { width, height } = picture.frame;
  const image: Element = {
    type: 'element',
    tagName: 'image',
    properties: { href: `${base}${picture.path}`, width, height, preserveAspectRatio: 'none' },
    children: [],
  };
  const viewBox = region.replaceAll(',', ' ');
  const properties = { viewBox, role: 'img', ariaLabel: spot?.title ?? '' };
  return { type: 'element', tagName: 'svg', properties, children: [image] };
}

/** rehype plugin; comes after the sanitiser. */
export function addressesStep(options: { readonly base: string; readonly lookup: MarkdownLookup }) {
  const { base, lookup } = options;
  return (tree: Root, file?: VFile): void => {
    const { language } = textFile(file?.path ?? '');
    const pages = language === null ? base : `${base}${language}/`;
    visit(tree, 'element', (node, index, parent) => {
      const { href, src } = node.properties;
      if (node.tagName === 'a' && typeof href === 'string')
        node.properties['href'] = underBase(href, base, pages);
      if (node.tagName === 'img' && typeof src === 'string') {
        if (isOutside(src) && parent && index !== undefined) {
          parent.children[index] = { type: 'text', value: text(node.properties['alt']) };
        } else if (src.startsWith('/')) node.properties['src'] = underBase(src, base);
      }
      if (node.tagName === 'figure' && node.properties['dataSpot'] !== undefined) {
        const picture = crop(node, base, { lookup, language });
        if (picture) node.children.unshift(picture);
      }
    });
  };
}
