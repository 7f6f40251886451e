/** The part of a plate's page that belongs on paper, as an entry of a longer document. */

interface Entry {
  /** Of the page that it comes from. */
  readonly address: string;
  readonly slug: string;
  /** Pages of the plates of this catalogue: address to name. */
  readonly slugs: ReadonlyMap<string, string>;
  /** Where the exhibit is published; null where that is not known. */
  readonly world: string | null;
  /** Path of the exhibit on its host. */
  readonly base: string;
}

/** Attributes that name ids of the same page. */
const idLists = ['aria-labelledby', 'aria-describedby', 'for'];

export function printedForm(page: Document, entry: Entry): HTMLElement {
  const article = document.createElement('article');
  article.className = 'catalogue-entry';
  const body = page.querySelector('main .body');
  const heading = page.querySelector('main .heading');
  const printed = page.querySelector('main .printed');
  for (const part of [heading, printed, body]) if (part) article.append(document.adoptNode(part));
  for (const part of article.querySelectorAll('.screen-only, script')) part.remove();
  renameIds(article, entry.slug);
  for (const link of article.querySelectorAll('a')) leadElsewhere(link, entry);
  for (const part of article.querySelectorAll('h1, h2, h3, h4')) {
    part.setAttribute('aria-level', String(Number(part.tagName[1]) + 1));
  }
  for (const picture of article.querySelectorAll('img')) picture.loading = 'eager';
  article.id = `plate-${entry.slug}`;
  return article;
}

/** Two plates have the same ids; each takes the plate's name before its own. */
function renameIds(article: Element, slug: string): void {
  for (const part of article.querySelectorAll('[id]')) part.id = `${slug}-${part.id}`;
  for (const name of idLists) {
    for (const part of article.querySelectorAll(`[${name}]`)) {
      const ids = (part.getAttribute(name) ?? '').split(/\s+/);
      part.setAttribute(name, ids.map((id) => `${slug}-${id}`).join(' '));
    }
  }
}

/** Links to plates of the catalogue lead there; others to where the exhibit is published. */
function leadElsewhere(link: HTMLAnchorElement, { address, slugs, world, base }: Entry): void {
  const target = new URL(link.getAttribute('href') ?? '', address);
  if (target.origin !== location.origin) return;
  const slug = slugs.get(`${target.origin}${target.pathname}`);
  if (slug !== undefined && target.hash === '') link.href = `#plate-${slug}`;
  else if (world === null) link.removeAttribute('href');
  else link.href = new URL(target.pathname.slice(base.length) + target.hash, world).href;
}

/**
 * The styles of another page of the exhibit, each once.
 *
 * @param have Addresses and texts of the styles that are here already; what comes is added.
 */
export async function adoptStyles(
  page: Document,
  address: string,
  have: Set<string>,
): Promise<void> {
  const waiting: Promise<unknown>[] = [];
  for (const link of page.querySelectorAll('link[rel="stylesheet"]')) {
    const { href } = new URL(link.getAttribute('href') ?? '', address);
    if (have.has(href)) continue;
    have.add(href);
    const own = document.createElement('link');
    own.rel = 'stylesheet';
    waiting.push(new Promise((done) => (own.onload = own.onerror = done)));
    own.href = href;
    document.head.append(own);
  }
  for (const { textContent } of page.querySelectorAll('style')) {
    if (have.has(textContent)) continue;
    have.add(textContent);
    // The policy refuses new style elements, and knows the ones that the page came with.
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(textContent);
    document.adoptedStyleSheets.push(sheet);
  }
  await Promise.all(waiting);
}

/** Addresses and texts of the styles that a document came with. */
export function stylesOf(page: Document): Set<string> {
  const links = page.querySelectorAll<HTMLLinkElement>('link[rel="stylesheet"]');
  const texts = page.querySelectorAll('style');
  return new Set([...[...links].map(({ href }) => href), ...[...texts].map((t) => t.textContent)]);
}
