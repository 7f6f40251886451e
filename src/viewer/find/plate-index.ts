/**
 * What script adds to the index of plates: the choices stand in the page's address, so that a
 * narrowed list can be sent to somebody, and go along to another order of the list.
 */
export class PlateIndex extends HTMLElement {
  connectedCallback(): void {
    const form = this.querySelector('form');
    if (!form) return;
    choose(form, new URLSearchParams(location.search));
    const update = () => {
      this.#tell(form);
    };
    form.addEventListener('change', update);
    // The form is back at its beginning only after the event.
    form.addEventListener('reset', () => setTimeout(update));
    this.#tell(form);
  }

  #tell(form: HTMLFormElement): void {
    const query = queryOf(form);
    const address = new URL(location.href);
    address.search = query;
    history.replaceState(history.state, '', address);
    for (const link of this.querySelectorAll<HTMLAnchorElement>('.orders a')) link.search = query;
    const plates = [...this.querySelectorAll<HTMLElement>('.plates > li')];
    // Not the computed style: a browser works that out anew for each plate that is hidden.
    const any = plates.some((plate) => plate.getClientRects().length > 0);
    const nothing = this.querySelector<HTMLElement>('.nothing');
    const howMany = this.querySelector<HTMLElement>('.how-many');
    if (nothing) nothing.hidden = any;
    if (howMany) howMany.hidden = !any;
  }
}

/** Choices that are made, as a query; what keeps every plate is left out. */
export function queryOf(form: HTMLFormElement): string {
  const chosen = [...new FormData(form)].filter(
    (pair): pair is [string, string] => typeof pair[1] === 'string' && pair[1] !== '',
  );
  return new URLSearchParams(chosen).toString();
}

/** Make the choices of a query; a value that the list no longer has is passed over. */
function choose(form: HTMLFormElement, query: URLSearchParams): void {
  for (const field of form.elements) {
    if (field instanceof HTMLInputElement && field.type === 'radio') {
      if (field.value !== '' && query.get(field.name) === field.value) {
        field.checked = true;
        field.closest('details')?.setAttribute('open', '');
      }
    } else if (field instanceof HTMLSelectElement) {
      const wanted = query.get(field.name);
      if (wanted && [...field.options].some(({ value }) => value === wanted)) field.value = wanted;
    }
  }
}

customElements.define('plate-index', PlateIndex);
