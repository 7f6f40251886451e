/** Words of the interface that have not gone through the words of a language. */
import type { Page } from 'playwright-core';

/** Code, names of languages in themselves, and the titles of other plates in a list. */
const notLookedAt =
  'script, style, noscript, template, code, pre, nav.languages, select[data-set="with"]';

/**
 * Words that stand on a page without the marks of the made-up language: texts and names for
 * screen readers, in sight or not, but for what is marked as being in another language.
 */
export function unmarked(page: Page): Promise<string[]> {
  return page.evaluate((without) => {
    const own = document.documentElement.lang;
    const found: string[] = [];
    const letters = /\p{L}{2}/u;
    const foreign = (element: Element | null) =>
      element?.closest('[lang]')?.getAttribute('lang') !== own || element.closest(without) !== null;
    const look = (text: string | null, element: Element, what: string) => {
      // Marks may be nested: take them away from the inside.
      let rest = text ?? '';
      for (let before = ''; before !== rest;) {
        before = rest;
        rest = rest.replace(/⟦[^⟦⟧]*⟧/g, ' ');
      }
      if (letters.test(rest))
        found.push(
          `${what} in ${element.tagName.toLowerCase()}.${element.className?.toString() ?? ''}: ${rest.trim().slice(0, 80)}`,
        );
    };
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const element = node.parentElement;
      if (element && !foreign(element)) look(node.textContent, element, 'text');
    }
    for (const element of document.body.querySelectorAll('*')) {
      if (foreign(element)) continue;
      for (const name of ['aria-label', 'title', 'alt', 'placeholder', 'aria-valuetext'])
        look(element.getAttribute(name), element, name);
    }
    return found;
  }, notLookedAt);
}

/** Names of captures and files of the small content, and the formats of these. */
const names =
  /^(: )?(normal|axial)( · .*)?$|^(normal\.tif|axial\.png|plate\.md)$|^(TIFF|PNG), \d+\skB$/;

/** Whether a text is the same in every language. */
export const isSame = (text: string): boolean => same.test(text) || names.test(text);

/** Units, codes, addresses, and in English a registry's own label. */
const same =
  /^(No Known Copyright|: https:\/\/[^ ]+|[^\p{L}]*(mm|px|µm|lx|lx h|min|h|s|ppi|ISO|SHA-256|TIFF|PNG|sRGB|LED|f|kB|MB|dB|IIIF|CC)?[^\p{L}]*)$/u;
