/**
 * The search of words: a field, a short list in the look of the exhibit. The words that were
 * looked for stand in the page's address. Nothing is loaded before somebody types.
 */
import { openWordIndex, type FoundPage, type WordIndex } from './word-index.ts';

/** Results that are shown at first, and more for each time they are asked for. */
const portion = 10;

export class WordSearch extends HTMLElement {
  #index: Promise<WordIndex> | null = null;
  #asked = '';

  connectedCallback(): void {
    const form = this.querySelector('form');
    const field = this.querySelector('input');
    if (!form || !field) return;
    this.hidden = false;
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      void this.#look(field.value);
    });
    let waiting: ReturnType<typeof setTimeout> | undefined;
    field.addEventListener('input', () => {
      clearTimeout(waiting);
      waiting = setTimeout(() => void this.#look(field.value), 250);
    });
    const asked = new URLSearchParams(location.search).get('words');
    if (asked) {
      field.value = asked;
      void this.#look(asked);
    }
  }

  async #look(text: string): Promise<void> {
    const asked = text.trim();
    if (asked === this.#asked) return;
    this.#asked = asked;
    const address = new URL(location.href);
    address.search = asked ? new URLSearchParams({ words: asked }).toString() : '';
    history.replaceState(history.state, '', address);
    if (asked === '') {
      this.#show([], '');
      return;
    }
    try {
      this.#index ??= openWordIndex(
        this.dataset['index'] ?? '',
        this.dataset['base'] ?? '/',
        Number(this.dataset['parts'] ?? 0),
      );
      const pages = await (await this.#index).find(asked);
      // The reader has typed on meanwhile.
      if (asked !== this.#asked) return;
      const first = await Promise.all(pages.slice(0, portion).map((fetchPage) => fetchPage()));
      if (asked !== this.#asked) return;
      this.#show(first, this.#count(pages.length, asked));
      this.#offerMore(pages.slice(portion));
    } catch {
      this.#index = null;
      this.#show([], this.dataset['failed'] ?? '');
    }
  }

  #count(count: number, asked: string): string {
    const key = count === 0 ? 'none' : count === 1 ? 'one' : 'several';
    return (this.dataset[key] ?? '').replace('#', String(count)).replace('…', asked);
  }

  #show(pages: readonly FoundPage[], sentence: string): void {
    this.querySelector('[role="status"]')!.textContent = sentence;
    this.querySelector('ol')!.replaceChildren(...pages.map(item));
    this.#offerMore([]);
  }

  #offerMore(rest: readonly (() => Promise<FoundPage>)[]): void {
    const button = this.querySelector<HTMLButtonElement>('.more')!;
    button.hidden = rest.length === 0;
    button.onclick = async () => {
      const next = await Promise.all(rest.slice(0, portion).map((fetchPage) => fetchPage()));
      const items = next.map(item);
      this.querySelector('ol')!.append(...items);
      this.#offerMore(rest.slice(portion));
      items[0]?.querySelector('a')?.focus();
    };
  }
}

function item(page: FoundPage): HTMLLIElement {
  const entry = document.createElement('li');
  const link = document.createElement('a');
  link.href = page.address;
  link.textContent = page.title;
  const title = document.createElement('h2');
  title.append(link);
  if (page.kind) entry.append(paragraph('kind', page.kind));
  entry.append(title, marked(page.excerpt));
  if (page.parts.length > 0) {
    const parts = paragraph('parts', '');
    for (const [k, part] of page.parts.entries()) {
      const to = document.createElement('a');
      to.href = part.address;
      to.textContent = part.title;
      parts.append(...(k > 0 ? [' · '] : []), to);
    }
    entry.append(parts);
  }
  return entry;
}

function paragraph(name: string, text: string): HTMLParagraphElement {
  const made = document.createElement('p');
  made.className = name;
  made.textContent = text;
  return made;
}

/** The excerpt with its marks and nothing else: tags of the index are read, not obeyed. */
export function marked(excerpt: string): HTMLParagraphElement {
  const made = paragraph('excerpt', '');
  const parsed = new DOMParser().parseFromString(excerpt, 'text/html');
  for (const node of parsed.body.childNodes) {
    const text = node.textContent ?? '';
    if (node.nodeName === 'MARK') {
      const mark = document.createElement('mark');
      mark.textContent = text;
      made.append(mark);
    } else {
      made.append(text);
    }
  }
  return made;
}

customElements.define('word-search', WordSearch);
