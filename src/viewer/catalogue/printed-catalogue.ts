/**
 * The printed catalogue puts itself together: the printed form of each plate that the address
 * names comes from the plate's own page. What waits for the whole (`src/pipeline/catalogue`)
 * watches `data-state`.
 */
import { parseEdtf } from '../../records/edtf.ts';
import { edtfLanguage, formatEdtf } from '../../records/edtf-words.ts';
import { adoptStyles, printedForm, stylesOf } from './printed-form.ts';

export class PrintedCatalogue extends HTMLElement {
  connectedCallback(): void {
    const asked = new URLSearchParams(location.search);
    const plates = asked.get('plates');
    if (plates === null) return;
    this.dataset['state'] = 'waiting';
    this.#sayDay(asked.get('day'));
    this.#compose(plates === 'all' ? null : plates.split(',')).then(
      () => (this.dataset['state'] = 'ready'),
      (error: unknown) => {
        const page = error instanceof Error ? error.message : String(error);
        this.dataset['said'] = (this.dataset['failed'] ?? '%').replace('%', page);
        this.dataset['state'] = 'failed';
      },
    );
  }

  /** Write the pages at which the plates begin into the list; told by who has printed it once. */
  showPages(pages: Readonly<Record<string, number>>): void {
    for (const entry of this.#entries()) {
      const page = pages[`plate-${entry.dataset['plate']}`];
      const place = entry.querySelector('[data-part="page"]');
      if (place && page !== undefined) place.textContent = String(page);
    }
  }

  #entries(): HTMLElement[] {
    return [...this.querySelectorAll<HTMLElement>('li[data-plate]')];
  }

  #sayDay(day: string | null): void {
    const place = this.querySelector<HTMLElement>('[data-part="printed"]');
    const date = day === null ? null : parseEdtf(day);
    if (!place || !date) return;
    const words = formatEdtf(date, edtfLanguage(this.dataset['language'] ?? 'en'));
    place.textContent = `${place.dataset['words'] ?? ''} ${words}.`;
  }

  /** @param chosen Names of plates; null for all of them. */
  async #compose(chosen: readonly string[] | null): Promise<void> {
    const place = this.querySelector('[data-part="plates"]');
    const kept = this.#entries().filter((entry) => {
      const wanted = chosen === null || chosen.includes(entry.dataset['plate'] ?? '');
      if (!wanted) entry.remove();
      return wanted;
    });
    const slugs = new Map(
      kept.flatMap((entry) => {
        const link = entry.querySelector('a');
        return link ? [[link.href, entry.dataset['plate'] ?? ''] as const] : [];
      }),
    );
    const styles = stylesOf(document);
    // One after the other: a thousand plates are not asked for at once.
    for (const [address, slug] of slugs) {
      const answer = await fetch(address);
      if (!answer.ok) throw new Error(address);
      const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
      await adoptStyles(page, address, styles);
      const { world = null, base = '/' } = this.dataset;
      place?.append(printedForm(page, { address, slug, slugs, world, base }));
    }
    for (const entry of kept) {
      entry.querySelector('a')?.setAttribute('href', `#plate-${entry.dataset['plate']}`);
    }
    await document.fonts.ready;
    await Promise.all(
      [...this.querySelectorAll('img')].map((picture) =>
        picture.decode().catch(() => {
          throw new Error(picture.src);
        }),
      ),
    );
  }
}

customElements.define('printed-catalogue', PrintedCatalogue);
